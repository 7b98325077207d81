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
import { bringing, oneGroup } from '../fixtures/one-group.ts';

/** Two machines for three theatres. */
const moving = (theatres: number, spares = 0): Scenario => ({
  ...lowFlow,
  id: 'two',
  ...bringing('closed', 'low', { byYear: [theatres], spares })
});
const twoOfThree = moving(2);
const workbookWith = (scenario: Scenario, changes: Partial<Workbook> = {}): Workbook =>
  wholeWorkbook({ scenarios: [today, scenario], ...changes });
const workbook = workbookWith(twoOfThree);

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
  const savingOf = (theatres: number): number => {
    const bought = workbookWith(moving(theatres));
    const [now, then] = [scenarioOf(bought, today), scenarioOf(bought, twoOfThree)];
    return Number(now.perYear.cost.total) - Number(then.perYear.cost.total);
  };
  expectFigures(savingOf(1) * 3, savingOf(3));
  expectFigures(savingOf(0), 0);
});

test('machines beyond the theatres are spares: bought, installed and serviced, with no trade-in', () => {
  const bought = workbookWith(moving(3, 1));
  const { perYear, againstBaseline } = scenarioOf(bought, twoOfThree);
  expectFigures(againstBaseline.investment, 4 * (20_000 + 700) - 3 * 1500);
  expectFigures(perYear.cost.service, 4 * 1100);
  expectFigures(
    perYear.agents.sevoflurane?.liquidMl,
    200 * (0.6 * cases.followed.hernia.liquidMl + 0.4 * cases.rest.hernia.liquidMl)
  );
});

describe('machines that come in two steps', () => {
  const stepwise: Scenario = {
    ...twoOfThree,
    id: 'steps',
    ...bringing('closed', 'low', { byYear: [1, 0, 1] })
  };
  const stepped = workbookWith(stepwise);
  const { againstBaseline, perYear } = scenarioOf(stepped, stepwise);
  const [now, one, two] = [
    Number(scenarioOf(stepped, today).perYear.cost.total),
    ...[1, 2].map((theatres) =>
      Number(scenarioOf(workbookWith(moving(theatres)), twoOfThree).perYear.cost.total)
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
    const kgOf = (theatres: number): number =>
      scenarioOf(workbookWith(moving(theatres)), twoOfThree).againstBaseline.co2eAvoidedKg;
    expectFigures(againstBaseline.co2eAvoidedOverAppraisalKg, 2 * kgOf(1) + 2 * kgOf(2));
  });
});

describe('monitors where a part of the theatres moves', () => {
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
    theatreGroups: oneGroup(3, 'old', {
      monitors: {
        ...Object.fromEntries(full.map((item) => [item, 3])),
        'agent-concentration': analysers
      }
    }),
    monitorPrices: [
      ...full.map((item) => ({ item, unitPrice: '1000' })),
      { item: 'agent-concentration', unitPrice: '3900' }
    ]
  });
  const monitorsOf = (scenario: Scenario, analysers: number): number =>
    Number(scenarioOf(workbookWith(scenario, stock(analysers)), scenario).againstBaseline.investment) -
    2 * (20_000 + 700 - 1500);

  test('the low plan asks for an analyser in the two theatres where it is followed, not in the third', () => {
    expectFigures(monitorsOf(twoOfThree, 0), 2 * 3900);
  });

  test('an analyser that is there is placed where the low plan is followed', () => {
    expectFigures(monitorsOf(twoOfThree, 1), 3900);
    expectFigures(monitorsOf(twoOfThree, 2), 0);
  });

  test('machines in two steps ask for theirs when they come', () => {
    const stepwise: Scenario = {
      ...twoOfThree,
      id: 'steps',
      ...bringing('closed', 'low', { byYear: [1, 1] })
    };
    const { years } = scenarioOf(workbookWith(stepwise, stock(0)), stepwise).againstBaseline;
    const one = 20_000 + 700 - 1500 + 3900;
    expectFigures(
      years.map(({ investment }) => investment),
      [one, one, 0, 0, 0]
    );
  });

  test('a need tells how many theatres lack it', () => {
    const need = scenarioOf(workbookWith(twoOfThree, stock(1)), twoOfThree).monitoring.find(
      ({ rule }) => rule === 'low-flow.agent-concentration'
    );
    expect(need).toMatchObject({ theatresMissing: 1, cost: '3900' });
  });
});

describe('the twin of a purchase for a part of the theatres', () => {
  const all = scenarioOf(workbook, twoOfThree);

  test('follows the low plan where the machines would have come, on those that stand there', () => {
    const kept: Scenario = { ...twoOfThree, id: 'kept', machinesStay: true };
    const { againstBaseline } = scenarioOf(workbookWith(kept), kept);
    expect(all.withoutMachine?.yearlySaving).toBe(againstBaseline.yearlySaving);
    expectFigures(againstBaseline.investment, 0);
    const lowOnOld = oneCase(workbook, { row: hernia, plan: low, machine: oldMachine });
    expectFigures(
      scenarioOf(workbookWith(kept), kept).perYear.agents.sevoflurane?.liquidMl,
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
  expect(warningsOf(workbook).join('\n')).toContain(
    '“Low flow” brings 2 machines to 3 theatres: “In use” stays in the other 1.'
  );
  expect(warningsOf(workbookWith(moving(3, 1))).join('\n')).toContain(
    '“Low flow” brings 1 machine more as a spare, bought and serviced.'
  );
  expect(warningsOf(workbookWith(moving(3))).join('\n')).not.toContain('theatres');
});
