/** Where a scenario's plans go below what the US label of sevoflurane allows: one caution with its counts. */
import type { CaseResult, CaseWarning } from '../case/case-result.ts';
import type { Caution } from '../estimate-types.ts';
import type { EstimateInput, Scenario } from '../input.ts';
import type { CasesDone, Reckoning } from '../reckoning/reckoning.ts';
import { statement } from '../reference/statements.ts';
import { citation } from '../working/citation.ts';

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** The cautions of all scenarios, from a calculation that is at hand. */
export const cautionsOf = (input: EstimateInput, reckoning: Pick<Reckoning, 'casesDone'>): Caution[] =>
  input.scenarios.flatMap((scenario) => lowFlowCautions(scenario, reckoning.casesDone(scenario)));

type Done = CasesDone<CaseResult>;

const casesAYear = (done: readonly Done[]): number =>
  done.reduce((sum, { row, sharePercent }) => sum + (row.casesPerYear * sharePercent) / 100, 0);

/**
 * The caution of a scenario, or none where no case in the year triggers it. Cases that are beyond both clauses of the
 * label count with the stricter one, below 1 L/min.
 * @param periods the cases of each row in each theatre that they are done in, each on the scenario's plan there: adoption
 *   is not applied, it is told. Of the periods the one with the most such cases is told, the last of those that are alike.
 */
export function lowFlowCautions({ id, name }: Scenario, periods: readonly (readonly Done[])[]): Caution[] {
  const found = periods.map((done) => {
    const withCode = (code: CaseWarning['code']) =>
      done.filter(
        ({ row, result }) => row.casesPerYear > 0 && result.warnings.some((warning) => warning.code === code)
      );
    return {
      below: withCode('sevoflurane-below-1-l-per-min'),
      longer: withCode('sevoflurane-above-2-mac-hours')
    };
  });
  const all = ({ below, longer }: (typeof found)[number]): readonly Done[] => [...below, ...longer];
  const most = found.reduce<(typeof found)[number] | null>(
    (best, next) => (best !== null && casesAYear(all(best)) > casesAYear(all(next)) ? best : next),
    null
  );
  const [first] = most === null ? [] : all(most);
  if (most === null || first === undefined) return [];
  const groups = (done: readonly Done[]): string[] => [...new Set(done.map(({ row }) => row.id))];
  const counts = (done: readonly Done[]): string =>
    `${counted(groups(done).length, 'case group', 'case groups')} (${counted(Math.round(casesAYear(done)), 'case', 'cases')} a year)`;
  const { below, longer } = most;
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
      rows: groups(all(most)),
      casesPerYear: casesAYear(all(most)),
      sentence:
        `“${name}” runs sevoflurane ${clauses.join(', and ')}.` +
        (first.adoptionPercent < 100
          ? ` Of these cases ${first.adoptionPercent}\u00a0% follow the plan.`
          : '') +
        ' Newer statements contest the label for absorbents without strong base; the label in force and local policy decide.',
      source: citation(source),
      evidence
    }
  ];
}
