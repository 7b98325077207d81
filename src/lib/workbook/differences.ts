/** What differs between two workbooks, cell by cell, and each difference put into the first by itself. */
import { readCell, writeCell } from '#lib/calc/cell-path.ts';
import { entryKey } from './edit-rows.ts';
import { crossChecks } from './cross-checks.ts';
import type { Workbook } from './workbook.ts';

export interface Difference {
  /** The cell, the list of a row without ids, or the row, by its path. */
  readonly path: string;
  /** `row`: it stands in one of the two alone. `list`: its entries, which have no ids, are not as many. */
  readonly kind: 'cell' | 'list' | 'row';
  /** Undefined where it does not stand there. */
  readonly here: unknown;
  readonly there: unknown;
}

/** Parts that are no cells of the calculation: how a file is made, texts that are not in force, ranges, and notes. */
const apart: readonly string[] = [
  'format',
  'version',
  'invented',
  'keptTexts',
  'neverGiven',
  'ranges',
  'notes',
  'sampling'
];

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isKeyed = (list: readonly unknown[]): list is readonly object[] =>
  list.every((entry) => isRecord(entry) && entryKey(entry) !== '');
const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** All differences, in the order of the workbook; rows are met by their ids. */
export function differencesOf(here: Workbook, there: Workbook): readonly Difference[] {
  const found: Difference[] = [];
  const compare = (path: string, a: unknown, b: unknown): void => {
    if (a === b) return;
    if (Array.isArray(a) && Array.isArray(b)) {
      const [listA, listB] = [a as readonly unknown[], b as readonly unknown[]];
      if (isKeyed(listA) && isKeyed(listB)) return compareRows(path, listA, listB);
      if (listA.length === listB.length && listA.every(isRecord) && listB.every(isRecord))
        return listA.forEach((entry, index) => compare(`${path}.${index}`, entry, listB[index]));
      if (!isSame(a, b)) found.push({ path, kind: 'list', here: a, there: b });
      return;
    }
    if (isRecord(a) && isRecord(b)) {
      for (const key of new Set([...Object.keys(a), ...Object.keys(b)]))
        compare(path === '' ? key : `${path}.${key}`, a[key], b[key]);
      return;
    }
    if (!isSame(a, b))
      found.push({ path, kind: isRecord(a) || isRecord(b) ? 'list' : 'cell', here: a, there: b });
  };
  const compareRows = (path: string, a: readonly object[], b: readonly object[]): void => {
    const [inA, inB] = [a, b].map((list) => new Map(list.map((entry) => [entryKey(entry), entry])));
    for (const key of new Set([...(inA?.keys() ?? []), ...(inB?.keys() ?? [])])) {
      const [rowA, rowB] = [inA?.get(key), inB?.get(key)];
      const at = `${path}.${key}`;
      if (rowA === undefined || rowB === undefined)
        found.push({ path: at, kind: 'row', here: rowA, there: rowB });
      else compare(at, rowA, rowB);
    }
  };
  const figures = (workbook: Workbook): Readonly<Record<string, unknown>> =>
    Object.fromEntries(Object.entries(workbook).filter(([key]) => !apart.includes(key)));
  compare('', figures(here), figures(there));
  return found;
}

/** How many ranges and notes differ: they move no figure as entered. */
export function countsApart(
  here: Workbook,
  there: Workbook
): { readonly ranges: number; readonly notes: number } {
  const differing = (
    a: Readonly<Record<string, unknown>> = {},
    b: Readonly<Record<string, unknown>> = {}
  ): number =>
    [...new Set([...Object.keys(a), ...Object.keys(b)])].filter((path) => !isSame(a[path], b[path])).length;
  return { ranges: differing(here.ranges, there.ranges), notes: differing(here.notes, there.notes) };
}

/**
 * The first workbook with one difference taken over by itself; or why it cannot be, as where it takes another for
 * granted.
 */
export function withDifference(
  here: Workbook,
  { path, kind, there }: Difference
): { readonly workbook: Workbook } | { readonly sentence: string } {
  const changed: Workbook = kind === 'row' ? withRow(here, path, there) : writeCell(here, path, there);
  // A cell that gets another value may leave its own range behind, on which no figure as entered rests.
  const known = new Set(
    crossChecks({ ...here, ranges: {} }).map(({ path: at, sentence }) => `${at} ${sentence}`)
  );
  const [issue] = crossChecks({ ...changed, ranges: {} }).filter(
    ({ path: at, sentence }) => !known.has(`${at} ${sentence}`)
  );
  return issue === undefined ? { workbook: changed } : { sentence: issue.sentence };
}

function withRow(workbook: Workbook, path: string, row: unknown): Workbook {
  const at = path.lastIndexOf('.');
  const [list, key] = [path.slice(0, at), path.slice(at + 1)];
  const entries = readCell(workbook, list) as readonly object[];
  return writeCell(
    workbook,
    list,
    row === undefined ? entries.filter((entry) => entryKey(entry) !== key) : [...entries, row as object]
  );
}
