import { readCell } from '#lib/calc/cell-path.ts';
import { fieldAt } from '#lib/workbook/field-at.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

const rooms: Readonly<Record<string, string>> = {
  caseMix: 'Case mix',
  flowPlans: 'Flow plans',
  machines: 'Machines',
  scenarios: 'Scenarios',
  agents: 'Prices',
  gases: 'Prices',
  absorbents: 'Prices',
  monitors: 'Monitoring',
  site: 'Site',
  accounting: 'Accounting',
  sampling: 'Uncertainty'
};

/** A cell as a reader calls it: sheet, entry and column, e.g. `Case mix, Laparoscopic cholecystectomy: Minutes`. */
export function cellName(workbook: Workbook, path: string): string {
  const end = /^ranges\.(.*)\.(low|high)$/.exec(path);
  if (end !== null) return `Uncertainty, range of “${cellName(workbook, end[1] ?? '')}”: ${end[2]}`;
  const parts = path.split('.');
  const room = rooms[parts[0] ?? ''] ?? parts[0] ?? '';
  const names: string[] = [];
  for (let length = 2; length < parts.length; length++) {
    const entry = readCell(workbook, parts.slice(0, length).join('.'));
    const { name, agent, item } = (typeof entry === 'object' && entry !== null ? entry : {}) as Record<
      string,
      unknown
    >;
    const label = name ?? agent ?? item;
    if (typeof label === 'string') names.push(label);
  }
  const title = fieldAt(path)?.title ?? parts.at(-1) ?? '';
  return `${[room, ...names].join(', ')}: ${title}`;
}

/** Cells that vary together, as a reader calls them: only the minutes of case groups do. */
export const cellsName = (workbook: Workbook, paths: readonly string[]): string =>
  paths.length > 1 ? 'Minutes of all case groups together' : cellName(workbook, paths[0] ?? '');
