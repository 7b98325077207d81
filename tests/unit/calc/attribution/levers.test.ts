import { bringing, keeping } from '../../../fixtures/one-group.ts';
import { describe, expect, test } from 'vitest';
import { leversOf, scenarioOfTwin, isTwinId, twinOf, variantOf } from '#lib/calc/attribution/levers.ts';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { estimate, ladderInOrder } from '#lib/calc/estimate/estimate.ts';
import { explainer } from '#lib/calc/estimate/explain.ts';
import type { EstimateInput, Scenario } from '#lib/calc/input.ts';
import { levers } from '#lib/calc/input.ts';
import type { Working } from '#lib/calc/working/working.ts';
import { inputsOf } from '#lib/calc/working/working-text.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';

// The demo's figures are invented: here they only give the machinery something to take apart.
const demo = coreInput(departmentWorkbook());
const closed = demo.scenarios.find(({ id }) => id === 'closed') as Scenario;
const today = demo.scenarios.find(({ id }) => id === 'today') as Scenario;

/** The demo with one scenario, “closed”, changed. */
const withClosed = (change: Partial<Scenario>, of: EstimateInput = demo): EstimateInput => ({
  ...of,
  scenarios: of.scenarios.map((each) => (each.id === 'closed' ? { ...each, ...change } : each))
});
const leversWith = (change: Partial<Scenario>, of?: EstimateInput) => {
  const input = withClosed(change, of);
  return leversOf(input, input.scenarios.find(({ id }) => id === 'closed') as Scenario);
};
const stillClosed: Partial<Scenario> = {
  ...keeping('m-old', 'usual'),
  agentSwitch: {},
  oneOffCost: '0'
};

describe('the levers of a scenario', () => {
  test('are what it changes, and the baseline has none', () => {
    expect(leversOf(demo, closed)).toEqual(['agent', 'flow', 'machine']);
    expect(leversOf(demo, today)).toEqual([]);
    expect(leversWith(stillClosed)).toEqual([]);
  });

  test.each<[string, Partial<Scenario>, string[]]>([
    ['an agent given instead', { agentSwitch: { desflurane: 'sevoflurane' } }, ['agent']],
    ['an agent given instead of itself', { agentSwitch: { desflurane: 'desflurane' } }, []],
    ['another plan', keeping('m-old', 'low'), ['flow']],
    ['another plan for one case group', { flowPlanByCase: { 'lap-chole': 'low' } }, ['flow']],
    ['today’s plan for one case group', { flowPlanByCase: { 'lap-chole': 'usual' } }, []],
    ['another machine', bringing('m-closed', 'usual'), ['machine']],
    [
      'another machine’s plan on the machines that stay',
      { ...bringing('m-closed', 'low'), machinesStay: true },
      ['flow']
    ],
    ['purchases avoided', { avoidedPurchases: [{ year: 2, units: 1, unitPrice: '9' }] }, ['machine']],
    ['capture', { capturePercent: 20 }, ['capture']],
    ['what capture costs', { captureFeePerYear: '1' }, ['capture']],
    ['the same amount, written otherwise', { captureFeePerYear: '0.00' }, []],
    ['hours of scavenging pumps', { scavengingPumpHoursPerWeek: 60 }, ['scavenging']],
    ['an adoption of its own alone', { adoptionPercent: 50 }, []],
    [
      'an adoption that the machine brings',
      { ...bringing('m-closed', 'usual'), adoptionWithoutMachinePercent: 60 },
      ['machine', 'adoption']
    ],
    ['a share without a machine where none is changed', { adoptionWithoutMachinePercent: 60 }, []],
    ['a one-off cost', { oneOffCost: '10' }, ['flow']],
    ['a cost for another lever', { yearlyExtraCost: '-3', extraCostLever: 'agent' }, ['agent']],
    ['recovery minutes', { recoveryMinutesSavedPerCase: 1, extraCostLever: 'capture' }, ['capture']]
  ])('with %s', (_, change, expected) => {
    expect(leversWith({ ...stillClosed, ...change })).toEqual(expected);
  });
});

