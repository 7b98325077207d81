/**
 * A purchase for a part of the theatres: what moves, what stays, and what each year then uses, costs and lacks. Three
 * theatres, in which the cases of every group are spread evenly.
 */
import { describe, expect, test } from 'vitest';
import type { MonitorItem, Scenario } from '#lib/calc/input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import {
  closedMachine,
  expectFigures,
  hernia,
  low,
  lowFlow,
  neck,
  oldMachine,
  oneCase,
  scenarioOf,
  today,
  usual,
  warningsOf,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

/** Two machines for three theatres. */
const twoOfThree: Scenario = { ...lowFlow, id: 'two', machine: 'closed' };
const workbookWith = (units: number, scenario: Scenario, changes: Partial<Workbook> = {}): Workbook =>
  wholeWorkbook({
    scenarios: [today, scenario],
    machines: [oldMachine, { ...closedMachine, units }],
    ...changes
  });
const workbook = workbookWith(2, twoOfThree);

const cases = {
  followed: {
    hernia: oneCase(workbook, { row: hernia, plan: low, machine: closedMachine }),
    neck: oneCase(workbook, { row: neck, plan: low, machine: closedMachine })
  },
  rest: {
    hernia: oneCase(workbook, { row: hernia, plan: usual, machine: closedMachine }),
    neck: oneCase(workbook, { row: neck, plan: usual, machine: closedMachine })
  },
  old: {
    hernia: oneCase(workbook, { row: hernia, plan: usual, machine: oldMachine }),
    neck: oneCase(workbook, { row: neck, plan: usual, machine: oldMachine })
  }
};

/** A case of the scenario on average, where two theatres of three have moved. */
const mixed = (of: (result: typeof cases.old.hernia) => number, group: 'hernia' | 'neck'): number =>
  (2 / 3) * (0.6 * of(cases.followed[group]) + 0.4 * of(cases.rest[group])) + (1 / 3) * of(cases.old[group]);

describe('two machines for three theatres', () => {
  const year = scenarioOf(workbook, twoOfThree).perYear;

  test('two thirds of the cases run on the machine that came, one third on the one that stays', () => {
    expectFigures(year.agents.sevoflurane?.liquidMl, 200 * mixed(({ liquidMl }) => liquidMl, 'hernia'));
    expectFigures(
      year.oxygenM3,
      (200 * mixed(({ oxygenL }) => oxygenL, 'hernia') + 50 * mixed(({ oxygenL }) => oxygenL, 'neck')) / 1000
    );
    expectFigures(
      year.nitrousOxideKg,
      scenarioOf(workbook, today).perYear.nitrousOxideKg *
        (mixed(({ nitrousOxideL }) => nitrousOxideL, 'hernia') / cases.old.hernia.nitrousOxideL)
    );
  });

  test('each machine takes its own power', () => {
    const hours = (200 * 60 + 50 * 120) / 60;
    expectFigures(year.electricityKWh, (hours * ((2 / 3) * 60 + (1 / 3) * 90)) / 1000);
  });

  test('each machine uses up its own absorbent', () => {
    const massKg = (of: 'followed' | 'rest' | 'old'): number =>
      200 * cases[of].hernia.absorbentKg + 50 * cases[of].neck.absorbentKg;
    const newKg = (2 / 3) * (0.6 * massKg('followed') + 0.4 * massKg('rest'));
    const oldKg = (1 / 3) * massKg('old');
    expectFigures(
      { mass: year.absorbentKg, cost: year.cost.absorbent, co2e: year.co2eKg.absorbent },
      { mass: newKg + oldKg, cost: 17 * newKg + 9 * oldKg, co2e: 1.3 * newKg + 0.7 * oldKg }
    );
  });

  test('service is paid for the two that came and for the one that stays', () => {
    expectFigures(year.cost.service, 2 * 1100 + 1400);
  });

  test('two are bought, installed and traded in', () => {
    expectFigures(scenarioOf(workbook, twoOfThree).againstBaseline.investment, 2 * (20_000 + 700 - 1500));
  });
});

test('one machine for three theatres saves a third of what three save', () => {
  const savingOf = (units: number): number => {
    const bought = workbookWith(units, twoOfThree);
    const [now, then] = [scenarioOf(bought, today), scenarioOf(bought, twoOfThree)];
    return Number(now.perYear.cost.total) - Number(then.perYear.cost.total);
  };
  expectFigures(savingOf(1) * 3, savingOf(3));
  expectFigures(savingOf(0), 0);
});

test('machines beyond the theatres are spares: bought, installed and serviced, with no trade-in', () => {
  const bought = workbookWith(4, twoOfThree);
  const { perYear, againstBaseline } = scenarioOf(bought, twoOfThree);
  expectFigures(againstBaseline.investment, 4 * (20_000 + 700) - 3 * 1500);
  expectFigures(perYear.cost.service, 4 * 1100);
  expectFigures(
    perYear.agents.sevoflurane?.liquidMl,
    200 * (0.6 * cases.followed.hernia.liquidMl + 0.4 * cases.rest.hernia.liquidMl)
  );
});

test('of today’s machine one stands in each theatre, however many are typed', () => {
  const machines = [{ ...oldMachine, units: 1 }, closedMachine];
  expectFigures(scenarioOf(wholeWorkbook({ machines }), today).perYear.cost.service, 3 * 1400);
});

