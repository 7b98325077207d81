/** A scenario that mends the pipes, closes them, or buys no nitrous oxide any more: added up by hand, year by year. */
import { describe, expect, test } from 'vitest';
import type { CaseRow, Scenario } from '#lib/calc/input.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import {
  expectFigures,
  hernia,
  low,
  lowFlow,
  nitrousOxideKgPerL,
  oldMachine,
  oneCase,
  scenarioOf,
  today,
  usual,
  warningsOf,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

const usedKg = (plan: typeof usual): number =>
  200 *
  oneCase(wholeWorkbook(), { row: hernia, plan, machine: oldMachine }).nitrousOxideL *
  nitrousOxideKgPerL;
const usedTodayKg = usedKg(usual);
const boughtKg = 300;
/** Only the supply changes; nothing else does. */
const closing: Scenario = {
  ...today,
  id: 'closing',
  name: 'Closing the pipes',
  baseline: false,
  nitrousOxideSupply: 'cylinders',
  nitrousOxideSupplyYear: 1,
  nitrousOxideLossPercent: 4,
  nitrousOxideSupplyCost: '2500'
};
const workbookWith = (scenario: Scenario, changes: Partial<Workbook> = {}): Workbook =>
  wholeWorkbook({ scenarios: [today, scenario], ...changes });
const of = (scenario: Scenario, changes: Partial<Workbook> = {}) =>
  scenarioOf(workbookWith(scenario, changes), scenario);

describe('cylinders at the machines', () => {
  test('lose a share of what is bought, once all has settled', () => {
    // Of 100 bought 4 are lost: 96 are used.
    const lostKg = (usedTodayKg * 4) / 96;
    const { perYear } = of(closing);
    expectFigures(perYear.co2eKg.nitrousOxideLost, lostKg * 273);
    expectFigures(
      Number(scenarioOf(workbookWith(closing), today).perYear.cost.gases) - Number(perYear.cost.gases),
      (boughtKg - usedTodayKg - lostKg) * 4
    );
  });

  test('save from the year after they come, and the pipes are closed for a sum once', () => {
    const saved = (boughtKg - usedTodayKg - (usedTodayKg * 4) / 96) * 4;
    const { years } = of(closing).againstBaseline;
    expectFigures(
      years.map(({ saving }) => saving),
      [0, 0, saved, saved, saved]
    );
    expectFigures(
      years.map(({ investment }) => investment),
      [0, 2500, 0, 0, 0]
    );
  });

  test('avoid emissions in the years in which they stand', () => {
    const avoidedKg = (boughtKg - usedTodayKg - (usedTodayKg * 4) / 96) * 273;
    expectFigures(of(closing).againstBaseline.co2eAvoidedOverAppraisalKg, 3 * avoidedKg);
  });

  test('lose by what the scenario itself uses', () => {
    const both: Scenario = { ...lowFlow, ...supplyOf(closing), adoptionPercent: 100 };
    expectFigures(of(both).perYear.co2eKg.nitrousOxideLost, ((usedKg(low) * 4) / 96) * 273);
  });
});

test('pipes whose leaks are mended lose the share that is said', () => {
  const mended: Scenario = { ...closing, nitrousOxideSupply: 'pipes', nitrousOxideLossPercent: 50 };
  expectFigures(of(mended).perYear.co2eKg.nitrousOxideLost, usedTodayKg * 273);
});

test('with none bought nothing is lost', () => {
  const none: Scenario = { ...closing, nitrousOxideSupply: 'none' };
  const without: readonly CaseRow[] = [{ ...hernia, nitrousOxidePercent: 0 }];
  expectFigures(of(none, { caseMix: without }).perYear.co2eKg.nitrousOxideLost, 0);
  expectFigures(
    of({ ...none, nitrousOxideSupply: 'as-today' }, { caseMix: without }).perYear.co2eKg.nitrousOxideLost,
    boughtKg * 273
  );
});

test('where purchases are not given no change of the supply is worth anything', () => {
  const { gases } = wholeWorkbook();
  const { againstBaseline, perYear } = of(closing, {
    gases: { ...gases, nitrousOxideBoughtKgPerYear: null }
  });
  expectFigures(perYear.co2eKg.nitrousOxideLost, 0);
  expectFigures(againstBaseline.co2eAvoidedKg, 0);
});

test('and that is said, where a scenario changes it and the purchases are not there', () => {
  const { gases } = wholeWorkbook();
  const unknown = { gases: { ...gases, nitrousOxideBoughtKgPerYear: null } };
  const said = '“Closing the pipes” changes the supply of nitrous oxide, and no purchases are given';
  expect(warningsOf(workbookWith(closing, unknown)).join('\n')).toContain(said);
  expect(warningsOf(workbookWith(closing)).join('\n')).not.toContain('no purchases are given');
  const unchanged: Scenario = { ...closing, nitrousOxideSupply: 'as-today' };
  expect(warningsOf(workbookWith(unchanged, unknown)).join('\n')).not.toContain(said);
});

test('the supply is a lever of its own, beside the flow', () => {
  const both: Scenario = { ...lowFlow, ...supplyOf(closing), adoptionPercent: 100 };
  const { attribution, againstBaseline } = of(both);
  expect(attribution?.map(({ lever }) => lever)).toEqual(['flow', 'nitrous-oxide']);
  const parts = attribution?.map(({ npv }) => Number(npv)) ?? [];
  expectFigures(
    againstBaseline.npv,
    parts.reduce((sum, part) => sum + part, 0)
  );
  const [flow, supply] = attribution ?? [];
  // Mending the supply also takes away what a lower flow would lose less: the average over both orders.
  const gone = boughtKg - usedTodayKg;
  const [afterUsual, afterLow] = [(usedTodayKg * 4) / 96, (usedKg(low) * 4) / 96];
  expectFigures(supply?.co2eAvoidedKg, ((gone - afterUsual + (gone - afterLow)) / 2) * 273);
  expect(flow?.co2eAvoidedKg).toBeGreaterThan(0);
});

describe('is refused, in a sentence at its cell,', () => {
  const sentenceFor = (scenario: Scenario): string => {
    const parsed = parseWorkbook(JSON.parse(JSON.stringify(workbookWith(scenario))));
    return 'issues' in parsed
      ? parsed.issues.map(({ path, sentence }) => `${path} ${sentence}`).join('\n')
      : '';
  };

  test('none at all, where a case group is given nitrous oxide', () => {
    expect(sentenceFor({ ...closing, nitrousOxideSupply: 'none' })).toContain(
      'scenarios.closing.nitrousOxideSupply Nitrous oxide: “None” was given, but a case group is given it'
    );
  });

  test('a year in which the appraisal is over', () => {
    expect(sentenceFor({ ...closing, nitrousOxideSupplyYear: 4 })).toContain('0 to 3 is allowed');
    expect(sentenceFor(closing)).toBe('');
  });

  test('a change of what stands for today', () => {
    const changed: Scenario = { ...today, nitrousOxideSupply: 'pipes' };
    const parsed = parseWorkbook(
      JSON.parse(JSON.stringify(wholeWorkbook({ scenarios: [changed, lowFlow] })))
    );
    expect(JSON.stringify(parsed)).toContain('only “As today” is allowed');
  });
});

function supplyOf({
  nitrousOxideSupply,
  nitrousOxideSupplyYear,
  nitrousOxideLossPercent,
  nitrousOxideSupplyCost
}: Scenario) {
  return { nitrousOxideSupply, nitrousOxideSupplyYear, nitrousOxideLossPercent, nitrousOxideSupplyCost };
}
