/** Machines that are not bought, and today's machines that wear out: what each year pays, added up by hand. */
import { describe, expect, test } from 'vitest';
import type { CostOfWay } from '#lib/calc/estimate-types.ts';
import type { Payment, Scenario, TheatreGroup } from '#lib/calc/input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { bringing, oneGroup } from '../fixtures/one-group.ts';
import {
  expectFigures,
  lowFlow,
  oldMachine,
  likeTheOld,
  closedMachine,
  scenarioOf,
  today,
  warningsOf,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

const lease: Payment = {
  kind: 'lease',
  perUnitPerYear: '3000',
  includesService: false,
  includesConsumables: false,
  growthPercent: 10,
  inAdvance: true,
  termYears: 3,
  atEnd: 'renew',
  endPricePerUnit: '0'
};
const paying = (payment: Payment): Scenario => {
  const moves = bringing('like-the-old', 'low');
  return { ...lowFlow, id: 'paying', ...moves, moves: moves.moves.map((move) => ({ ...move, payment })) };
};
const of = (scenario: Scenario, changes: Partial<Workbook> = {}) =>
  scenarioOf(wholeWorkbook({ scenarios: [today, scenario], ...changes }), scenario);
const outlaysOf = (payment: Payment): readonly string[] =>
  of(paying(payment)).againstBaseline.years.map(({ investment }) => investment);
/** Installation less trade-in, of three machines. */
const coming = 3 * (700 - 1500);

describe('three machines that are leased, over four years', () => {
  test('in advance and renewed: a payment at the start of each year, growing on', () => {
    expectFigures(outlaysOf(lease), [coming + 9000, 9900, 10_890, 11_979, 0]);
  });

  test('in arrears: at the end of each year', () => {
    expectFigures(outlaysOf({ ...lease, inAdvance: false }), [coming, 9000, 9900, 10_890, 11_979]);
  });

  test('bought at the end of the term: payments stop, and the price is paid', () => {
    const bought: Payment = { ...lease, atEnd: 'buy', endPricePerUnit: '500' };
    expectFigures(outlaysOf(bought), [coming + 9000, 9900, 10_890, 1500, 0]);
  });

  test('bought at the end of the term: from then on the department pays for service and absorbent', () => {
    const bought: Payment = {
      ...lease,
      atEnd: 'buy',
      endPricePerUnit: '500',
      includesService: true,
      includesConsumables: true
    };
    const { againstBaseline, perYear } = of(paying(bought));
    const apart = of(paying(lease)).perYear.cost;
    const todayPays = scenarioOf(wholeWorkbook(), today).perYear.cost;
    const savedOf = (line: 'service' | 'absorbent') =>
      againstBaseline.years.slice(1).map(({ savings }) => savings[line]);
    const service = Number(todayPays.service);
    expectFigures(savedOf('service'), [service, service, service, service - 3 * 1100]);
    const absorbent = Number(todayPays.absorbent);
    expectFigures(savedOf('absorbent'), [
      absorbent,
      absorbent,
      absorbent,
      absorbent - Number(apart.absorbent)
    ]);
    // When all has settled, they are owned.
    expectFigures(perYear.cost.service, 3 * 1100);
  });

  test('payments are running cost of their budget year, and the price at the end is capital', () => {
    const { budget, years } = of(paying({ ...lease, atEnd: 'buy', endPricePerUnit: '500' })).againstBaseline;
    const saving = (year: number): number => Number(years[year]?.saving);
    expectFigures(
      budget.map(({ once }) => once),
      [coming, 0, 0, 1500, 0]
    );
    expectFigures(
      budget.map(({ running }) => running),
      [9000, 9900 - saving(1), 10_890 - saving(2), -saving(3), -saving(4)]
    );
    expectFigures(
      budget.map(({ total }) => total),
      years.map(({ net }) => -Number(net))
    );
  });

  test('payments are no investment', () => {
    expectFigures(of(paying(lease)).againstBaseline.investment, coming);
  });

  test('are serviced, unless the payment includes it', () => {
    expectFigures(of(paying(lease)).perYear.cost.service, 3 * 1100);
    expectFigures(of(paying({ ...lease, includesService: true })).perYear.cost.service, 0);
  });

  test('use up absorbent, which is not paid for where the payment includes it, and emits all the same', () => {
    const included = of(paying({ ...lease, includesConsumables: true })).perYear;
    const apart = of(paying(lease)).perYear;
    expectFigures(included.cost.absorbent, 0);
    expect(Number(apart.cost.absorbent)).toBeGreaterThan(0);
    expect(included.co2eKg.absorbent).toBe(apart.co2eKg.absorbent);
  });
});

describe('beside the same machines bought, a year of service costs', () => {
  const annuityOf = (flows: readonly number[]): readonly [presentValue: number, perYear: number] => {
    const presentValue = flows.reduce((sum, flow, year) => sum + flow / 1.03 ** year, 0);
    const factor = flows.slice(1).reduce((sum, _, index) => sum + 1 / 1.03 ** (index + 1), 0);
    return [presentValue, presentValue / factor];
  };
  const expectWay = (
    { lifeYears, presentValue, equivalentAnnualCost }: CostOfWay,
    flows: readonly number[]
  ): void => {
    expect(lifeYears).toBe(flows.length - 1);
    expectFigures([presentValue, equivalentAnnualCost], annuityOf(flows));
  };
  const waysOf = (payment: Payment) => {
    const [ways, ...others] = of(paying(payment)).waysToPay;
    if (ways === undefined || others.length > 0) throw new Error('One move is paid for, so one is compared.');
    return ways;
  };
  const [installed, service] = [3 * 700, 3 * 1100];
  const tenYears = <T>(of: (year: number) => T): T[] =>
    Array.from({ length: 10 }, (_, index) => of(index + 1));

  test('its term where they go back, and the life of those that are bought', () => {
    const { units, asEntered, bought } = waysOf({ ...lease, growthPercent: 0, atEnd: 'return' });
    expect(units).toBe(3);
    expectWay(asEntered, [installed + 9000, 9000 + service, 9000 + service, service]);
    expectWay(bought, [installed + 60_000, ...tenYears(() => service)]);
  });

  test('the life where they are renewed, payments growing on', () => {
    const { asEntered } = waysOf({ ...lease, inAdvance: false });
    expectWay(asEntered, [installed, ...tenYears((year) => 9000 * 1.1 ** (year - 1) + service)]);
  });

  test('service and absorbent once they are owned, where the payment included them', () => {
    const included: Payment = {
      ...lease,
      growthPercent: 0,
      inAdvance: false,
      atEnd: 'buy',
      endPricePerUnit: '500',
      includesService: true,
      includesConsumables: true
    };
    const absorbent = Number(of(paying(lease)).perYear.cost.absorbent);
    const { asEntered, bought, fees } = waysOf(included);
    const owned = service + absorbent;
    expectWay(asEntered, [
      installed,
      ...tenYears((year) => (year < 3 ? 9000 : year === 3 ? 9000 + 1500 : owned))
    ]);
    expectWay(bought, [installed + 60_000, ...tenYears(() => owned)]);
    expectFigures(fees[0]?.machine ?? '', 9000 - owned);
  });

  test('a fee whose parts add up in each year of the term', () => {
    const { fees } = waysOf({ ...lease, kind: 'managed', includesService: true });
    expectFigures(
      fees.map(({ fee }) => fee),
      [9000, 9900, 10_890]
    );
    for (const { year, fee, machine, service: part, consumables, growth } of fees) {
      expectFigures([machine, part, consumables, growth], [9000 - service, service, 0, Number(fee) - 9000]);
      expect(year).toBeLessThanOrEqual(3);
    }
  });

  test('nothing to compare where all are bought', () => {
    const buying: Scenario = { ...lowFlow, id: 'paying', ...bringing('like-the-old', 'low') };
    expect(of(buying).waysToPay).toEqual([]);
  });
});

test('a payment that was not entered yet is said: else the machines look free', () => {
  const warningsWith = (perUnitPerYear: string): string =>
    warningsOf(wholeWorkbook({ scenarios: [today, paying({ ...lease, perUnitPerYear })] })).join('\n');
  expect(warningsWith('0')).toContain('for a payment of 0: enter what is paid');
  expect(warningsWith('1')).not.toContain('for a payment of 0');
});

test('machines that go back at the end of the term make room for those that come then', () => {
  const returned: Payment = { ...lease, growthPercent: 0, termYears: 2, atEnd: 'return' };
  const [first] = paying(returned).moves;
  const again: Scenario = {
    ...paying(returned),
    moves: [first!, { theatreGroup: 'main', machine: 'closed', year: 2, theatres: null, payment: null }],
    plans: { 'like-the-old': 'low', closed: 'low' }
  };
  const { againstBaseline, perYear } = of(again, {
    machines: [oldMachine, likeTheOld, { ...closedMachine, servicePerUnitPerYear: '900' }]
  });
  // Two payments in advance, then three are bought; the old ones went in year 0, so nothing is traded in again.
  expectFigures(
    againstBaseline.years.map(({ investment }) => investment),
    [coming + 9000, 9000, 3 * (20_000 + 700), 0, 0]
  );
  expectFigures(perYear.cost.service, 3 * 900);
});

describe('today’s machines that are replaced at the end of their life', () => {
  const [three] = oneGroup(3, 'old');
  const aged: TheatreGroup = { ...three, machineAgeYears: 8 };
  const plain = wholeWorkbook();
  const replaced = (scenario: Scenario, group = aged): Workbook =>
    wholeWorkbook({
      scenarios: [today, scenario],
      theatreGroups: [group],
      machines: [
        { ...oldMachine, unitPrice: '15000', installationPerUnit: '400' },
        likeTheOld,
        closedMachine
      ],
      accounting: { ...plain.accounting, counterfactual: 'replaced-at-end-of-life' }
    });
  const investments = (workbook: Workbook, scenario: Scenario): readonly string[] =>
    scenarioOf(workbook, scenario).againstBaseline.years.map(({ investment }) => investment);

  test('a purchase for all of them saves that in its year', () => {
    const buying: Scenario = { ...lowFlow, id: 'buying', ...bringing('like-the-old', 'low') };
    const paid = 3 * (20_000 + 700 - 1500);
    // Eight years old, with a life of ten.
    expectFigures(investments(replaced(buying), buying), [paid, 0, -3 * 15_400, 0, 0]);
  });

  test('a purchase for one of them saves one', () => {
    const buying: Scenario = {
      ...lowFlow,
      id: 'buying',
      ...bringing('like-the-old', 'low', { byYear: [1] })
    };
    expectFigures(investments(replaced(buying), buying), [20_000 + 700 - 1500, 0, -15_400, 0, 0]);
  });

  test('one that stays on them saves none: both pay alike', () => {
    expectFigures(investments(replaced(lowFlow), lowFlow), [0, 0, 0, 0, 0]);
  });

  test('without an age they are taken to last, and that is said', () => {
    const buying: Scenario = { ...lowFlow, id: 'buying', ...bringing('like-the-old', 'low') };
    const workbook = replaced(buying, three);
    expectFigures(investments(workbook, buying), [3 * (20_000 + 700 - 1500), 0, 0, 0, 0]);
    expect(warningsOf(workbook).join('\n')).toContain('no age is given for those of “Theatres”');
  });
});
