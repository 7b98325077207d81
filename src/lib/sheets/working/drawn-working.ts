/** Figures of the uncertainty run on the desk, and where they come from. */
import type { Working } from '#lib/calc/working/working.ts';
import type { AskedCell } from '#lib/charts/chart-data.ts';
import { runExplainer } from '#lib/state/drawn-figures.ts';
import { uncertaintyRun } from '#lib/state/app.ts';
import { cellsName } from '#lib/workbook/cell-name.ts';
import { rangedFieldAt } from '#lib/workbook/ranged-field.ts';
import { askCell } from './ask-cell.ts';
import { unitOf } from '../parts/grid-of-list.ts';
import { optionName } from '../parts/option-list.ts';

const prefix = 'drawn.';

/** The name by which a figure of the run is asked for; `figure` as `explainDrawn` takes it. */
export const drawnPath = (figure: string): string => `${prefix}${figure}`;

const explained = runExplainer({
  unitOf: (workbook, cell) => {
    const field = rangedFieldAt(workbook, cell);
    return (field === undefined ? undefined : unitOf(field, workbook.currency)) ?? '1';
  },
  nameOf: cellsName,
  optionName
});

/** How a figure of the last finished run came about. */
export function drawnWorking(path: string): Working {
  const { result } = uncertaintyRun;
  if (result === null) throw new Error('The draws that this figure came from are gone: run them again.');
  return explained(result, path.slice(prefix.length));
}

/** Whose figure it is: the scenario that was drawn. */
export function drawnWhose(path: string): string {
  const [id] = path.slice(prefix.length).split('.');
  return uncertaintyRun.result?.workbook.scenarios.find((scenario) => scenario.id === id)?.name ?? '';
}

/** Asks for a figure of a chart's table, which may be one of the run or of the estimate. */
export function askDrawnCell(cell: AskedCell): void {
  const { path } = cell;
  if (!path.startsWith(prefix)) askCell(cell);
  else askCell(cell, { working: () => drawnWorking(path), whose: drawnWhose(path) });
}
