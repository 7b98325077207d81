import { crossChecks } from './cross-checks.ts';
import type { RowsChanged } from './edit-rows.ts';
import type { Workbook } from './workbook.ts';

/**
 * Another scenario as today's practice, against which all others are counted; or why it cannot be. One that names no plan
 * takes those of the one before.
 */
export function standForToday(workbook: Workbook, id: string, locale?: string): RowsChanged {
  const before = workbook.scenarios.find(({ baseline }) => baseline);
  const changed: Workbook = {
    ...workbook,
    scenarios: workbook.scenarios.map((scenario) => {
      const baseline = scenario.id === id;
      const plans =
        baseline && Object.keys(scenario.plans).length === 0 ? (before?.plans ?? {}) : scenario.plans;
      return { ...scenario, baseline, plans };
    })
  };
  const known = new Set(crossChecks(workbook, locale).map(({ path, sentence }) => `${path} ${sentence}`));
  const fault = crossChecks(changed, locale).find(({ path, sentence }) => !known.has(`${path} ${sentence}`));
  return fault === undefined ? { workbook: changed } : { sentence: fault.sentence };
}
