/** The workbook's inputs as sheets, one for each table, and where each cell of the document went. */
import type { Field } from '#lib/workbook/field.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { cellReader } from '#lib/workbook/cell-reader.ts';
import { cellText } from '../tables/cell-text.ts';
import type { TableCell } from '../tables/table-cells.ts';
import { tableCells } from '../tables/table-cells.ts';
import { checkHeaders, fixedHeader } from '../tables/added-headers.ts';
import type { TableId } from '../tables/tables.ts';
import { settings, tableColumns, tableIds, tableTitles } from '../tables/tables.ts';
import { countOfDiffering, differsFormula } from './check-formula.ts';
import type { Sheet, SheetCell } from './sheet.ts';
import { cellAddress, columnLetters } from './sheet.ts';

export interface InputSheets {
  /** Address by cell path, e.g. `caseMix.lap-chole.minutes`. */
  readonly addresses: ReadonlyMap<string, string>;
  /** The sheets, once it is known from which cells the results follow; all others are fixed, locked and looked after. */
  sheets(follows: (path: string) => boolean): readonly Sheet[];
}

/** The way in which texts are written where a sheet holds words: choices and lists, no numbers. */
const wordsLocale = 'en-GB';

/** A cell of the document as it stands in its table. */
function inputCell(
  value: unknown,
  field: Field,
  { workbook, isFixed }: { workbook: Workbook; isFixed: boolean }
): SheetCell {
  const look = isFixed ? 'fixed' : 'input';
  if (value === null || value === undefined) return { kind: 'text', text: '', look };
  switch (field.kind) {
    case 'number':
      // Not every number is one: a flow may be left to the machine.
      return typeof value === 'number'
        ? { kind: 'number', value, look }
        : { kind: 'text', text: cellText(value, { field, workbook, locale: wordsLocale }), look };
    case 'money':
      return { kind: 'number', value: Number(value), look: isFixed ? 'fixed-price' : 'price' };
    case 'flag':
      return { kind: 'text', text: value === true ? 'Yes' : 'No', look };
    default:
      return { kind: 'text', text: cellText(value, { field, workbook, locale: wordsLocale }), look };
  }
}

const heading = (text: string): SheetCell => ({ kind: 'text', text, look: 'heading' });
const note = (text: string): SheetCell => ({ kind: 'text', text, look: 'note' });

/** Tables of which nothing follows in the tool either: they say how sure a figure is, and where it comes from. */
const withoutFigures: readonly TableId[] = ['ranges', 'notes'];

/** A cell, and whether the figures would be others in the tool if it were. */
interface PlacedCell {
  readonly cell: SheetCell;
  readonly isFixed: boolean;
  readonly acts: boolean;
}

/** One sheet for each table: headings first, then the rows, as in the CSV files; behind them what is fixed, and a check. */
export function inputSheets(workbook: Workbook): InputSheets {
  const addresses = new Map<string, string>();
  const tables = tableIds.map((table) => ({ table, rows: tableCells(table, workbook) }));
  for (const { table, rows } of tables)
    rows.forEach((row, index) =>
      row.forEach((cell, column) => {
        if (cell.kind === 'cell' && !addresses.has(cell.path))
          addresses.set(cell.path, cellAddress(tableTitles[table], { row: index + 1, column }));
      })
    );
  return {
    addresses,
    sheets: (follows) =>
      tables.map(({ table, rows }) => tableSheet(workbook, { table, rows, follows, addresses }))
  };
}

