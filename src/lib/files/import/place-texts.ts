import { exactDecimal } from '#lib/numbers/decimal-text.ts';
import { editCells } from '#lib/workbook/edit-cells.ts';
import { fieldAt } from '#lib/workbook/field-at.ts';
import { notesFollowing } from '#lib/workbook/notes-follow.ts';
import { rangeFollowedInWords } from '#lib/workbook/range-follows.ts';
import { readText } from '#lib/workbook/read-text.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { cellReader } from '#lib/workbook/cell-reader.ts';
import { cellText } from '../tables/cell-text.ts';
import type { ImportRequest, RefusedCell } from './import-request.ts';

/** A text on its way to a cell, and where in the file it stands. */
export interface PlacedText {
  readonly path: string;
  readonly text: string;
  readonly line: number;
  readonly column: string;
}

export interface PlacedTexts {
  readonly workbook: Workbook;
  readonly refusedCells: readonly RefusedCell[];
  /** Paths of the cells that the file wants to be something else than they are. */
  readonly differing: readonly string[];
  /** What became of ranges whose cell got another value, one sentence each. */
  readonly notes: readonly string[];
}

/**
 * Puts a file's texts into cells. A text that says what is in the cell already is passed over, so that a file which
 * comes back unchanged changes nothing.
 * @param before the workbook without the rows that were added for these texts
 */
export function placeTexts(
  workbook: Workbook,
  texts: readonly PlacedText[],
  { locale, source }: Pick<ImportRequest, 'locale' | 'source'>,
  before: Workbook = workbook
): PlacedTexts {
  const valueAt = cellReader(workbook);
  const differing = texts.filter((text) =>
    differs(text, { value: valueAt(text.path) ?? null, workbook, locale })
  );
  const byPath = new Map(differing.map((text) => [text.path, text]));
  // What a new row starts with anyway, the file may say as well.
  const asGiven = (written: Workbook): Workbook =>
    source === undefined
      ? written
      : notesFollowing(
          before,
          written,
          texts.flatMap(({ path, text }) =>
            byPath.has(path) || text.trim() === '' ? [] : [{ path, source }]
          )
        ).workbook;
  if (differing.length === 0)
    return { workbook: asGiven(workbook), refusedCells: [], differing: [], notes: [] };
  const edited = editCells(
    workbook,
    [...byPath.values()].map((text) => (source === undefined ? text : { ...text, source })),
    locale,
    before
  );
  const refusedCells = edited.refused.flatMap(({ path, text, sentence }) => {
    const placed = byPath.get(path);
    return placed === undefined ? [] : [{ line: placed.line, column: placed.column, text, sentence }];
  });
  return {
    workbook: asGiven(edited.workbook),
    refusedCells: refusedCells.sort((a, b) => a.line - b.line),
    differing: [...byPath.keys()],
    notes: edited.followed.map((each) => rangeFollowedInWords(edited.workbook, each, locale))
  };
}

function differs(
  { path, text }: PlacedText,
  { value, workbook, locale }: { value: unknown; workbook: Workbook; locale: string }
): boolean {
  const field = fieldAt(path);
  if (field === undefined) return false;
  if (text === cellText(value, { field, workbook, locale })) return false;
  const read = readText(text, { field, workbook, locale });
  if (!('value' in read)) return true;
  return field.kind === 'money'
    ? !isSameAmount(read.value as string, value as string)
    : JSON.stringify(read.value) !== JSON.stringify(value);
}

/** Whether two amounts are the same, as 12.5 and 12.50 are: a spreadsheet keeps no decimals of 0. */
export function isSameAmount(a: string, b: string): boolean {
  const [x, y] = [exactDecimal(a), exactDecimal(b)];
  return x.digits * 10n ** BigInt(y.decimals) === y.digits * 10n ** BigInt(x.decimals);
}
