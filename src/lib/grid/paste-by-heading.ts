/** A pasted block that brings its own headings: which of its columns go where. Pure. */
import type { GridColumn } from './grid-types.ts';

/** A column of a pasted block, and the column of the grid that takes it. */
export interface PastedColumn {
  readonly heading: string;
  /** Index in the grid; null where no column takes it. */
  readonly column: number | null;
  /** Why it is not taken, as the end of a sentence; '' where it is. */
  readonly why: string;
}

export interface HeadedBlock {
  readonly columns: readonly PastedColumn[];
  /** The block without its headings. */
  readonly rows: readonly (readonly string[])[];
  /** True where the block has the grid's own columns, side by side from the first selected one on. */
  readonly isInOrder: boolean;
}

/** Told by a number in it, by which a first row is one of values. */
const hasNumber = (text: string): boolean => /^\s*[(+-]?\s*[.,]?\d/.test(text);

/**
 * The block met by its headings; null where its first row is none: it names at least two columns of the grid (the only
 * one, where it has one), and at least half of what stands in it does.
 * @param hidden columns that are not looked at, and take nothing
 * @param match the key of the column that each heading means, each key once; null for none
 * @param means the keys of all columns that a heading by itself could mean
 * @param from the first selected column
 */
export function headedBlock(
  cells: readonly (readonly string[])[],
  {
    columns,
    hidden = [],
    match,
    means = (heading) => match([heading]).flatMap((key) => key ?? []),
    from
  }: {
    readonly columns: readonly GridColumn[];
    readonly hidden?: readonly GridColumn[];
    readonly match: (headings: readonly string[]) => readonly (string | null)[];
    readonly means?: (heading: string) => readonly string[];
    readonly from: number;
  }
): HeadedBlock | null {
  const [headings = [], ...rows] = cells;
  const told = headings.filter((text) => text.trim() !== '');
  if (rows.length === 0 || told.length === 0 || told.some(hasNumber)) return null;
  const keys = match(headings);
  const met = keys.filter((key) => key !== null).length;
  if (met < Math.min(2, told.length) || met * 2 < told.length) return null;
  const indexOf = new Map(columns.map(({ key }, index) => [key, index]));
  const pasted = headings.map((heading, at): PastedColumn => {
    const column = indexOf.get(keys[at] ?? '') ?? null;
    if (column !== null && columns[column]?.kind === 'computed')
      return { heading, column: null, why: 'is computed here' };
    if (column !== null) return { heading, column, why: '' };
    const aside = hidden.find(({ key }) => key === keys[at]);
    if (aside !== undefined) return { heading, column: null, why: `names ${aside.title}, which is hidden` };
    const meant = means(heading).flatMap(
      (key) => [...columns, ...hidden].find((each) => each.key === key) ?? []
    );
    const free = meant.filter(({ key }) => !keys.includes(key));
    if (free.length > 1)
      return { heading, column: null, why: `could mean ${free.map(({ title }) => title).join(' or ')}` };
    // By itself it would be known: another heading of the block has that column already.
    const [known] = meant;
    return {
      heading,
      column: null,
      why: known === undefined ? 'is no column here' : `names ${known.title}, as another column does`
    };
  });
  const own = columns.flatMap(({ kind }, index) => (kind === 'computed' ? [] : [index]));
  const first = own.findIndex((index) => index >= from);
  return {
    columns: pasted,
    rows,
    isInOrder: pasted.every(({ column }, at) => column !== null && column === own[first + at])
  };
}
