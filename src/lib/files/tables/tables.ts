/** The workbook's lists as tables for files: what stands in which column, under which heading. One source for CSV and XLSX. */
import type { ListName } from '#lib/workbook/edit-rows.ts';
import type { Field } from '#lib/workbook/field.ts';
import {
  absorbentFields,
  accountingFields,
  agentFields,
  avoidedPurchaseFields,
  caseFields,
  gasFields,
  intravenousFields,
  regionalFields,
  machineFields,
  markFields,
  monitorPriceFields,
  moveFields,
  paymentFields,
  phaseFields,
  planByCaseField,
  planFields,
  samplingFields,
  scenarioFields,
  siteFields,
  theatreGroupFields,
  warmingFields,
  workbookFields
} from '#lib/workbook/fields.ts';
import { gradeField } from '#lib/workbook/source-notes.ts';
import type { AttachedField } from './attached-fields.ts';
import { caseAttached, machineAttached, scenarioAttached, theatreGroupAttached } from './attached-fields.ts';

export const tableIds = [
  'theatreGroups',
  'caseMix',
  'flowPlans',
  'machines',
  'scenarios',
  'moves',
  'plansByCase',
  'avoidedPurchases',
  'agents',
  'absorbents',
  'monitorPrices',
  'ranges',
  'notes',
  'ownFigures',
  'settings'
] as const;
export type TableId = (typeof tableIds)[number];

export const tableTitles: Readonly<Record<TableId, string>> = {
  theatreGroups: 'Theatres',
  caseMix: 'Case mix',
  flowPlans: 'Flow plans',
  machines: 'Machines',
  scenarios: 'Scenarios',
  moves: 'Machines that come',
  plansByCase: 'Plans by case group',
  avoidedPurchases: 'Purchases avoided',
  agents: 'Agents',
  absorbents: 'Absorbents',
  monitorPrices: 'Monitors',
  ranges: 'Ranges',
  notes: 'Source notes',
  ownFigures: 'Own figures',
  settings: 'Settings'
};

/** A column: the key of its cells, and what they hold. */
export interface TableColumn {
  readonly key: string;
  readonly header: string;
  /** The field whose values they are; null where they are no cells of a grid. */
  readonly field: Field | null;
  /** What an entry holds beside its cells, as one text. */
  readonly attached?: AttachedField;
}

/** A column that holds ids, so that a table that comes back meets the rows that it left. */
export const idColumn: TableColumn = { key: 'id', header: 'Id', field: null };

/** A field's heading with its unit, e.g. `Minutes (min)`, `Bottle price (EUR per bottle)`. */
export function headerOf(field: Field, currency: string): string {
  const unit =
    field.kind === 'number' ? field.unit : field.kind === 'money' ? `${currency} ${field.per}`.trim() : '';
  return unit === '' ? field.title : `${field.title} (${unit})`;
}

/** The columns of a list's table. */
export function columnsOf(table: ListName, currency: string): readonly TableColumn[] {
  const of = (fields: Readonly<Record<string, Field>>): readonly TableColumn[] =>
    Object.entries(fields).map(([key, field]) => ({ key, header: headerOf(field, currency), field }));
  const beside = (fields: Readonly<Record<string, AttachedField>>): readonly TableColumn[] =>
    Object.entries(fields).map(([key, field]) => ({
      key,
      header: field.form === '' ? field.title : `${field.title} (${field.form})`,
      field: null,
      attached: field
    }));
  switch (table) {
    case 'caseMix':
      return [...of(caseFields), ...beside(caseAttached), idColumn];
    case 'theatreGroups':
      return [...of(theatreGroupFields), ...beside(theatreGroupAttached), idColumn];
    case 'flowPlans':
      return [...of({ plan: planFields.name, ...phaseFields }), idColumn];
    case 'machines':
      return [...of(machineFields), ...beside(machineAttached), idColumn];
    case 'scenarios':
      return [...of(scenarioFields), ...beside(scenarioAttached), idColumn];
    case 'agents':
      return of(agentFields);
    case 'absorbents':
      return [...of(absorbentFields), idColumn];
    case 'monitorPrices':
      return of(monitorPriceFields);
  }
}