describe('a lever that is off', () => {
  const off = (lever: string, change: Partial<Scenario> = {}) => {
    const input = withClosed(change);
    const scenario = input.scenarios.find(({ id }) => id === 'closed') as Scenario;
    return variantOf(
      input,
      scenario,
      levers.filter((each) => each !== lever)
    ).scenario;
  };

  test('takes its fields from today, and nothing else', () => {
    const { agentSwitch, moves, plans, oneOffCost } = closed;
    expect(off('agent')).toMatchObject({ agentSwitch: {}, moves, plans, oneOffCost });
    expect(off('flow')).toMatchObject({ agentSwitch, moves, oneOffCost: '0' });
    // No plan named: today's of each theatre is followed on whatever comes.
    expect(off('flow').plans).toEqual({});
    expect(off('machine', bringing('m-closed', 'closed', { byYear: [2, 2] }))).toMatchObject({
      agentSwitch,
      ...bringing('m-closed', 'closed', { byYear: [2, 2] }),
      machinesStay: true,
      oneOffCost
    });
    expect(off('capture', { capturePercent: 30 })).toMatchObject({ capturePercent: 0, moves });
    expect(off('adoption', { adoptionWithoutMachinePercent: 55 })).toMatchObject({
      adoptionPercent: 55,
      moves
    });
  });

  test('takes the one-off and the yearly cost along where the user says that they are its own', () => {
    const costs: Partial<Scenario> = { yearlyExtraCost: '70', extraCostLever: 'machine' };
    expect(off('machine', costs)).toMatchObject({ oneOffCost: '0', yearlyExtraCost: '0' });
    expect(off('flow', costs)).toMatchObject({ oneOffCost: '5000.00', yearlyExtraCost: '70' });
  });

  test('leaves the share of the cases alone where adoption is a lever for its cost only', () => {
    expect(off('adoption', { extraCostLever: 'adoption' })).toMatchObject({
      adoptionPercent: closed.adoptionPercent,
      oneOffCost: '0'
    });
  });
});

describe('the twin', () => {
  test('keeps agent and plan, on today’s machines, with the share that would follow there', () => {
    const twin = twinOf(withClosed({ adoptionWithoutMachinePercent: 70 }), {
      ...closed,
      adoptionWithoutMachinePercent: 70
    })?.scenario;
    expect(twin).toMatchObject({
      id: 'closed:without-machine',
      baseline: false,
      moves: closed.moves,
      machinesStay: true,
      plans: { 'm-closed': 'closed' },
      agentSwitch: closed.agentSwitch,
      adoptionPercent: 70,
      oneOffCost: '5000.00'
    });
    expect(isTwinId('closed:without-machine')).toBe(true);
    expect(isTwinId('closed')).toBe(false);
    expect(scenarioOfTwin('closed:without-machine')).toBe('closed');
  });

  test('there is none where the machine stays', () => {
    const habit = demo.scenarios.find(({ id }) => id === 'habit') as Scenario;
    expect(twinOf(demo, habit)).toBeNull();
    const { withoutMachine, machineAdds } = estimate(demo).scenarios[1] ?? {};
    expect([withoutMachine, machineAdds]).toEqual([null, null]);
  });
});

