import { writeCell } from '#lib/calc/cell-path.ts';
import { crossChecks } from '#lib/workbook/cross-checks.ts';
import { standForToday } from '#lib/workbook/stand-for-today.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { AttachedField } from '../tables/attached-fields.ts';
import { cellReader } from '#lib/workbook/cell-reader.ts';
import type { ImportMode, RefusedCell } from './import-request.ts';
import type { PlacedText } from './place-texts.ts';

/** A text on its way to what an entry holds beside its cells. */
export interface AttachedText extends PlacedText {
  readonly field: AttachedField;
}

export interface PlacedAttached {
  readonly workbook: Workbook;
  readonly refusedCells: readonly RefusedCell[];
  /** Paths that the file wants to hold something else than they do. */
  readonly differing: readonly string[];
}

interface Wanted {
  readonly given: AttachedText;
  readonly value: unknown;
}

/**
 * Puts a file's texts in place of what entries hold beside their cells. There is no cell in which a bad text could stay,
 * so it is refused, and what was there before stays.
 */
export function placeAttached(
  before: Workbook,
  texts: readonly AttachedText[],
  { locale, mode }: { locale: string; mode: ImportMode }
): PlacedAttached {
  const valueAt = cellReader(before);
  const refusedCells: RefusedCell[] = [];
  const refuse = ({ line, column, text }: AttachedText, sentence: string) =>
    refusedCells.push({ line, column, text, sentence });
  let taken: Wanted[] = [];
  const marks: Wanted[] = [];
  for (const given of texts) {
    const read = given.field.read(given.text, { workbook: before, locale });
    if ('sentence' in read) refuse(given, read.sentence);
    else if (given.path.endsWith('.baseline')) marks.push({ given, value: read.value });
    else if (!isSame(read.value, valueAt(given.path))) taken.push({ given, value: read.value });
  }
  // A file that is the whole list says which scenario stands for today, where it marks one alone.
  const marked = marks.filter(({ value }) => value === true);
  const today = mode === 'replace' && marked.length === 1 ? marked[0]?.given.path : undefined;
  if (today === undefined)
    for (const { given, value } of marks)
      if (value !== valueAt(given.path))
        refuse(
          given,
          'Stands for today: exactly one scenario does; mark one alone in a file that takes the place of all.'
        );
  const changed =
    today !== undefined && valueAt(today) !== true
      ? standForToday(before, today.split('.')[1] ?? '', locale)
      : null;
  const mark = marked[0]?.given;
  if (changed !== null && 'sentence' in changed && mark !== undefined) refuse(mark, changed.sentence);
  const isMoved = changed !== null && 'workbook' in changed;
  const start = isMoved ? changed.workbook : before;
  const write = () =>
    taken.reduce((workbook, { given, value }) => writeCell(workbook, given.path, value), start);
  const known = new Set(crossChecks(before, locale).map(({ path, sentence }) => `${path} ${sentence}`));
  for (;;) {
    const issue = crossChecks(write(), locale).find(
      ({ path, sentence }) => !known.has(`${path} ${sentence}`)
    );
    const blamed = taken.find(({ given: { path } }) => issue?.path.startsWith(path) === true);
    if (issue === undefined || blamed === undefined) break;
    refuse(blamed.given, issue.sentence);
    taken = taken.filter((each) => each !== blamed);
  }
  return {
    workbook: write(),
    refusedCells,
    differing: [...taken.map(({ given }) => given.path), ...(isMoved && today !== undefined ? [today] : [])]
  };
}

/** Whether two values are the same, whatever the order of the keys in a record. */
function isSame(a: unknown, b: unknown): boolean {
  const sorted = (value: unknown) =>
    Array.isArray(value) || typeof value !== 'object' || value === null
      ? value
      : Object.entries(value).sort(([x], [y]) => (x < y ? -1 : 1));
  return JSON.stringify(sorted(a)) === JSON.stringify(sorted(b));
}