function tableSheet(
  workbook: Workbook,
  {
    table,
    rows: cells,
    follows,
    addresses
  }: {
    table: TableId;
    rows: ReturnType<typeof tableCells>;
    follows: (path: string) => boolean;
    addresses: InputSheets['addresses'];
  }
): Sheet {
  const name = tableTitles[table];
  const columns = tableColumns(table, workbook.currency);
  const valueAt = cellReader(workbook);
  const hasFigures = !withoutFigures.includes(table);
  const placed = (cell: TableCell, at: { row: number; column: number }): PlacedCell => {
    switch (cell.kind) {
      case 'text':
        return {
          cell: { kind: 'text', text: cell.text },
          isFixed: false,
          acts: hasFigures && table !== 'settings'
        };
      case 'number': {
        const look = typeof cell.value === 'string' ? 'fixed-price' : 'fixed';
        return { cell: { kind: 'number', value: Number(cell.value), look }, isFixed: true, acts: hasFigures };
      }
      case 'attached': {
        const text = cell.field.write(valueAt(cell.path), { workbook, locale: wordsLocale });
        return { cell: { kind: 'text', text, look: 'fixed' }, isFixed: true, acts: true };
      }
      case 'cell': {
        const isFixed = !follows(cell.path);
        // The name of an entry that takes several rows says again to which of them a row belongs.
        if (addresses.get(cell.path) !== cellAddress(name, at)) {
          const text = cellText(valueAt(cell.path), { field: cell.field, workbook, locale: wordsLocale });
          return { cell: { kind: 'text', text }, isFixed: false, acts: true };
        }
        const made = inputCell(valueAt(cell.path), cell.field, { workbook, isFixed });
        return { cell: made, isFixed, acts: cell.field.kind !== 'text' };
      }
    }
  };
  const rows = cells.map((row, index) => row.map((cell, column) => placed(cell, { row: index + 1, column })));
  const isSettings = table === 'settings';
  // What a setting is stands beside it; behind all columns come what is fixed, and the check.
  const beside = columns.length + (isSettings ? 1 : 0);
  const checkColumn = beside + 1;
  const checks = columnLetters(checkColumn);
  const changed = `SUM(${checks}2:${checks}${rows.length + 1})`;
  const headings = columns.map((column) => heading(column.header));
  const written = rows.map((row, index): (SheetCell | null)[] => {
    const fixed = row.flatMap(({ isFixed }, column) => (isFixed ? [columns[column]?.header ?? ''] : []));
    const differing = row.flatMap(({ cell, isFixed, acts }, column) =>
      acts && (isFixed || cell.look === undefined) && cell.kind !== 'formula'
        ? [
            differsFormula(
              `${columnLetters(column)}${index + 2}`,
              cell.kind === 'text' ? cell.text : cell.value
            )
          ]
        : []
    );
    return [
      ...row.map(({ cell }) => cell),
      ...(isSettings ? [note(settings[index]?.field.words ?? '')] : []),
      note(fixed.length === 0 ? '' : isSettings ? 'Fixed' : fixed.join(', ')),
      { kind: 'formula', formula: countOfDiffering(differing), result: 0 }
    ];
  });
  return {
    name,
    frozenRows: 1,
    ...(isSettings ? {} : { frozenColumns: 1 }),
    widthsCh: [
      ...(isSettings
        ? [14, 48, 38, 64]
        : headings.map((head, column) => widthOf([head, ...rows.map((row) => row[column]?.cell ?? null)]))),
      isSettings ? 16 : 40,
      16
    ],
    rows: [
      [
        ...headings,
        ...(isSettings ? [heading('What it is')] : []),
        heading(fixedHeader),
        {
          kind: 'formula',
          formula:
            rows.length === 0
              ? `"${checkHeaders.asSaved}"`
              : `IF(${changed}=0,"${checkHeaders.asSaved}","${checkHeaders.changed}")`,
          result: checkHeaders.asSaved,
          look: 'heading'
        }
      ],
      ...written
    ],
    locked: true,
    alerts: [
      { cells: `${checks}1`, when: `${checks}1<>"${checkHeaders.asSaved}"` },
      ...(rows.length === 0
        ? []
        : [{ cells: `${checks}2:${checks}${rows.length + 1}`, when: `${checks}2<>0` }])
    ],
    names: cells.flatMap((row) =>
      row.flatMap((cell) =>
        cell.kind === 'cell' && follows(cell.path)
          ? [{ name: inputName(cell.path), address: addresses.get(cell.path) ?? '' }]
          : []
      )
    )
  };
}

/** The name of an input in formulas, by its path: `input.agents.sevoflurane.bottlePrice`. */
export const inputName = (path: string): string => `input.${path.replaceAll('-', '_')}`;

/** As wide as its longest words, within reason; a long heading may take two lines. */
function widthOf([head, ...cells]: readonly (SheetCell | null)[]): number {
  const length = (cell: SheetCell | null | undefined) => (cell?.kind === 'text' ? cell.text.length : 0);
  const longest = cells.reduce((most, cell) => Math.max(most, length(cell)), 0);
  return Math.min(40, Math.max(11, Math.ceil(length(head) / 2) + 3, longest + 2));
}
