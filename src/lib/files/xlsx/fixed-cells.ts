/**
 * Cells that formulas of a spreadsheet take, but whose change they do not follow in full: how many theatres and machines
 * there are, and how long machines last, decides which machine stands where in which year, and so which formulas there
 * are; and today saves no recovery minutes against itself, whatever its cell says. Found by the audit of the spreadsheet (`npm run audit:xlsx`), which changes every cell in turn.
 */
const fixed =
  /^(theatreGroups\.[^.]+\.theatres|machines\.[^.]+\.lifeYears|scenarios\.[^.]+\.(spares|moves\.\d+\.theatres))$/;

/** @param baseline id of the scenario that stands for today */
export const isFixedInSpreadsheet = (path: string, baseline: string): boolean =>
  fixed.test(path) || path === `scenarios.${baseline}.recoveryMinutesSavedPerCase`;
