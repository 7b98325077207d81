/** Runs a model over draws, in any slices, and joins the slices. */
import type { Draws } from './draws.ts';

/**
 * From the values of the inputs, in their order, to the figures asked for, Infinity for “never”; null where the values
 * together make no sense. It is given, so that nothing here knows what it is about.
 */
export type Model = (values: number[]) => readonly number[] | null;

/** The figures of the draws `from` … `to` − 1: one list for each figure, all lists in one buffer. */
export interface RunSlice {
  readonly from: number;
  readonly to: number;
  readonly figures: readonly Float64Array[];
}

/**
 * Runs the model over a slice of the draws.
 *
 * A draw to which the model gives null has NaN for all its figures: it is left out of bands and counted there.
 *
 * @param figureCount how many figures the model gives.
 */
export function runDraws({
  model,
  draws,
  figureCount,
  from = 0,
  to = draws.count
}: {
  model: Model;
  draws: Draws;
  figureCount: number;
  from?: number;
  to?: number;
}): RunSlice {
  const count = to - from;
  const all = new Float64Array(figureCount * count);
  const figures = Array.from({ length: figureCount }, (_, k) => all.subarray(k * count, (k + 1) * count));
  for (let draw = from; draw < to; draw += 1) {
    const given = model(draws.valuesOf(draw));
    figures.forEach((list, index) => {
      list[draw - from] = given?.[index] ?? NaN;
    });
  }
  return { from, to, figures };
}

/**
 * The buffer of a slice's figures, to hand over to another thread instead of copying: a run hands over hundreds of
 * slices, and a buffer for each of their figures would keep the page busy for longer than anybody should wait.
 */
export function buffersOf({ figures }: RunSlice): ArrayBufferLike[] {
  return figures.slice(0, 1).map((list) => list.buffer);
}

/**
 * Joins slices, in whatever order they came, to the figures of the whole run.
 * @throws RangeError where a draw is missing or there twice, or the slices differ in their number of figures.
 */
export function joinSlices(slices: readonly RunSlice[]): Float64Array[] {
  const sorted = [...slices].sort((a, b) => a.from - b.from);
  const figureCount = sorted[0]?.figures.length ?? 0;
  const count = sorted.at(-1)?.to ?? 0;
  let next = 0;
  for (const { from, to, figures } of sorted) {
    if (from !== next)
      throw new RangeError(`The slices do not fit: draw ${Math.min(from, next)} is missing or there twice.`);
    if (figures.length !== figureCount) throw new RangeError('The slices differ in their number of figures.');
    next = to;
  }
  return Array.from({ length: figureCount }, (_, index) => {
    const joined = new Float64Array(count);
    for (const { from, figures } of sorted) joined.set(figures[index] as Float64Array, from);
    return joined;
  });
}