/** The columns of the settings' table. */
export const settingColumns: readonly TableColumn[] = [
  { key: 'section', header: 'Section', field: null },
  { key: 'setting', header: 'Setting', field: null },
  { key: 'value', header: 'Value', field: null }
];

/** The plan of one case group in one scenario, where it is not the scenario's own; a row for each. */
export const planByCaseColumns: readonly TableColumn[] = [
  { key: 'scenario', header: 'Scenario', field: null },
  { key: 'case', header: 'Case group', field: null },
  { key: 'plan', header: planByCaseField.title, field: planByCaseField }
];

/** The key of a column that says how a machine is paid for that is not bought. */
export const paymentColumnKey = (key: string): string => `payment.${key}`;

/** Machines that come to theatres under a scenario; a row for each. Without a way of paying they are bought. */
export const moveColumns = (currency: string): readonly TableColumn[] => [
  { key: 'scenario', header: 'Scenario', field: null },
  ...Object.entries(moveFields).map(([key, field]) => ({ key, header: headerOf(field, currency), field })),
  ...Object.entries(paymentFields).map(([key, field]) => ({
    key: paymentColumnKey(key),
    header: headerOf(field, currency),
    field
  }))
];

/** Purchases that scenarios make unnecessary; a row for each. */
export const avoidedPurchaseColumns = (currency: string): readonly TableColumn[] => [
  { key: 'scenario', header: 'Scenario', field: null },
  ...Object.entries(avoidedPurchaseFields).map(([key, field]) => ({
    key,
    header: headerOf(field, currency),
    field
  }))
];

/** What the user holds possible for single cells; a row for each. Cells are known by their path in the workbook. */
export const rangeTableColumns: readonly TableColumn[] = [
  { key: 'of', header: 'Of', field: null },
  { key: 'what', header: 'What', field: null },
  { key: 'cell', header: 'Cell', field: null },
  { key: 'low', header: 'Low', field: null },
  { key: 'high', header: 'High', field: null }
];

/** Where the figures of single cells come from; a row for each. */
export const noteColumns: readonly TableColumn[] = [
  { key: 'of', header: 'Of', field: null },
  { key: 'what', header: 'What', field: null },
  { key: 'cell', header: 'Cell', field: null },
  { key: 'grade', header: gradeField.title, field: null },
  { key: 'date', header: 'Date', field: null },
  { key: 'text', header: 'Note', field: null }
];

/** Figures of the user's own in place of published constants; a row for each. */
export const ownFigureColumns: readonly TableColumn[] = [
  { key: 'constant', header: 'Constant', field: null },
  { key: 'value', header: 'Value', field: null },
  { key: 'unit', header: 'Unit', field: null },
  { key: 'reason', header: 'Reason', field: null }
];

/** The columns of any table. */
export function tableColumns(table: TableId, currency: string): readonly TableColumn[] {
  switch (table) {
    case 'plansByCase':
      return planByCaseColumns;
    case 'moves':
      return moveColumns(currency);
    case 'avoidedPurchases':
      return avoidedPurchaseColumns(currency);
    case 'ranges':
      return rangeTableColumns;
    case 'notes':
      return noteColumns;
    case 'ownFigures':
      return ownFigureColumns;
    case 'settings':
      return settingColumns;
    default:
      return columnsOf(table, currency);
  }
}

/** A setting: a cell outside the lists. */
export interface Setting {
  readonly path: string;
  readonly section: string;
  readonly field: Field;
}

/** All settings, section by section. */
export const settings: readonly Setting[] = (
  [
    ['', 'Workbook', { ...workbookFields, ...markFields }],
    ['site.', 'Site', siteFields],
    ['accounting.', 'Accounting', accountingFields],
    ['accounting.customWarming.', 'Accounting', warmingFields],
    ['gases.', 'Gases', gasFields],
    ['intravenous.', 'Intravenous anaesthesia', intravenousFields],
    ['regional.', 'Regional anaesthesia', regionalFields],
    ['sampling.', 'Uncertainty', samplingFields]
  ] as const
).flatMap(([base, section, fields]) =>
  Object.entries(fields as Readonly<Record<string, Field>>).map(([key, field]) => ({
    path: base + key,
    section,
    field
  }))
);
