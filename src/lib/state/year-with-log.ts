/** The year of a workbook into which a log has come, as a reader weighs it. */
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { ScenarioEstimate } from '#lib/calc/estimate-types.ts';
import { explainer } from '#lib/calc/estimate/explain.ts';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { recorder } from '#lib/calc/working/recorder.ts';
import type { Working } from '#lib/calc/working/working.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** What is done today, of a workbook's estimate. */
export function todayOf(workbook: Workbook, memo: CaseMemo): ScenarioEstimate {
  const input = coreInput(workbook);
  const today = estimate(input, memo).scenarios.find((_, at) => input.scenarios[at]?.baseline === true);
  if (today === undefined) throw new Error('The workbook has no baseline.');
  return today;
}

/** A figure of a year, by its path in the estimate. */
export interface FigureOfYear {
  readonly path: string;
  readonly kind: 'liquid' | 'money' | 'mass';
  readonly words: string;
  /** mL, kg, or money as a number to be shown. */
  readonly value: number;
}

export interface YearWithLog {
  readonly figures: readonly FigureOfYear[];
  readonly working: (path: string) => Working;
}

/**
 * What a reader weighs of a workbook's year: today's liquid by agent, cost and CO2e, and what a scenario saves.
 * @param scenarioId the scenario whose saving is told; of the baseline none is
 */
export function yearWithLog(workbook: Workbook, scenarioId: string, memo = new CaseMemo()): YearWithLog {
  const input = coreInput(workbook);
  const { scenarios } = estimate(input, memo);
  const today = todayOf(workbook, memo);
  const chosen = input.scenarios.findIndex(({ id, baseline }) => id === scenarioId && !baseline);
  const { agents, cost, co2eKg } = today.perYear;
  const of = `${today.id}.perYear`;
  return {
    figures: [
      ...Object.entries(agents).map(([agent, { liquidMl }]): FigureOfYear => ({
        path: `${of}.agents.${agent}.liquidMl`,
        kind: 'liquid',
        words: `${agent.charAt(0).toUpperCase()}${agent.slice(1)}, today`,
        value: liquidMl
      })),
      { path: `${of}.cost.total`, kind: 'money', words: 'Cost, today', value: Number(cost.total) },
      { path: `${of}.co2eKg.total`, kind: 'mass', words: 'CO₂e, today', value: co2eKg.total },
      ...scenarios.flatMap((scenario, at): FigureOfYear[] =>
        at === chosen
          ? [
              {
                path: `${scenario.id}.againstBaseline.yearlySaving`,
                kind: 'money',
                words: `Saving of “${input.scenarios[at]?.name ?? ''}”`,
                value: Number(scenario.againstBaseline.yearlySaving)
              }
            ]
          : []
      )
    ],
    working: (path) => explainer(input, recorder, memo)(path)
  };
}
