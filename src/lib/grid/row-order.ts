/** The order of rows by what stands in one of their columns. Pure. */
import { readDecimal } from '#lib/numbers/read-decimal.ts';
import type { GridColumn, GridRow } from './grid-types.ts';

export type SortWay = 'up' | 'down';

export const holdsNumbers = ({ kind, names }: GridColumn): boolean =>
  kind === 'number' || (kind === 'computed' && names !== true);

/** What a sort is called in a menu: of numbers by size, of texts by the alphabet. */
export const sortInWords = (column: GridColumn, way: SortWay): string => {
  if (holdsNumbers(column)) return way === 'up' ? 'smallest first' : 'largest first';
  return way === 'up' ? 'A to Z' : 'Z to A';
};

/**
 * The rows, by their index, in the order of a column: numbers by size, texts by the alphabet of the locale. Rows alike in
 * it stay as they stand. What cannot be read as a number follows those that can, and empty cells come last, either way.
 */
export function rowsSorted(
  { columns, rows }: { readonly columns: readonly GridColumn[]; readonly rows: readonly GridRow[] },
  { key, way, locale }: { readonly key: string; readonly way: SortWay; readonly locale: string }
): readonly number[] {
  const at = columns.findIndex((column) => column.key === key);
  const column = columns[at];
  const all = rows.map((_, index) => index);
  if (column === undefined) return all;
  const collator = new Intl.Collator(locale, { numeric: true });
  const sign = way === 'up' ? 1 : -1;
  const texts = rows.map(({ cells }) => cells[at]?.editText.trim() ?? '');
  const numbers = texts.map((text) => {
    const read = holdsNumbers(column) && text !== '' ? readDecimal(text, locale) : null;
    return read !== null && 'decimal' in read ? Number(read.decimal) : null;
  });
  const rank = (row: number): number => {
    if (texts[row] === '') return 2;
    return numbers[row] === null && holdsNumbers(column) ? 1 : 0;
  };
  return all.sort((one, other) => {
    const ranks = rank(one) - rank(other);
    if (ranks !== 0) return ranks;
    const [first, second] = [numbers[one] ?? null, numbers[other] ?? null];
    const by =
      first !== null && second !== null
        ? first - second
        : collator.compare(texts[one] ?? '', texts[other] ?? '');
    return by * sign || one - other;
  });
}