describe('runs are estimates of scenarios that could be written by hand', () => {
  /** The demo with adoption as a lever, and every run of “closed” written out as a scenario of the workbook. */
  const input = withClosed({ adoptionWithoutMachinePercent: 65, capturePercent: 25 });
  const of = { ...closed, adoptionWithoutMachinePercent: 65, capturePercent: 25 };
  const written = (name: string, change: Partial<Scenario>): Scenario => ({
    ...of,
    plans: { 'm-closed': 'closed', 'm-old': 'closed' },
    adoptionWithoutMachinePercent: null,
    ...change,
    id: name,
    name
  });
  const off: Readonly<Record<string, Partial<Scenario>>> = {
    agent: { agentSwitch: {} },
    // With the machine off its plan is followed on today's machines.
    flow: { plans: { 'm-closed': 'usual', 'm-old': 'usual' }, oneOffCost: '0' },
    machine: { moves: [] },
    adoption: { adoptionPercent: 65 },
    capture: { capturePercent: 0 }
  };
  const used = Object.keys(off);
  const nameOf = (set: number): string => `run-${set}`;
  const byHand = Array.from({ length: 2 ** used.length }, (_, set) =>
    written(
      nameOf(set),
      Object.assign({}, ...used.filter((__, place) => !((set >> place) & 1)).map((lever) => off[lever]))
    )
  );
  const all = estimate({ ...input, scenarios: [...input.scenarios, ...byHand] });
  const figuresOf = (set: number) => {
    const found = all.scenarios.find(({ id }) => id === nameOf(set));
    if (found === undefined) throw new Error(`no run ${set}`);
    return found.againstBaseline;
  };
  const taken = estimate(input).scenarios.find(({ id }) => id === 'closed');

  test.each(['yearlySaving', 'co2eAvoidedKg', 'npv'] as const)(
    'the parts of %s are the averages, over all 120 orders, of what each adds in its place',
    (figure) => {
      const orders = permutations([0, 1, 2, 3, 4]);
      expect(orders).toHaveLength(120);
      const value = (set: number): number => Number(figuresOf(set)[figure]);
      used.forEach((lever, place) => {
        const added = orders.map((order) => {
          const before = order.slice(0, order.indexOf(place)).reduce((set, each) => set | (1 << each), 0);
          return value(before | (1 << place)) - value(before);
        });
        const mean = added.reduce((sum, next) => sum + next, 0) / orders.length;
        const part = taken?.attribution?.find((each) => each.lever === lever);
        expect(Number(part?.[figure])).toBeCloseTo(mean, 6);
      });
    }
  );

  test('the twin is the run with machine and adoption off, in every figure of the estimate', () => {
    const { years, ...figures } = taken?.withoutMachine ?? { years: [] };
    const { years: wantedYears, ...wanted } = figuresOf(0b10011);
    expect(figures).toEqual(wanted);
    expect(years).toEqual(wantedYears);
  });

  test('what the machine adds is the difference of the two cash flows', () => {
    const whole = taken?.againstBaseline;
    const twin = taken?.withoutMachine;
    const adds = taken?.machineAdds;
    expect(Number(adds?.yearlySaving)).toBeCloseTo(
      Number(whole?.yearlySaving) - Number(twin?.yearlySaving),
      6
    );
    expect(adds?.co2eAvoidedKg).toBeCloseTo((whole?.co2eAvoidedKg ?? 0) - (twin?.co2eAvoidedKg ?? 0), 6);
    expect(Number(adds?.npv)).toBeCloseTo(Number(whole?.npv) - Number(twin?.npv), 6);
    // Payback from the flows added up by hand.
    const net = (whole?.years ?? []).map(
      ({ net: flow }, year) => Number(flow) - Number(twin?.years[year]?.net)
    );
    let [sum, payback] = [0, null as number | null];
    net.forEach((flow, year) => {
      if (payback === null && sum < 0 && sum + flow >= 0) payback = year - 1 + sum / -flow;
      sum += flow;
    });
    if (payback === null) expect(adds?.simplePaybackYears).toBeNull();
    else expect(adds?.simplePaybackYears).toBeCloseTo(payback, 9);
    // At the step's own rate its flows are worth nothing.
    const rate = (adds?.irrPercent ?? 0) / 100;
    expect(net.reduce((worth, flow, year) => worth + flow / (1 + rate) ** year, 0)).toBeCloseTo(0, 3);
  });

  test('the ladder in an order of the user’s climbs through these runs', () => {
    const order = ['capture', 'machine', 'agent'] as const;
    const rungs = ladderInOrder(input, { scenarioId: 'closed', order, memo: new CaseMemo() });
    expect(rungs.map(({ lever }) => lever)).toEqual(['capture', 'machine', 'agent', 'flow', 'adoption']);
    const sets = [0b00000, 0b10000, 0b10100, 0b10101, 0b10111, 0b11111];
    rungs.forEach(({ co2eAvoidedKg, investment }, place) => {
      const [before, after] = [figuresOf(sets[place] as number), figuresOf(sets[place + 1] as number)];
      expect(co2eAvoidedKg).toBeCloseTo(after.co2eAvoidedKg - before.co2eAvoidedKg, 6);
      expect(Number(investment)).toBeCloseTo(Number(after.investment) - Number(before.investment), 6);
    });
  });
});

