/** What the selected cells of one column come to. Pure. */
import { formatFull } from '#lib/numbers/format-number.ts';
import { readDecimal } from '#lib/numbers/read-decimal.ts';
import type { GridColumn, GridRow } from './grid-types.ts';
import type { Block } from './selection.ts';

/** Cells of several columns that are counted at once. */
const mostCounted = 5000;

/** Twelve figures: a sum of decimal numbers would otherwise show the dust of binary ones. */
const clean = (value: number): number => Number(value.toPrecision(12));

/**
 * Count, sum and mean of what is selected, as a line; '' where a single cell is. Numbers are added up within one column
 * alone, as others have other units; of several columns the filled cells are counted. An empty cell counts for nothing,
 * whatever default acts in it.
 */
export function selectionTotals(
  { columns, rows }: { readonly columns: readonly GridColumn[]; readonly rows: readonly GridRow[] },
  { top, bottom, left, right }: Block,
  locale: string
): string {
  if (top === bottom && left === right) return '';
  // Cells of a row are made when they are looked at, and a selection may be a whole list.
  if (left !== right && (bottom - top + 1) * (right - left + 1) > mostCounted) return '';
  const texts = rows
    .slice(top, bottom + 1)
    .flatMap(({ cells }) => cells.slice(left, right + 1).map(({ editText }) => editText.trim()))
    .filter((text) => text !== '');
  const count = `${texts.length} filled`;
  const column = columns[left];
  if (left !== right || (column?.kind !== 'number' && column?.kind !== 'computed') || column.names === true)
    return count;
  const numbers = texts.flatMap((text) => {
    const read = readDecimal(text, locale);
    return 'decimal' in read ? [Number(read.decimal)] : [];
  });
  if (numbers.length === 0) return count;
  const sum = clean(numbers.reduce((total, each) => total + each, 0));
  const written = (value: number): string => formatFull(clean(value), { locale });
  const others = texts.length - numbers.length;
  return `${numbers.length} numbers: sum ${written(sum)}, mean ${written(sum / numbers.length)}${others === 0 ? '' : `; ${others} more ${others === 1 ? 'is' : 'are'} none`}`;
}
