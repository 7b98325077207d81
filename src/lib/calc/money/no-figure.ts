import type { Quantity, Reckoner } from '../working/reckoner.ts';

/** A figure that does not exist, as null with the reason why and what it would have been made from. */
export function noFigure(
  r: Reckoner,
  why: { id: string; yields: string; words: string; unit: string },
  inputs: Readonly<Record<string, Quantity<unknown>>>
): Quantity<null> {
  return r.result(null, inputs, () => ({ ...why, source: 'definition', report: [] }));
}

/** A list of yearly quantities under names of their own, as a method's inputs are given. */
export function byYear<T>(list: readonly Quantity<T>[]): Record<string, Quantity<T>> {
  return Object.fromEntries(list.map((quantity, year) => [`year${year}`, quantity]));
}