function permutations(list: readonly number[]): number[][] {
  if (list.length < 2) return [[...list]];
  return list.flatMap((first) =>
    permutations(list.filter((each) => each !== first)).map((rest) => [first, ...rest])
  );
}

describe('the working', () => {
  const cellsUnder = (path: string): ReadonlySet<string> => {
    const input = withClosed({ adoptionWithoutMachinePercent: 65 });
    const [seen, cells] = [new Set<Working>(), new Set<string>()];
    const walk = (working: Working): void => {
      if (seen.has(working)) return;
      seen.add(working);
      if (working.kind === 'cell') cells.add(working.path);
      for (const { input: below } of inputsOf(working)) walk(below);
    };
    walk(explainer(input)(path));
    return cells;
  };

  test('of a part leads to cells of the workbook alone, those of the levers that were off too', () => {
    const cells = [...cellsUnder('closed.attribution.machine.yearlySaving')];
    expect(cells.filter((path) => path.includes(':'))).toEqual([]);
    expect(cells).toEqual(
      expect.arrayContaining([
        'scenarios.closed.adoptionPercent',
        'scenarios.closed.adoptionWithoutMachinePercent',
        'machines.m-closed.servicePerUnitPerYear',
        'machines.m-old.servicePerUnitPerYear'
      ])
    );
  });

  test('says which run is set against which', () => {
    const working = explainer(demo)('closed.attribution.flow.npv');
    const names = inputsOf(working).flatMap(({ input }) =>
      input.kind === 'step' ? [input.formula.yields] : []
    );
    expect(names).toEqual([
      'What flow brings by itself',
      'What flow brings where agent is changed already',
      'What flow brings where machine is changed already',
      'What flow brings where agent, machine are changed already'
    ]);
  });

  test('opens a rung in an order of the user’s, and a step of either list', () => {
    const ladder = explainer(demo)('closed.ladderInOrder.flow+agent+machine.agent.co2eAvoidedKg');
    const rung = ladderInOrder(demo, { scenarioId: 'closed', order: ['flow', 'agent', 'machine'] })[1];
    expect(ladder.value).toBe(rung?.co2eAvoidedKg);
    const { increments } = estimate(demo);
    const step = increments?.tonnes.find(({ status }) => status === 'step');
    expect(step).toBeDefined();
    expect(String(explainer(demo)(`increments.tonnes.${step?.option}.costPerTonne`).value)).toBe(
      step?.costPerTonne
    );
  });
});

test('a file without the two new cells opens with what changes nothing', () => {
  const { scenarios, ...rest } = departmentWorkbook();
  const older = {
    ...rest,
    scenarios: scenarios.map(
      ({ adoptionWithoutMachinePercent: _, extraCostLever: __, ...scenario }) => scenario
    )
  };
  const parsed = parseWorkbook(JSON.parse(JSON.stringify(older)));
  expect(parsed.kind).toBe('workbook');
  if (parsed.kind !== 'workbook') return;
  expect(
    parsed.workbook.scenarios.map((each) => [each.adoptionWithoutMachinePercent, each.extraCostLever])
  ).toEqual(scenarios.map(() => [null, 'flow']));
});
