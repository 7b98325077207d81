/** A list of the workbook as a grid: columns from its fields, rows from its entries, and back from cells to paths. */
import type { GridCell, GridColumn, GridRow } from '#lib/grid/grid-types.ts';
import { formatForEditing, formatFull, formatMoney } from '#lib/numbers/format-number.ts';
import { readCell } from '#lib/calc/cell-path.ts';
import type { Field } from '#lib/workbook/field.ts';
import { entryKey } from '#lib/workbook/edit-rows.ts';
import { optionsOf } from '#lib/workbook/read-text.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** What a cell needs to be shown: the workbook it stands in, and the sentences of texts that could not be taken. */
export interface CellContext {
  readonly workbook: Workbook;
  readonly sentences: Readonly<Record<string, string>>;
  readonly locale: string;
}

/** The unit that stands in a heading: of money the currency and what it is paid for. */
export const unitOf = (field: Field, currency: string): string | undefined => {
  if (field.kind === 'money') return field.per === '' ? currency : `${currency} ${field.per}`;
  return field.kind === 'number' && field.unit !== '' ? field.unit : undefined;
};

const widths: Readonly<Record<Field['kind'], number>> = {
  text: 28,
  number: 9,
  money: 12,
  choice: 16,
  flag: 8,
  list: 12
};

/** The column of a field. */
export function columnOf(
  key: string,
  field: Field,
  { workbook }: Pick<CellContext, 'workbook'>,
  widthCh?: number
): GridColumn {
  const unit = unitOf(field, workbook.currency);
  return {
    key,
    title: field.title,
    ...(unit === undefined ? {} : { unit }),
    words: field.words,
    kind:
      field.kind === 'money' || field.kind === 'number'
        ? 'number'
        : field.kind === 'list'
          ? 'text'
          : field.kind,
    ...(field.kind === 'choice' || field.kind === 'flag' ? { options: optionsOf(field, workbook) } : {}),
    widthCh: widthCh ?? widths[field.kind]
  };
}

/** The cell of a field at a path: its value, its stated default, or the text that could not be taken. */
export const cellOf = (path: string, field: Field, context: CellContext): GridCell =>
  cellWith(readCell(context.workbook, path), path, field, context);

/** The same where the value is at hand: in a long list, finding it by its path would take long. */
function cellWith(value: unknown, path: string, field: Field, context: CellContext): GridCell {
  const { workbook, sentences, locale } = context;
  const kept = workbook.keptTexts[path];
  const sentence = sentences[path];
  if (kept !== undefined && sentence !== undefined)
    return { text: kept, editText: kept, state: 'kept', message: sentence, tone: 'error', path };
  const range = workbook.ranges[path];
  const note =
    range === undefined
      ? {}
      : ({
          message: `Range ${formatFull(range.low, { locale })} to ${formatFull(range.high, { locale })}, used on Uncertainty.`,
          tone: 'note',
          ranged: true
        } as const);
  if (value === null || value === undefined)
    return {
      text: 'empty' in field ? (field.empty ?? '') : '',
      editText: '',
      state: 'default',
      path,
      ...note
    };
  return { ...textsOf(value, field, context), state: 'given', path, ...note };
}

function textsOf(
  value: unknown,
  field: Field,
  { workbook, locale }: CellContext
): { text: string; editText: string } {
  switch (field.kind) {
    case 'number':
      return {
        text: formatFull(value as number, { locale }),
        editText: formatForEditing(value as number, { locale })
      };
    case 'money':
      return {
        text: formatMoney(value as string, { currency: workbook.currency, locale, cents: true }),
        editText: formatForEditing(value as string, { locale })
      };
    case 'choice': {
      const label =
        optionsOf(field, workbook).find((option) => option.id === String(value))?.label ?? String(value);
      return { text: label, editText: label };
    }
    case 'flag': {
      const text = value === true ? 'Yes' : 'No';
      return { text, editText: text };
    }
    case 'list': {
      const text = (value as readonly number[]).join(', ');
      return { text, editText: text };
    }
    case 'text':
      return { text: value as string, editText: value as string };
  }
}

/** A column whose cells the caller makes: something computed, or something that is no field of the entry. */
export interface ExtraColumn<Entry> {
  readonly column: GridColumn;
  /** Called when a row is first drawn: it is to rest on values that are at hand, not on what may have changed by then. */
  readonly cell: (entry: Entry, index: number) => GridCell;
}

export interface ListGrid {
  readonly columns: readonly GridColumn[];
  readonly rows: readonly GridRow[];
}

/** A cell that says nothing, because its column does not apply to this row. */
export const offCell: GridCell = { text: '', editText: '', state: 'off' };

/**
 * A grid over the entries of a list. The cells of a row are made when they are first looked at: of a long list, few are.
 * @param base path of the list, e.g. `caseMix`, or `flowPlans.usual.phases`
 * @param off whether a field does not apply to an entry
 */
export function gridOfList<Entry extends object>(
  {
    base,
    entries,
    fields,
    labelOf,
    off,
    extra = [],
    extraAfter,
    widthsCh = {}
  }: {
    base: string;
    entries: readonly Entry[];
    fields: Readonly<Record<string, Field>>;
    labelOf: (entry: Entry, index: number) => string;
    off?: (entry: Entry, key: string) => boolean;
    extra?: readonly ExtraColumn<Entry>[];
    /** The field after which the extra columns stand; at the end where left out. */
    extraAfter?: string;
    widthsCh?: Readonly<Record<string, number>>;
  },
  context: CellContext
): ListGrid {
  const keys = Object.keys(fields);
  const before = extraAfter === undefined ? keys : keys.slice(0, keys.indexOf(extraAfter) + 1);
  const after = keys.slice(before.length);
  const rowsWithKept = new Set(
    Object.keys(context.sentences)
      .filter((path) => path.startsWith(`${base}.`))
      .map((path) => path.slice(base.length + 1).split('.')[0])
  );
  return {
    columns: [
      ...before.map((key) => columnOf(key, fields[key] as Field, context, widthsCh[key])),
      ...extra.map((each) => each.column),
      ...after.map((key) => columnOf(key, fields[key] as Field, context, widthsCh[key]))
    ],
    rows: entries.map((entry, index) => {
      const id = entryKey(entry) || String(index);
      const own = (key: string): GridCell =>
        // A text that could not be taken is shown wherever it stands: what is counted can be found.
        off?.(entry, key) === true && context.sentences[`${base}.${id}.${key}`] === undefined
          ? offCell
          : cellWith(
              (entry as Record<string, unknown>)[key],
              `${base}.${id}.${key}`,
              fields[key] as Field,
              context
            );
      let cells: readonly GridCell[] | null = null;
      return {
        id,
        label: labelOf(entry, index),
        mayHaveKept: rowsWithKept.has(id),
        get cells() {
          return (cells ??= [
            ...before.map(own),
            ...extra.map((each) => each.cell(entry, index)),
            ...after.map(own)
          ]);
        }
      };
    })
  };
}
