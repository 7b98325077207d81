/**
 * What it would be worth to know more before an option is chosen: all of it at once, and one uncertain input by itself.
 * The value is that of the best option; an option's values in all draws are of the same draws, so that they compare.
 *
 * Howard RA, Information value theory, IEEE Transactions on Systems Science and Cybernetics 2 (1966), 22 (from memory);
 * one input at a time from draws already made, by bins: as in ISPOR's reports on value of information (2020; from
 * memory).
 */
import { generator } from './generator.ts';

/** What is drawn of one input, or of several that vary together. */
export interface DrawnInput {
  readonly paths: readonly string[];
  /** One for each draw; only their order matters, so that shares of the way through a range do. */
  readonly values: Float64Array;
}

export interface InputWorth {
  readonly paths: readonly string[];
  /** Expected gain of choosing with this input known: from 0 to the worth of knowing all. */
  readonly worth: number;
  /** The same with its values shuffled over the draws, so that they say nothing: what chance alone gives. */
  readonly noise: number;
}

export interface ValueOfInformation {
  /** Place of the option with the highest mean; the first of equal ones. */
  readonly best: number;
  /** Mean of every option over the draws that count. */
  readonly means: readonly number[];
  /** Expected gain of choosing with everything known. */
  readonly worthOfAll: number;
  readonly inputs: readonly InputWorth[];
  /** Draws that count: those in which every option has a value. */
  readonly draws: number;
}

const bins = 20;
/** The draws take the streams from 0 on: a shuffle by one of theirs would undo it. */
const firstStream = 2 ** 32;

/**
 * The value of information over draws.
 *
 * - Of all: mean over draws of the best option in the draw, less the best mean.
 * - Of one input: the draws are put in order of the input and cut into 20 bins of equal count (an input with no more
 *   than 20 different values: one bin for each); mean over bins, by count, of the best mean in the bin, less the best
 *   mean. 0 ≤ this ≤ that of all, as a mean of maxima is no less than the maximum of means.
 * @param options each option's value in every draw; NaN in any leaves the draw out.
 * @throws RangeError without options, or where lists differ in length.
 */
export function valueOfInformation({
  options,
  inputs,
  seed
}: {
  options: readonly Float64Array[];
  inputs: readonly DrawnInput[];
  seed: number;
}): ValueOfInformation {
  const [first] = options;
  if (first === undefined) throw new RangeError('No option is given: at least one is needed.');
  for (const list of [...options, ...inputs.map(({ values }) => values)])
    if (list.length !== first.length)
      throw new RangeError(`A list of ${list.length} draws beside one of ${first.length}.`);
  const counted: number[] = [];
  for (let draw = 0; draw < first.length; draw += 1)
    if (options.every((values) => !Number.isNaN(values[draw]))) counted.push(draw);
  const means = options.map((values) => meanOver(values, counted));
  const best = means.reduce((found, mean, place) => (mean > (means[found] as number) ? place : found), 0);
  // Every option over the best on average: so nothing comes out below 0 by rounding, as the best itself has 0.
  const reference = options[best] as Float64Array;
  const ahead = options.map((values) => values.map((value, draw) => value - (reference[draw] as number)));
  const gainOf = (draws: readonly number[]): number =>
    Math.max(...ahead.map((values) => sumOver(values, draws)));
  const worthIn = (groups: readonly (readonly number[])[]): number =>
    counted.length === 0 ? 0 : groups.reduce((sum, group) => sum + gainOf(group), 0) / counted.length;
  return {
    best,
    means,
    worthOfAll: worthIn(counted.map((draw) => [draw])),
    inputs: inputs.map(({ paths, values }, place) => ({
      paths,
      worth: worthIn(binsOf(values, counted)),
      noise: worthIn(binsOf(shuffled(values, { seed, stream: firstStream + place }), counted))
    })),
    draws: counted.length
  };
}

/** The draws in bins of one value, or of neighbouring values in equal numbers. */
function binsOf(values: Float64Array, draws: readonly number[]): number[][] {
  const sorted = [...draws].sort((a, b) => (values[a] as number) - (values[b] as number) || a - b);
  const different = new Map<number, number[]>();
  for (const draw of sorted) {
    const value = values[draw] as number;
    const same = different.get(value);
    if (same !== undefined) same.push(draw);
    else if (different.size < bins) different.set(value, [draw]);
    else return equalBins(sorted);
  }
  return [...different.values()];
}

const equalBins = (sorted: readonly number[]): number[][] =>
  Array.from({ length: bins }, (_, k) =>
    sorted.slice(Math.floor((k * sorted.length) / bins), Math.floor(((k + 1) * sorted.length) / bins))
  );

/** The values in another order, each equally likely (Fisher and Yates; Knuth, The Art of Computer Programming 2, 3.4.2). */
function shuffled(values: Float64Array, of: { seed: number; stream: number }): Float64Array {
  const random = generator(of);
  const order = Float64Array.from(values);
  for (let last = order.length - 1; last > 0; last -= 1) {
    const other = random.nextBelow(last + 1);
    [order[last], order[other]] = [order[other] as number, order[last] as number];
  }
  return order;
}

const sumOver = (values: Float64Array, draws: readonly number[]): number =>
  draws.reduce((sum, draw) => sum + (values[draw] as number), 0);
const meanOver = (values: Float64Array, draws: readonly number[]): number =>
  sumOver(values, draws) / draws.length;
