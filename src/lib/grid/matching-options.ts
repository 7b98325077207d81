import type { GridOption } from './grid-types.ts';

/**
 * The options that fit what was typed, the best first: label or id begins so, a later word begins so, it occurs anywhere.
 * Case and accents do not count. All of them, in their own order, for an empty text.
 */
export function matchingOptions(options: readonly GridOption[], typed: string): readonly GridOption[] {
  const wanted = folded(typed.trim());
  if (wanted === '') return options;
  const ranked = options.map((option) => ({ option, rank: rank(option, wanted) }));
  return ranked
    .filter(({ rank }) => rank < 4)
    .sort((a, b) => a.rank - b.rank)
    .map(({ option }) => option);
}

function rank({ id, label }: GridOption, wanted: string): number {
  const text = folded(label);
  const name = folded(id);
  if (text === wanted || name === wanted) return 0;
  if (text.startsWith(wanted) || name.startsWith(wanted)) return 1;
  if (text.split(/[^\p{L}\p{Nd}]+/u).some((word) => word.startsWith(wanted))) return 2;
  return text.includes(wanted) || name.includes(wanted) ? 3 : 4;
}

const folded = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
