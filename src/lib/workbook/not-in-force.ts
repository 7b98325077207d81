/** Cells that show a text which no figure rests on: one source for all that is said of them, wherever figures go. */
import { readCell } from '#lib/calc/cell-path.ts';
import { cellName, cellPlace } from './cell-name.ts';
import { keptSentences } from './edit-cells.ts';
import { fieldAt } from './field-at.ts';
import { casesNotInForce } from './rows-in-force.ts';
import { valueText } from './value-text.ts';
import type { Workbook } from './workbook.ts';

/** A cell whose text is not in force. */
export interface NotInForce {
  readonly path: string;
  /** As it was typed; '' where nothing was, or where it was too long to be kept. */
  readonly text: string;
  /** The value that counts instead, as text; '' where none does. */
  readonly inForce: string;
  /** True where the whole row takes part in nothing until the cell is mended. */
  readonly rowLeftOut: boolean;
  /** Sheet, row and column: `Prices, sevoflurane: Bottle price`. */
  readonly name: string;
  /** Sheet and row: `Prices, sevoflurane`. */
  readonly place: string;
  /** Why the text was not taken, and what counts instead. */
  readonly why: string;
  /** Where it stands, why the text was not taken, and what counts instead. */
  readonly sentence: string;
}

/**
 * Every cell whose text is not in force, in the order in which they were typed.
 * @param sentences of `keptSentences`, where they are at hand
 */
export function cellsNotInForce(
  workbook: Workbook,
  locale: string,
  sentences = keptSentences(workbook, locale)
): readonly NotInForce[] {
  const out = casesNotInForce(workbook);
  const lost = (workbook.neverGiven ?? []).filter((path) => sentences[path] === undefined);
  const whyLost = 'The text that was given was not kept.';
  return [...Object.entries(sentences), ...lost.map((path) => [path, whyLost] as const)].map(
    ([path, why]): NotInForce => {
      const text = workbook.keptTexts[path] ?? '';
      const field = fieldAt(path);
      const value =
        field === undefined ? '' : valueText(readCell(workbook, path), { field, workbook, locale });
      const place = cellPlace(workbook, path);
      const [list, id = ''] = path.split('.');
      const rowLeftOut = list === 'caseMix' && out.has(id);
      const instead = rowLeftOut
        ? 'The row is left out of every figure until it is mended.'
        : value === ''
          ? 'The cell counts as empty.'
          : `${value} stays in force.`;
      return {
        path,
        text,
        inForce: rowLeftOut ? '' : value,
        rowLeftOut,
        name: cellName(workbook, path),
        place,
        why: `${why} ${instead}`,
        sentence: `${place}: ${why} ${instead}`
      };
    }
  );
}

const namedAtMost = 5;

/** One sentence for all of them, which counts and names them; '' where every cell is in force. */
export function notInForceInWords(cells: readonly NotInForce[]): string {
  if (cells.length === 0) return '';
  const named = cells.slice(0, namedAtMost).map(({ name, text, inForce, rowLeftOut }) => {
    const typed = text === '' ? 'empty' : `“${text.length > 40 ? `${text.slice(0, 39)}…` : text}”`;
    return `${name} (${typed}; ${rowLeftOut ? 'the row is left out' : inForce === '' ? 'counts as empty' : `${inForce} counts`})`;
  });
  const more = cells.length - named.length;
  return `${countOfNotInForce(cells)}: ${named.join('; ')}${more === 0 ? '' : `; and ${more} more`}.`;
}

/** How many they are: `2 cells are not in force`. */
export const countOfNotInForce = ({ length }: readonly NotInForce[]): string =>
  length === 1 ? '1 cell is not in force' : `${length} cells are not in force`;
