/** Minutes in the recovery room that a scenario saves: by whom, and what they are worth. */
import { expect, test } from 'vitest';
import type { Scenario } from '#lib/calc/input.ts';
import { expectFigures, hip, lowFlow, scenarioOf, today, wholeWorkbook } from '../fixtures/whole-workbook.ts';

const saving: Scenario = { ...lowFlow, recoveryMinutesSavedPerCase: 4 };

test('recovery minutes are saved in the general anaesthetics that follow, and in no regional one', () => {
  const workbook = wholeWorkbook({ scenarios: [today, saving] });
  expectFigures(scenarioOf(workbook, saving).perYear.cost.recovery, -(0.6 * (200 + 50) * 4 * 1.5));
  const regionalAlone = { ...workbook, caseMix: [hip] };
  expect(scenarioOf(regionalAlone, saving).perYear.cost.recovery).toBe('0');
});

test('a case group that stays on today’s plan has nothing to follow, and counts whole', () => {
  const own: Scenario = { ...saving, flowPlanByCase: { neck: 'usual' } };
  const workbook = wholeWorkbook({ scenarios: [today, own] });
  expectFigures(scenarioOf(workbook, own).perYear.cost.recovery, -((0.6 * 200 + 50) * 4 * 1.5));
});

test('today saves no recovery minutes, whatever its scenario is given', () => {
  const workbook = wholeWorkbook({ scenarios: [{ ...today, recoveryMinutesSavedPerCase: 9 }, lowFlow] });
  expect(scenarioOf(workbook, today).perYear.cost.recovery).toBe('0');
});
