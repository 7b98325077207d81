/** The cells of a chart's table: three significant figures to read, the full value for a file. */
import { formatFull, formatNumber, notGiven } from '#lib/numbers/format-number.ts';
import { partsThatAddUp } from '#lib/numbers/parts-that-add-up.ts';
import type { TableCell, TableColumn } from './chart-data.ts';

export const nameColumn = (title: string): TableColumn => ({ title, numeric: false });
export const numberColumn = (title: string): TableColumn => ({ title, numeric: true });

export const nameCell = (text: string): TableCell => ({ text, value: text });

const withPath = (path: string | undefined): { path?: string } => (path === undefined ? {} : { path });

/** A figure to three significant figures; the column says the unit. */
export function numberCell(value: number | null, path?: string): TableCell {
  return { text: formatNumber(value), value, ...withPath(path) };
}

/** An amount of money in whole units; the column says the currency. `amount` is a number or plain decimal text. */
export function moneyCell(amount: number | string | null, path?: string): TableCell {
  const [rounded] = amount === null ? [] : partsThatAddUp([amount], { decimals: 0 }).parts;
  return { text: rounded === undefined ? notGiven : formatFull(rounded), value: amount, ...withPath(path) };
}

/** Decimals that leave a total of this size three significant figures, none of them before the point. */
function decimalsFor(size: number): number {
  return size === 0 ? 0 : Math.max(0, 2 - Math.floor(Math.log10(Math.abs(size))));
}

/**
 * Parts and their total as cells, so rounded that the parts as shown add up to the total as shown. Money in whole units,
 * anything else so that the total has three significant figures. Paths: one for each part, then the total's.
 */
export function cellsThatAddUp(
  parts: readonly (number | string)[],
  { money, paths = [] }: { readonly money: boolean; readonly paths?: readonly string[] }
): { readonly parts: readonly TableCell[]; readonly total: TableCell } {
  const sum = parts.reduce<number>((total, part) => total + Number(part), 0);
  const decimals = money ? 0 : decimalsFor(sum);
  const rounded = partsThatAddUp(parts, { decimals });
  const exact = partsThatAddUp(parts, { decimals: 12 }).total;
  return {
    parts: parts.map((value, index) => {
      const shown = rounded.parts[index] ?? null;
      const [byItself = null] = partsThatAddUp([value], { decimals }).parts;
      return {
        text: formatFull(shown),
        value,
        ...withPath(paths[index]),
        ...(shown === byItself
          ? {}
          : {
              rounding: `By itself it would be rounded to ${formatFull(byItself)}; it was rounded the other way, so that the parts as shown add up to the total as shown.`
            })
      };
    }),
    total: {
      text: formatFull(rounded.total),
      // Decimal text stays decimal text; the sum of floating numbers loses its noise past the twelfth place.
      value: Number(exact),
      ...withPath(paths[parts.length])
    }
  };
}
