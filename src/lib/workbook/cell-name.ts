import { readCell } from '#lib/calc/cell-path.ts';
import { fieldAt } from './field-at.ts';
import { agentOptions, monitorItemOptions } from './fields.ts';
import { rangedConstantAt } from './ranged-constants.ts';
import type { Workbook } from './workbook.ts';

const rooms: Readonly<Record<string, string>> = {
  caseMix: 'Case mix',
  flowPlans: 'Flow plans',
  machines: 'Machines',
  scenarios: 'Scenarios',
  agents: 'Prices',
  gases: 'Prices',
  intravenous: 'Prices',
  regional: 'Prices',
  absorbents: 'Prices',
  theatreGroups: 'Theatres',
  monitorPrices: 'Theatres',
  site: 'Site',
  accounting: 'Accounting',
  sampling: 'Uncertainty'
};

/** A cell as a reader calls it: sheet, entry and column, e.g. `Case mix, Laparoscopic cholecystectomy: Minutes`. */
export function cellName(workbook: Workbook, path: string): string {
  const end = /^ranges\.(.*)\.(low|high)$/.exec(path);
  if (end !== null) return `Uncertainty, range of “${cellName(workbook, end[1] ?? '')}”: ${end[2]}`;
  const published = rangedConstantAt(workbook, path);
  if (published !== null) return `Evidence: ${published.constant.name}`;
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
    const label = name ?? agent ?? item ?? machineOfMove(workbook, entry);
    if (typeof label === 'string') names.push(label);
  }
  const ofRecord = recordKey.exec(path)?.[1];
  if (ofRecord !== undefined) names.push(labelOf(workbook, ofRecord));
  return [room, ...names].join(', ');
}

/** A machine that comes has no name of its own: it is called after the machine. */
function machineOfMove({ machines }: Workbook, entry: unknown): string | undefined {
  const { theatreGroup, machine } = (typeof entry === 'object' && entry !== null ? entry : {}) as Record<
    string,
    unknown
  >;
  return theatreGroup === undefined ? undefined : machines.find(({ id }) => id === machine)?.name;
}

/** Cells of a record say by their last part what they are about: a machine, a theatre group, an agent, a monitor. */
const recordKey =
  /^(?:scenarios\.[^.]+\.(?:plans|flowPlanByCase|agentSwitch|intravenousPercentByCase|regionalPercentByCase)|theatreGroups\.[^.]+\.monitors|caseMix\.[^.]+\.theatreGroups)\.([^.]+)$/;

function labelOf({ machines, theatreGroups, caseMix }: Workbook, key: string): string {
  const entry = [...machines, ...theatreGroups, ...caseMix].find(({ id }) => id === key);
  const option = [...agentOptions, ...monitorItemOptions].find(({ id }) => id === key);
  return entry?.name ?? option?.label ?? key;
}

/** What a run draws of the model itself stands in no cell. */
const modelErrorNames: Readonly<Record<string, string>> = {
  'modelError.uptakeFactor': 'The model itself: what patients take up',
  'modelError.spillFactor': 'The model itself: what is spilled',
  'modelError.spillShare': 'The model itself: where gas is spilled'
};

/** What varies together in a run, as a reader calls it: only the minutes of case groups do. */
export const cellsName = (workbook: Workbook, paths: readonly string[]): string =>
  modelErrorNames[paths[0] ?? ''] ??
  (paths.length > 1 ? 'Minutes of all case groups together' : cellName(workbook, paths[0] ?? ''));
