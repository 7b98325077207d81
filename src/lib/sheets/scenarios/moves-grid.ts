/** The machines that come under each scenario as one grid, with the plan that is followed on each. */
import type { CellWrite, GridColumn, GridRow } from '#lib/grid/grid-types.ts';
import { addMove, deleteMoves, moveRows, pathOfMove, planToStartFrom } from '#lib/workbook/edit-moves.ts';
import type { MoveRow } from '#lib/workbook/edit-moves.ts';
import { moveFields, planOnMachineField } from '#lib/workbook/fields.ts';
import { ownEntry } from '#lib/calc/own-entry.ts';
import type { RowsChanged } from '#lib/workbook/edit-rows.ts';
import { readText } from '#lib/workbook/read-text.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { GridRoom } from '../parts/grid-actions.ts';
import type { CellContext } from '../parts/grid-of-list.ts';
import { cellOf, columnOf } from '../parts/grid-of-list.ts';

const planKey = 'plan';

const pathOfPlan = ({ scenario, move }: MoveRow): string => `scenarios.${scenario.id}.plans.${move.machine}`;

/** With one group of theatres nobody is asked in which. */
const fieldsFor = ({ theatreGroups }: Workbook) => {
  const { theatreGroup, ...others } = moveFields;
  return theatreGroups.length === 1 ? others : { theatreGroup, ...others };
};

export function movesGrid(context: CellContext): {
  readonly columns: readonly GridColumn[];
  readonly rows: readonly GridRow[];
} {
  const { workbook } = context;
  const { machine, ...others } = fieldsFor(workbook);
  const fields = Object.entries(others);
  return {
    columns: [
      {
        key: 'name',
        title: 'Scenario',
        words: 'The scenario under which the machine comes.',
        kind: 'computed',
        names: true,
        widthCh: 28
      },
      columnOf('machine', machine, context, 28),
      columnOf(planKey, { ...planOnMachineField, title: 'Flow plan on it' }, context, 20),
      ...fields.map(([key, field]) => columnOf(key, field, context, key === 'year' ? 8 : 18))
    ],
    rows: moveRows(workbook).map((row): GridRow => {
      const path = pathOfMove(row);
      const name = row.scenario.name;
      return {
        id: path,
        label: name,
        cells: [
          { text: name, editText: name, state: 'computed' },
          cellOf(`${path}.machine`, machine, context),
          cellOf(pathOfPlan(row), planOnMachineField, context),
          ...fields.map(([key, field]) => cellOf(`${path}.${key}`, field, context))
        ]
      };
    })
  };
}

export const roomOfMoves: GridRoom = {
  pathOf: (workbook, row, column) => {
    const found = moveRows(workbook)[row];
    if (found === undefined) return null;
    if (column === planKey) return pathOfPlan(found);
    return ownEntry(moveFields, column) === undefined ? null : `${pathOfMove(found)}.${column}`;
  },
  rowCount: (workbook) => moveRows(workbook).length,
  prepare: withPlansFor,
  insert: addUnderScenarioOf,
  duplicate: (workbook, rows) => addUnderScenarioOf(workbook, Math.max(...rows) + 1, 1),
  remove: deleteMoves
};

/** Another machine under the scenario of the row before this place, for theatres that are left. */
function addUnderScenarioOf(workbook: Workbook, at: number, count: number): RowsChanged {
  const rows = moveRows(workbook);
  const scenarioId = (rows[at - 1] ?? rows[0])?.scenario.id;
  if (scenarioId === undefined) return { sentence: 'Say under which scenario a machine comes.' };
  let changed: RowsChanged = { workbook };
  for (let added = 0; added < count && 'workbook' in changed; added += 1)
    changed = addMove(changed.workbook, scenarioId);
  return changed;
}

/**
 * The workbook in which machines that are about to be chosen have a plan in their scenario: a machine without one is
 * refused, and nobody is sent to another table first.
 */
function withPlansFor(workbook: Workbook, cells: readonly CellWrite[], locale: string): Workbook {
  return cells.reduce((changed, { row, column, text }) => {
    const found = moveRows(changed)[row];
    if (column !== 'machine' || found === undefined) return changed;
    const read = readText(text, { field: moveFields.machine, workbook: changed, locale });
    if (!('value' in read) || typeof read.value !== 'string') return changed;
    const { scenario, move } = found;
    if (ownEntry(scenario.plans, read.value) !== undefined) return changed;
    const plan = ownEntry(scenario.plans, move.machine) ?? planToStartFrom(changed, scenario);
    return {
      ...changed,
      scenarios: changed.scenarios.map((each) =>
        each.id === scenario.id ? { ...each, plans: { ...each.plans, [read.value as string]: plan } } : each
      )
    };
  }, workbook);
}
