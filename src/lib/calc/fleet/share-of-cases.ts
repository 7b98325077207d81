/** Which share of a case group is done in which theatres. */
import type { CaseRow, TheatreGroup } from '../input.ts';
import { ownEntry } from '../own-entry.ts';
import { formula } from '../working/formula.ts';
import { kept, once } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';

const sum = (numbers: readonly number[]): number => numbers.reduce((all, next) => all + next, 0);

export const shareOfTheatres = formula<{ these: number; theatres: number }>({
  id: 'fleet.share-of-theatres',
  yields: 'Share of the cases that are done in these theatres',
  words: 'These theatres as a percentage of all: cases are spread evenly over the theatres.',
  expression: '100 * t / T',
  inputs: {
    these: { symbol: 't', unit: '1', words: 'these theatres' },
    theatres: { symbol: 'T', unit: '1', words: 'all theatres' }
  },
  unit: '%',
  source: 'definition',
  compute: ({ these, theatres }) => (100 * these) / theatres
});

export const shareLeft = formula<{ given: readonly number[] }>({
  id: 'fleet.share-left',
  yields: 'Share of the cases that is left for other theatres',
  words: '100 % less the shares that are given; never below 0.',
  expression: 'max(0, 100 - sum(g))',
  inputs: { given: { symbol: 'g', unit: '%', words: 'share that is given for a theatre group' } },
  unit: '%',
  source: 'definition',
  compute: ({ given }) => Math.max(0, 100 - sum(given))
});

export const shareInProportion = formula<{ left: number; these: number; theatres: number }>({
  id: 'fleet.share-in-proportion',
  yields: 'Share of the cases that are done in these theatres',
  words: 'What is left, in proportion to the theatres of the groups for which no share is given.',
  expression: 'l * t / T',
  inputs: {
    left: { symbol: 'l', unit: '%', words: 'share that is left' },
    these: { symbol: 't', unit: '1', words: 'these theatres' },
    theatres: { symbol: 'T', unit: '1', words: 'theatres of the groups without a share of their own' }
  },
  unit: '%',
  source: 'definition',
  compute: ({ left, these, theatres }) => (left * these) / theatres
});

export const shareWithin = formula<{ share: number; these: number; theatres: number }>({
  id: 'fleet.share-within-group',
  yields: 'Share of the cases that are done in these theatres',
  words: 'The share of the theatre group, spread evenly over its theatres.',
  expression: 's * t / T',
  inputs: {
    share: { symbol: 's', unit: '%', words: 'share of the theatre group' },
    these: { symbol: 't', unit: '1', words: 'these theatres' },
    theatres: { symbol: 'T', unit: '1', words: 'theatres of the group' }
  },
  unit: '%',
  source: 'definition',
  compute: ({ share, these, theatres }) => (share * these) / theatres
});

/** Some theatres of a group. */
export interface TheatresOfGroup {
  readonly group: TheatreGroup;
  readonly theatres: Quantity;
  /** Whether they are all of the group. */
  readonly isWhole: boolean;
}

/** Every case of a row, a share of them in per cent, or none. */
export type ShareOfCases = 'all' | 'none' | Quantity;

type RowOfGroups = Pick<CaseRow, 'id' | 'theatreGroups'>;

/**
 * The share of a row's cases that is done in some theatres of a group, in per cent.
 *
 * - Without shares of its own a row is spread evenly over all theatres: 100 · t / T.
 * - A group with a share s has s · t / T_group. Groups without one have what is left, in proportion to their theatres.
 */
export function sharesOfCases<Some extends TheatresOfGroup>(
  r: Reckoner,
  groups: readonly TheatreGroup[]
): (some: Some, row: RowOfGroups) => ShareOfCases {
  const theatresOf = ({ id, theatres }: TheatreGroup): Quantity =>
    r.cell(theatres, '1', 'theatreGroups', id, 'theatres');
  const all = (some: readonly TheatreGroup[]): Quantity => {
    const [only] = some;
    return some.length === 1 && only !== undefined
      ? theatresOf(only)
      : r.apply(theatresTogether, { parts: some.map(theatresOf) });
  };
  const inAll = once(() => all(groups));
  const evenly = kept(({ theatres }: Some) =>
    r.apply(shareOfTheatres, { these: theatres, theatres: inAll() })
  );
  const ownShare = ({ group, theatres, isWhole }: Some, row: RowOfGroups): ShareOfCases => {
    const shareCell = (id: string, share: number): Quantity =>
      r.cell(share, '%', 'caseMix', row.id, 'theatreGroups', id);
    const own = ownEntry(row.theatreGroups, group.id);
    if (own === undefined) {
      const left = r.apply(shareLeft, {
        given: Object.entries(row.theatreGroups).map(([id, share]) => shareCell(id, share))
      });
      if (!(r.value(left) > 0)) return 'none';
      return r.apply(shareInProportion, {
        left,
        these: theatres,
        theatres: all(groups.filter(({ id }) => ownEntry(row.theatreGroups, id) === undefined))
      });
    }
    if (!(own > 0)) return 'none';
    const share = shareCell(group.id, own);
    return isWhole ? share : r.apply(shareWithin, { share, these: theatres, theatres: theatresOf(group) });
  };
  const ownShares = kept((some: Some) => kept((row: RowOfGroups) => ownShare(some, row)));
  return (some, row) => {
    if (groups.length === 1 && some.isWhole) return 'all';
    return groups.length === 1 || Object.keys(row.theatreGroups).length === 0
      ? evenly(some)
      : ownShares(some)(row);
  };
}

export const theatresTogether = formula<{ parts: readonly number[] }>({
  id: 'fleet.theatres-added-up',
  yields: 'Theatres, added up',
  words: 'Theatres of each group or of each move, added up.',
  expression: 'sum(n)',
  inputs: { parts: { symbol: 'n', unit: '1', words: 'theatres' } },
  unit: '1',
  source: 'definition',
  compute: ({ parts }) => sum(parts)
});
