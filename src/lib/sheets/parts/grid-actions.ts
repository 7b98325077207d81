/** What a grid's action does to the workbook: texts into cells, rows in and out, each action one step of undo. */
import type { CellWrite, GridAction } from '#lib/grid/grid-types.ts';
import type { Desk } from '#lib/state/desk.svelte.ts';
import { deletePhases, duplicatePhases, insertPhases, movePhases } from '#lib/workbook/edit-phases.ts';
import type { ListName, RowsChanged } from '#lib/workbook/edit-rows.ts';
import {
  deleteRows,
  duplicateRows,
  entryKey,
  insertRows,
  moveRows,
  orderRows
} from '#lib/workbook/edit-rows.ts';
import { fieldAt } from '#lib/workbook/field-at.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** How one grid's rows are reached and changed. */
export interface GridRoom {
  /** Path of the cell in a row and column; null where nothing can be written there. */
  readonly pathOf: (workbook: Workbook, row: number, column: string) => string | null;
  readonly rowCount: (workbook: Workbook) => number;
  /** The workbook with what texts that are about to be written take for granted; part of the same step of undo. */
  readonly prepare?: (workbook: Workbook, cells: readonly CellWrite[], locale: string) => Workbook;
  readonly insert?: (workbook: Workbook, at: number, count: number) => RowsChanged;
  readonly remove?: (workbook: Workbook, rows: readonly number[]) => RowsChanged;
  readonly duplicate?: (workbook: Workbook, rows: readonly number[]) => RowsChanged;
  readonly move?: (workbook: Workbook, rows: readonly number[], by: number) => RowsChanged;
  /** Left out where the order of the rows says something, as of the phases of a case. */
  readonly order?: (workbook: Workbook, order: readonly number[]) => RowsChanged;
}

/** The room of a list of the workbook. */
export function roomOfList(list: ListName): GridRoom {
  return {
    pathOf: (workbook, row, column) => {
      const entry = workbook[list][row];
      const path = entry === undefined ? null : `${list}.${entryKey(entry)}.${column}`;
      return path !== null && fieldAt(path) !== undefined ? path : null;
    },
    rowCount: (workbook) => workbook[list].length,
    insert: (workbook, at, count) => insertRows(workbook, { list, at, count }),
    remove: (workbook, rows) => deleteRows(workbook, { list, rows }),
    duplicate: (workbook, rows) => duplicateRows(workbook, { list, rows }),
    move: (workbook, rows, by) => moveRows(workbook, { list, rows, by }),
    order: (workbook, order) => orderRows(workbook, { list, order })
  };
}

/** The room of a flow plan's phases. */
export function roomOfPhases(plan: string): GridRoom {
  const phasesOf = (workbook: Workbook) => workbook.flowPlans.find((each) => each.id === plan)?.phases ?? [];
  return {
    pathOf: (workbook, row, column) => {
      const path = `flowPlans.${plan}.phases.${row}.${column}`;
      return row < phasesOf(workbook).length && fieldAt(path) !== undefined ? path : null;
    },
    rowCount: (workbook) => phasesOf(workbook).length,
    insert: (workbook, at, count) => insertPhases(workbook, { plan, at, count }),
    remove: (workbook, rows) => deletePhases(workbook, { plan, rows }),
    duplicate: (workbook, rows) => duplicatePhases(workbook, { plan, rows }),
    move: (workbook, rows, by) => movePhases(workbook, { plan, rows, by })
  };
}

/** The room of a table whose rows and columns both are lists of ids, e.g. a plan for each case group and scenario. */
export function roomOfTable(
  rowIds: readonly string[],
  pathOf: (rowId: string, column: string) => string
): GridRoom {
  return {
    pathOf: (_, row, column) => {
      const id = rowIds[row];
      const path = id === undefined ? null : pathOf(id, column);
      return path !== null && fieldAt(path) !== undefined ? path : null;
    },
    rowCount: () => rowIds.length
  };
}

/** Does an action of the user to the workbook on the desk. A sentence that comes back says why it was not done yet. */
export function act(desk: Desk, room: GridRoom, action: GridAction): string | void {
  switch (action.kind) {
    case 'write':
      return write(desk, room, action);
    case 'insert-rows':
      if (room.insert) desk.applyRows(room.insert(desk.workbook, action.at, action.count));
      return;
    case 'delete-rows':
      if (room.remove) desk.applyRows(room.remove(desk.workbook, action.rows));
      return;
    case 'duplicate-rows':
      if (room.duplicate) desk.applyRows(room.duplicate(desk.workbook, action.rows));
      return;
    case 'move-rows':
      if (room.move) desk.applyRows(room.move(desk.workbook, action.rows, action.by));
      return;
    case 'order-rows':
      if (room.order) desk.applyRows(room.order(desk.workbook, action.order));
  }
}

function write(
  desk: Desk,
  room: GridRoom,
  { cells, by, own }: Extract<GridAction, { kind: 'write' }>
): string | void {
  const rows = room.rowCount(desk.workbook);
  const needed = Math.max(0, ...cells.map((cell) => cell.row + 1)) - rows;
  const grown = needed > 0 && room.insert !== undefined ? room.insert(desk.workbook, rows, needed) : null;
  if (grown !== null && 'sentence' in grown) {
    desk.message = { tone: 'error', sentence: grown.sentence };
    return;
  }
  const ready = grown === null ? desk.workbook : grown.workbook;
  const workbook = room.prepare?.(ready, cells, desk.locale) ?? ready;
  const byHand = own !== true;
  const source = by === 'paste' && byHand ? desk.sourceFrom('Pasted') : undefined;
  const texts = cells.flatMap(({ row, column, text }) => {
    const path = room.pathOf(workbook, row, column);
    return path === null ? [] : [{ path, text, ...(source === undefined ? {} : { source }) }];
  });
  if (!desk.edit(texts, workbook, { byGrid: true, byHand }))
    return 'A number could be read in two ways; nothing is written until you have said which.';
}
