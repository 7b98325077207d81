/** The workbook's lists as tables for files: what stands in which column, under which heading. One source for CSV and XLSX. */
import { entryKey } from '#lib/workbook/edit-rows.ts';
import type { Field } from '#lib/workbook/field.ts';
import {
  absorbentFields,
  accountingFields,
  agentFields,
  caseFields,
  gasFields,
  machineFields,
  monitorFields,
  phaseFields,
  planFields,
  samplingFields,
  scenarioFields,
  siteFields,
  workbookFields
} from '#lib/workbook/fields.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

export const tableIds = [
  'caseMix',
  'flowPlans',
  'machines',
  'scenarios',
  'agents',
  'absorbents',
  'monitors',
  'settings'
] as const;
export type TableId = (typeof tableIds)[number];

export const tableTitles: Readonly<Record<TableId, string>> = {
  caseMix: 'Case mix',
  flowPlans: 'Flow plans',
  machines: 'Machines',
  scenarios: 'Scenarios',
  agents: 'Agents',
  absorbents: 'Absorbents',
  monitors: 'Monitors',
  settings: 'Settings'
};

/** A column: the key of its cells, and the field whose values they hold; null for what names the row itself. */
export interface TableColumn {
  readonly key: string;
  readonly header: string;
  readonly field: Field | null;
}

/** A column that holds ids, so that a table that comes back meets the rows that it left. */
export const idColumn: TableColumn = { key: 'id', header: 'Id', field: null };

/** A field's heading with its unit, e.g. `Minutes (min)`, `Bottle price (EUR per bottle)`. */
export function headerOf(field: Field, currency: string): string {
  const unit =
    field.kind === 'number' ? field.unit : field.kind === 'money' ? `${currency} ${field.per}`.trim() : '';
  return unit === '' ? field.title : `${field.title} (${unit})`;
}

/** The columns of a table; `settings` has one row for each setting and is read by name instead. */
export function columnsOf(table: Exclude<TableId, 'settings'>, currency: string): readonly TableColumn[] {
  const of = (fields: Readonly<Record<string, Field>>): readonly TableColumn[] =>
    Object.entries(fields).map(([key, field]) => ({ key, header: headerOf(field, currency), field }));
  switch (table) {
    case 'caseMix':
      return [...of(caseFields), idColumn];
    case 'flowPlans':
      return [...of({ plan: planFields.name, ...phaseFields }), idColumn];
    case 'machines':
      return [...of(machineFields), idColumn];
    case 'scenarios':
      return [...of(scenarioFields), idColumn];
    case 'agents':
      return of(agentFields);
    case 'absorbents':
      return [...of(absorbentFields), idColumn];
    case 'monitors':
      return of(monitorFields);
  }
}

/** One row of a table: the path of each column's cell; null where the column names the row and is no cell. */
export interface TableRow {
  readonly id: string;
  readonly pathOf: (key: string) => string | null;
}

/** The rows of a table as they stand in a workbook. */
export function rowsOf(table: Exclude<TableId, 'settings'>, workbook: Workbook): readonly TableRow[] {
  if (table === 'flowPlans')
    return workbook.flowPlans.flatMap(({ id, phases }) =>
      phases.map((_, index) => ({
        id,
        pathOf: (key) =>
          key === 'id'
            ? null
            : key === 'plan'
              ? `flowPlans.${id}.name`
              : `flowPlans.${id}.phases.${index}.${key}`
      }))
    );
  const entries: readonly object[] = workbook[table];
  return entries.map((entry) => {
    const id = entryKey(entry);
    return { id, pathOf: (key) => (key === 'id' ? null : `${table}.${id}.${key}`) };
  });
}

/** The columns of the settings' table. */
export const settingColumns: readonly TableColumn[] = [
  { key: 'section', header: 'Section', field: null },
  { key: 'setting', header: 'Setting', field: null },
  { key: 'value', header: 'Value', field: null }
];

/** A setting: a cell outside the lists. */
export interface Setting {
  readonly path: string;
  readonly section: string;
  readonly field: Field;
}

/** All settings, section by section. */
export const settings: readonly Setting[] = (
  [
    ['', 'Workbook', workbookFields],
    ['site.', 'Site', siteFields],
    ['accounting.', 'Accounting', accountingFields],
    ['gases.', 'Gases', gasFields],
    ['sampling.', 'Uncertainty', samplingFields]
  ] as const
).flatMap(([base, section, fields]) =>
  Object.entries(fields as Readonly<Record<string, Field>>).map(([key, field]) => ({
    path: base + key,
    section,
    field
  }))
);
