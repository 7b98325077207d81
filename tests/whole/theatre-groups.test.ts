/**
 * Two groups of theatres with different machines of today, of which one changes over: where cases are done, what stands
 * where, what is serviced, bought and lacking. Three theatres and one of day surgery, added up by hand.
 */
import { describe, expect, test } from 'vitest';
import type { CaseRow, MonitorItem, Scenario, TheatreGroup } from '#lib/calc/input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { oneGroup } from '../fixtures/one-group.ts';
import {
  closedMachine,
  expectFigures,
  hernia,
  hip,
  likeTheOld,
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

const [three] = oneGroup(3, 'old');
const day: TheatreGroup = { ...three, id: 'day', name: 'Day surgery', theatres: 1, machine: 'like-the-old' };
const now: Scenario = { ...today, plans: { old: 'usual', 'like-the-old': 'low' } };
/** Two of the three theatres get the closed machine now; day surgery stays as it is. */
const moving: Scenario = {
  ...now,
  id: 'moving',
  name: 'Moving',
  baseline: false,
  moves: [{ theatreGroup: 'main', machine: 'closed', year: 0, theatres: 2, payment: null }],
  plans: { closed: 'low' }
};
const workbookWith = (scenarios: readonly Scenario[], changes: Partial<Workbook> = {}): Workbook =>
  wholeWorkbook({ theatreGroups: [three, day], scenarios: [...scenarios], ...changes });
const workbook = workbookWith([now, moving]);
const liquid = (plan: typeof low, machine: typeof oldMachine): number =>
  oneCase(workbook, { row: hernia, plan, machine }).liquidMl;

describe('cases are done in every theatre alike, where nothing else is said', () => {
  test('today: three quarters on the one machine and its plan, a quarter on the other and its own', () => {
    expectFigures(
      scenarioOf(workbook, now).perYear.agents.sevoflurane?.liquidMl,
      200 * (0.75 * liquid(usual, oldMachine) + 0.25 * liquid(low, likeTheOld))
    );
  });

  test('two of four move: half on the machine that came, a quarter each on those that stay', () => {
    expectFigures(
      scenarioOf(workbook, moving).perYear.agents.sevoflurane?.liquidMl,
      200 *
        (0.5 * liquid(low, closedMachine) + 0.25 * liquid(usual, oldMachine) + 0.25 * liquid(low, likeTheOld))
    );
  });
});

describe('a case group with shares of its own', () => {
  test('is done where they say, and the rest where none is said', () => {
    const shared = workbookWith([now, moving], {
      caseMix: [{ ...hernia, theatreGroups: { day: 40 } }, neck, hip]
    });
    expectFigures(
      scenarioOf(shared, moving).perYear.agents.sevoflurane?.liquidMl,
      200 *
        (0.6 * ((2 / 3) * liquid(low, closedMachine) + (1 / 3) * liquid(usual, oldMachine)) +
          0.4 * liquid(low, likeTheOld))
    );
  });

  test('that is done in one group alone takes no part in what changes in the other', () => {
    const apart = workbookWith([now, moving], {
      caseMix: [{ ...hernia, theatreGroups: { day: 100, main: 0 } }]
    });
    const [before, after] = [scenarioOf(apart, now).perYear, scenarioOf(apart, moving).perYear];
    expect(after.agents).toEqual(before.agents);
    expect(after.co2eKg.agents).toEqual(before.co2eKg.agents);
  });
});

test('service is for what stands in each group', () => {
  expectFigures(scenarioOf(workbook, now).perYear.cost.service, 3 * 1400 + 1100);
  expectFigures(scenarioOf(workbook, moving).perYear.cost.service, 2 * 1100 + 1400 + 1100);
});

test('only the theatres that change over are bought for', () => {
  expectFigures(scenarioOf(workbook, moving).againstBaseline.investment, 2 * (20_000 + 700 - 1500));
});

test('a scenario that says another plan for a machine that stays is followed on it', () => {
  const both: Scenario = { ...moving, id: 'both', plans: { closed: 'low', old: 'low' } };
  expectFigures(
    scenarioOf(workbookWith([now, both]), both).perYear.agents.sevoflurane?.liquidMl,
    200 * (0.5 * liquid(low, closedMachine) + 0.25 * liquid(low, oldMachine) + 0.25 * liquid(low, likeTheOld))
  );
});

describe('monitors stand in their group', () => {
  const full: readonly MonitorItem[] = [
    'pulse-oximetry',
    'ecg',
    'non-invasive-blood-pressure',
    'capnography',
    'temperature',
    'neuromuscular',
    'inspired-oxygen'
  ];
  const having = (group: TheatreGroup, analysers: number): TheatreGroup => ({
    ...group,
    monitors: {
      ...Object.fromEntries(full.map((item) => [item, group.theatres])),
      'agent-concentration': analysers
    }
  });
  const stocked = (inMain: number, inDay: number): Workbook =>
    workbookWith([{ ...now, plans: { old: 'usual', 'like-the-old': 'usual' } }, moving], {
      theatreGroups: [having(three, inMain), having(day, inDay)],
      monitorPrices: [{ item: 'agent-concentration', unitPrice: '3900' }]
    });
  const monitorsIn = (of: Workbook): number =>
    Number(scenarioOf(of, moving).againstBaseline.investment) - 2 * (20_000 + 700 - 1500);

  test('one of the group itself is placed where the low plan is followed', () => {
    expectFigures(monitorsIn(stocked(1, 0)), 3900);
  });

  test('none is asked for where a case group has a share of 0', () => {
    const elsewhere = { ...hernia, theatreGroups: { main: 0, day: 100 } };
    expectFigures(monitorsIn({ ...stocked(0, 1), caseMix: [elsewhere, neck, hip] }), 0);
  });

  test('one of another group fills no gap, and moving it is proposed', () => {
    expectFigures(monitorsIn(stocked(0, 1)), 2 * 3900);
    expect(scenarioOf(stocked(0, 1), moving).placing).toEqual([
      { item: 'agent-concentration', from: 'day', to: 'main', number: 1 }
    ]);
    expect(scenarioOf(stocked(2, 1), moving).placing).toEqual([]);
  });
});

test('adoption that rises over the years: each year follows by its own share, and the last is the settled one', () => {
  const rising: Scenario = { ...lowFlow, id: 'rising', adoptionFirstYearsPercent: [20, 90] };
  const of = (adoptionPercent: number): number => {
    const steady: Scenario = { ...lowFlow, id: 'rising', adoptionPercent };
    return Number(
      scenarioOf(wholeWorkbook({ scenarios: [today, steady] }), steady).againstBaseline.yearlySaving
    );
  };
  const { againstBaseline } = scenarioOf(wholeWorkbook({ scenarios: [today, rising] }), rising);
  // Never more than the 60 % that are reached in the end.
  expectFigures(
    againstBaseline.years.map(({ saving }) => saving),
    [0, of(20), of(60), of(60), of(60)]
  );
  expectFigures(againstBaseline.yearlySaving, of(60));
});

describe('how much the theatres are taken up', () => {
  test('is said where the cases take more hours than are staffed', () => {
    // 200 × 60 + 50 × 120 + 80 × 90 min are 420 h, of which three quarters are done in three of four theatres.
    const staffed = (hours: number): string =>
      warningsOf(
        workbookWith([now, moving], { theatreGroups: [{ ...three, staffedHoursPerTheatre: hours }, day] })
      ).join('\n');
    expect(staffed(104)).toContain(
      '“Theatres” is staffed for 312 hours a year, and its cases take 315: check the cases'
    );
    expect(staffed(105)).not.toContain('is staffed for');
  });
});

test('what was measured of a group that is done on unlike machines is said to be that of the first', () => {
  const said = (row: CaseRow): string =>
    warningsOf(workbookWith([now, moving], { caseMix: [row] })).join('\n');
  const measured = { ...hernia, measuredMlPerCase: 17 };
  expect(said(measured)).toContain('What was measured of “Hernia repair” is taken to be the use on “In use”');
  expect(said(hernia)).not.toContain('measured');
  expect(said({ ...measured, theatreGroups: { day: 100 } })).not.toContain('measured');
});

test('a switch to an agent that is itself switched is done once, and that is said', () => {
  const chained: Scenario = {
    ...moving,
    agentSwitch: { sevoflurane: 'desflurane', desflurane: 'sevoflurane' }
  };
  expect(warningsOf(workbookWith([now, chained])).join('\n')).toContain(
    'those given sevoflurane today are given desflurane'
  );
  expect(warningsOf(workbook).join('\n')).not.toContain('changes once');
});
