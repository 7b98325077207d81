/** Where a scenario's plans go below what the US label of sevoflurane allows: one caution with its counts. */
import type { CaseResult, CaseWarning } from '../case/case-result.ts';
import type { Caution } from '../estimate-types.ts';
import type { EstimateInput, Scenario } from '../input.ts';
import type { Reckoning } from '../reckoning/reckoning.ts';
import type { CaseReckoning } from '../reckoning/scenario-cases.ts';
import { statement } from '../reference/statements.ts';
import { citation } from '../working/citation.ts';

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** The cautions of all scenarios, from a calculation that is at hand. */
export const cautionsOf = (input: EstimateInput, reckoning: Pick<Reckoning, 'cases'>): Caution[] =>
  input.scenarios.flatMap((scenario) => lowFlowCautions(scenario, reckoning.cases(scenario)));

/**
 * The caution of a scenario, or none where no case group with cases in the year triggers it. A group that is beyond both
 * clauses of the label counts with the stricter one, below 1 L/min.
 * @param cases of that scenario, each on its own plan: adoption is not applied, it is told
 */
export function lowFlowCautions(
  { id, name, adoptionPercent }: Scenario,
  cases: readonly CaseReckoning<CaseResult>[]
): Caution[] {
  const groupsWith = (code: CaseWarning['code']) =>
    cases.filter(
      ({ row, result }) => row.casesPerYear > 0 && result.warnings.some((warning) => warning.code === code)
    );
  const below = groupsWith('sevoflurane-below-1-l-per-min');
  const longer = groupsWith('sevoflurane-above-2-mac-hours');
  const all = [...below, ...longer];
  if (all.length === 0) return [];
  const yearly = (groups: typeof all): number => groups.reduce((sum, { row }) => sum + row.casesPerYear, 0);
  const counts = (groups: typeof all): string =>
    `${counted(groups.length, 'case group', 'case groups')} (${counted(Math.round(yearly(groups)), 'case', 'cases')} a year)`;
  const clauses = [
    ...(below.length === 0
      ? []
      : [`below 1 L/min, which the US label does not recommend, in ${counts(below)}`]),
    ...(longer.length === 0
      ? []
      : [
          `at 1 to below 2 L/min for longer than the 2 MAC-hours that the US label allows, in ${counts(longer)}`
        ])
  ];
  const { source, evidence } = statement('caution.sevoflurane.low-flow');
  return [
    {
      id: 'sevoflurane-low-flow',
      level: 'caution',
      scenario: id,
      rows: all.map(({ row }) => row.id),
      casesPerYear: yearly(all),
      sentence:
        `“${name}” runs sevoflurane ${clauses.join(', and ')}.` +
        (adoptionPercent < 100 ? ` Of these cases ${adoptionPercent}\u00a0% follow the plan.` : '') +
        ' Newer statements contest the label for absorbents without strong base; the label in force and local policy decide.',
      source: citation(source),
      evidence
    }
  ];
}
