import { readCell } from '#lib/calc/cell-path.ts';
import { fieldAt } from './field-at.ts';
import type { Workbook } from './workbook.ts';

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
  const title = fieldAt(path)?.title ?? path.split('.').at(-1) ?? '';
  return `${cellPlace(workbook, path)}: ${title}`;
}

/** Where a cell stands, without its column: `Case mix, Laparoscopic cholecystectomy`. */
export function cellPlace(workbook: Workbook, path: string): string {
  const parts = path.split('.');
  const room = rooms[parts[0] ?? ''] ?? (parts.length === 1 ? 'Workbook' : (parts[0] ?? ''));
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
  return [room, ...names].join(', ');
}
