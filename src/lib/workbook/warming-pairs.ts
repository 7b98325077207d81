import { findReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import type { ReferenceSet } from '#lib/calc/reference/reference-set.ts';
import { accountingFields, warmingSetOptions } from './fields.ts';
import { readText } from './read-text.ts';
import type { Workbook } from './workbook.ts';

/** The horizons, in years, for which a reference set holds a set of warming potentials. */
export const horizonsOf = (set: ReferenceSet, warmingSet: string): readonly number[] =>
  [20, 100, 500].filter((years) => set.constants.has(`warming.${warmingSet}.${years}.sevoflurane`));

interface CellText {
  readonly path: string;
  readonly text: string;
}

/** A pair of warming potentials and horizon that there is, in place of one that there is not. */
export interface OfferedPair {
  readonly sentence: string;
  /** What the offer is called, e.g. `Take IPCC AR5 (2013) over 100 years`. */
  readonly label: string;
  /** The texts that put both cells to it. */
  readonly texts: readonly CellText[];
}

const setCell = 'accounting.warmingSet';
const horizonCell = 'accounting.warmingHorizonYears';

/**
 * What to offer where a choice of the warming potentials, or of the horizon, makes a pair that the reference set does
 * not hold; null where it holds it, or where the text is of another cell or cannot be read.
 */
export function offeredPair(
  workbook: Workbook,
  { path, text }: CellText,
  locale: string
): OfferedPair | null {
  const set = findReferenceSet(workbook.referenceSet);
  const field =
    path === setCell
      ? accountingFields.warmingSet
      : path === horizonCell
        ? accountingFields.warmingHorizonYears
        : null;
  if (set === null || field === null) return null;
  const read = readText(text, { field, workbook, locale });
  if (!('value' in read)) return null;
  const wanted = {
    ...workbook.accounting,
    [path === setCell ? 'warmingSet' : 'warmingHorizonYears']: read.value
  };
  const labelOf = (id: string): string => warmingSetOptions.find((each) => each.id === id)?.label ?? id;
  const held = horizonsOf(set, wanted.warmingSet);
  if (wanted.warmingSet === 'custom' || held.length === 0 || held.includes(wanted.warmingHorizonYears))
    return null;
  const missing = `There are no potentials of ${labelOf(wanted.warmingSet)} over ${wanted.warmingHorizonYears} years, so nothing was changed.`;
  const pair = (warmingSet: string, years: number): OfferedPair => ({
    sentence: missing,
    label: `Take ${labelOf(warmingSet)} over ${years} years`,
    texts: [
      { path: setCell, text: labelOf(warmingSet) },
      { path: horizonCell, text: String(years) }
    ]
  });
  // Of a set that was chosen, the horizon nearest to the wanted one; of a horizon that was chosen, the newest set.
  if (path === horizonCell) {
    const newest = warmingSetOptions.find(({ id }) =>
      horizonsOf(set, id).includes(wanted.warmingHorizonYears)
    );
    if (newest !== undefined) return pair(newest.id, wanted.warmingHorizonYears);
  }
  const far = (years: number): number => Math.abs(years - wanted.warmingHorizonYears);
  return pair(wanted.warmingSet, [...held].sort((a, b) => far(a) - far(b))[0] as number);
}
