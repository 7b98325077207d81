/** Nitrous oxide that is bought and reaches no patient. */
import { expect, test } from 'vitest';
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
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

const buying = (nitrousOxideBoughtKgPerYear: number | null): Workbook => {
  const { gases } = wholeWorkbook();
  return wholeWorkbook({ gases: { ...gases, nitrousOxideBoughtKgPerYear } });
};
const usedKg = (plan: typeof usual): number =>
  200 *
  oneCase(wholeWorkbook(), { row: hernia, plan, machine: oldMachine }).nitrousOxideL *
  nitrousOxideKgPerL;

test('nitrous oxide lost from the pipes is what today does not use of what is bought, in every scenario', () => {
  expect(usedKg(low)).toBeLessThan(0.9 * usedKg(usual));
  for (const scenario of [today, lowFlow])
    expectFigures(
      scenarioOf(buying(300), scenario).perYear.co2eKg.nitrousOxideLost,
      (300 - usedKg(usual)) * 273
    );
});

test('nothing is lost where today uses more than is bought', () => {
  const less = buying(usedKg(usual) / 2);
  for (const scenario of [today, lowFlow])
    expectFigures(scenarioOf(less, scenario).perYear.co2eKg.nitrousOxideLost, 0);
});

test('no loss is counted where purchases are not given', () => {
  expectFigures(scenarioOf(buying(null), lowFlow).perYear.co2eKg.nitrousOxideLost, 0);
});

test('what is lost is paid for beside what is used', () => {
  const gasesOf = (workbook: Workbook) => Number(scenarioOf(workbook, lowFlow).perYear.cost.gases);
  expectFigures(gasesOf(buying(300)) - gasesOf(buying(null)), (300 - usedKg(usual)) * 4);
});
