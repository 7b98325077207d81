/** Prices of monitors, and beside them the theatres of each group that have one: one grid over two lists. */
import type { MonitorPrice } from '#lib/calc/input.ts';
import type { GridColumn } from '#lib/grid/grid-types.ts';
import { monitorInPlaceField } from '#lib/workbook/fields.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { GridRoom } from '../parts/grid-actions.ts';
import { roomOfList } from '../parts/grid-actions.ts';
import type { CellContext, ExtraColumn } from '../parts/grid-of-list.ts';
import { cellOf, columnOf } from '../parts/grid-of-list.ts';

const mark = 'in:';
const pathIn = (groupId: string, item: string): string => `theatreGroups.${groupId}.monitors.${item}`;

/** A column for each theatre group; with one alone it says what it counts. */
export const columnsOfGroups = (
  { theatreGroups }: Workbook,
  context: CellContext
): ExtraColumn<MonitorPrice>[] =>
  theatreGroups.map(({ id, name, theatres }) => ({
    column: {
      ...columnOf(`${mark}${id}`, monitorInPlaceField, context, 16),
      ...(theatreGroups.length === 1
        ? {}
        : { title: name, words: `Of ${theatres}: ${monitorInPlaceField.words}` })
    } satisfies GridColumn,
    cell: ({ item }) => cellOf(pathIn(id, item), monitorInPlaceField, context)
  }));

const list = roomOfList('monitorPrices');

export const roomOfMonitors: GridRoom = {
  ...list,
  pathOf: (workbook, row, column) => {
    const item = workbook.monitorPrices[row]?.item;
    if (!column.startsWith(mark)) return list.pathOf(workbook, row, column);
    return item === undefined ? null : pathIn(column.slice(mark.length), item);
  }
};