describe('machines that come in two steps', () => {
  const stepwise: Scenario = { ...twoOfThree, id: 'steps', unitsByYear: [1, 0, 1] };
  const stepped = workbookWith(2, stepwise);
  const { againstBaseline, perYear } = scenarioOf(stepped, stepwise);
  const [now, one, two] = [
    Number(scenarioOf(stepped, today).perYear.cost.total),
    ...[1, 2].map((units) =>
      Number(scenarioOf(workbookWith(units, twoOfThree), twoOfThree).perYear.cost.total)
    )
  ] as [number, number, number];

  test('each year saves what the machines that stand in it save', () => {
    expectFigures(
      againstBaseline.years.map(({ saving }) => saving),
      [0, now - one, now - one, now - two, now - two]
    );
  });

  test('the year that sheets show is the settled one', () => {
    expectFigures(perYear.cost.total, two);
    expectFigures(againstBaseline.yearlySaving, now - two);
  });

  test('tonnes add up over the years as they are', () => {
    const kgOf = (units: number): number =>
      scenarioOf(workbookWith(units, twoOfThree), twoOfThree).againstBaseline.co2eAvoidedKg;
    expectFigures(againstBaseline.co2eAvoidedOverAppraisalKg, 2 * kgOf(1) + 2 * kgOf(2));
  });
});

describe('monitors where a part of the theatres moves', () => {
  const prices: Readonly<Partial<Record<MonitorItem, string>>> = { 'agent-concentration': '3900' };
  const full: readonly MonitorItem[] = [
    'pulse-oximetry',
    'ecg',
    'non-invasive-blood-pressure',
    'capnography',
    'temperature',
    'neuromuscular',
    'inspired-oxygen'
  ];
  const stock = (analysers: number): Partial<Workbook> => ({
    monitors: [
      ...full.map((item) => ({ item, theatresEquipped: 3, unitPrice: '1000' })),
      {
        item: 'agent-concentration' as const,
        theatresEquipped: analysers,
        unitPrice: prices['agent-concentration']!
      }
    ]
  });
  const monitorsOf = (scenario: Scenario, analysers: number, units = 2): number =>
    Number(scenarioOf(workbookWith(units, scenario, stock(analysers)), scenario).againstBaseline.investment) -
    units * (20_000 + 700 - 1500);

  test('the low plan asks for an analyser in the two theatres where it is followed, not in the third', () => {
    expectFigures(monitorsOf(twoOfThree, 0), 2 * 3900);
  });

  test('an analyser that is there is placed where the low plan is followed', () => {
    expectFigures(monitorsOf(twoOfThree, 1), 3900);
    expectFigures(monitorsOf(twoOfThree, 2), 0);
  });

  test('machines in two steps ask for theirs when they come', () => {
    const stepwise: Scenario = { ...twoOfThree, id: 'steps', unitsByYear: [1, 1] };
    const { years } = scenarioOf(workbookWith(2, stepwise, stock(0)), stepwise).againstBaseline;
    const one = 20_000 + 700 - 1500 + 3900;
    expectFigures(
      years.map(({ investment }) => investment),
      [one, one, 0, 0, 0]
    );
  });

  test('a need tells how many theatres lack it', () => {
    const need = scenarioOf(workbookWith(2, twoOfThree, stock(1)), twoOfThree).monitoring.find(
      ({ rule }) => rule === 'low-flow.agent-concentration'
    );
    expect(need).toMatchObject({ theatresMissing: 1, cost: '3900' });
  });
});

describe('the twin of a purchase for a part of the theatres', () => {
  const all = scenarioOf(workbook, twoOfThree);

  test('follows the low plan where the machines would have come, on those that stand there', () => {
    const kept: Scenario = { ...twoOfThree, id: 'kept', machinesStay: true };
    const { againstBaseline } = scenarioOf(workbookWith(2, kept), kept);
    expect(all.withoutMachine?.yearlySaving).toBe(againstBaseline.yearlySaving);
    expectFigures(againstBaseline.investment, 0);
    const lowOnOld = oneCase(workbook, { row: hernia, plan: low, machine: oldMachine });
    expectFigures(
      scenarioOf(workbookWith(2, kept), kept).perYear.agents.sevoflurane?.liquidMl,
      200 *
        ((2 / 3) * (0.6 * lowOnOld.liquidMl + 0.4 * cases.old.hernia.liquidMl) +
          (1 / 3) * cases.old.hernia.liquidMl)
    );
  });

  test('and what the machine adds is the rest', () => {
    expectFigures(
      Number(all.withoutMachine?.yearlySaving) + Number(all.machineAdds?.yearlySaving),
      Number(all.againstBaseline.yearlySaving)
    );
  });
});

test('a warning says where machines and theatres disagree', () => {
  expect(warningsOf(workbookWith(2, twoOfThree)).join('\n')).toContain(
    '“Low flow” brings 2 machines to 3 theatres: “In use” stays in the other 1.'
  );
  expect(warningsOf(workbookWith(4, twoOfThree)).join('\n')).toContain(
    '“Low flow” brings 4 machines to 3 theatres: 1 is a spare, bought and serviced.'
  );
  expect(warningsOf(workbookWith(3, twoOfThree)).join('\n')).not.toContain('theatres');
});
