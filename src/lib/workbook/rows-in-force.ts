import type { Workbook } from './workbook.ts';

/** The case group in which a cell stands; null for a cell elsewhere. */
const caseIdOf = (path: string): string | null => {
  const [list, id, field] = path.split('.');
  return list === 'caseMix' && id !== undefined && field !== undefined ? id : null;
};

/** Ids of the case groups that never had a valid value in one of their cells. */
export const casesNotInForce = ({ neverGiven = [] }: Pick<Workbook, 'neverGiven'>): ReadonlySet<string> =>
  new Set(neverGiven.flatMap((path) => caseIdOf(path) ?? []));

/**
 * The workbook without the rows that take part in nothing: case groups that came with a text which could not be taken
 * and have had no valid value in that cell since. What stands in the cell then is a start value that nobody gave, and to
 * count with it would be to make figures up.
 */
export function rowsInForce(workbook: Workbook): Workbook {
  const out = casesNotInForce(workbook);
  if (out.size === 0) return workbook;
  const isIn = ([path]: readonly [string, unknown]): boolean => !out.has(caseIdOf(path) ?? '');
  return {
    ...workbook,
    caseMix: workbook.caseMix.filter(({ id }) => !out.has(id)),
    scenarios: workbook.scenarios.map((scenario) => {
      const { flowPlanByCase, intravenousPercentByCase, regionalPercentByCase } = scenario;
      const byCase = { flowPlanByCase, intravenousPercentByCase, regionalPercentByCase };
      if (!Object.values(byCase).some((record) => Object.keys(record).some((id) => out.has(id))))
        return scenario;
      const staying = <T>(record: Readonly<Record<string, T>>): Record<string, T> =>
        Object.fromEntries(Object.entries(record).filter(([id]) => !out.has(id)));
      return {
        ...scenario,
        flowPlanByCase: staying(flowPlanByCase),
        intravenousPercentByCase: staying(intravenousPercentByCase),
        regionalPercentByCase: staying(regionalPercentByCase)
      };
    }),
    ranges: Object.fromEntries(Object.entries(workbook.ranges).filter(isIn))
  };
}
