/** The draws of a run: for each uncertain input its value in every draw, out of a seed and nothing else. */
import { pert, triangular } from './distributions.ts';
import type { Quantile } from './distributions.ts';
import { latinShares } from './latin-hypercube.ts';

/** A number between a low and a high value. */
export interface RangedInput {
  /** What it is, e.g. the path of a cell. */
  readonly path: string;
  readonly low: number;
  /** The most likely value: the one the user entered. */
  readonly mode: number;
  readonly high: number;
  /** Inputs with the same word here are high together and low together. */
  readonly together?: string;
}

/** One of several possibilities, each equally likely; its value is the number of the possibility, 0 first. */
export interface ChosenInput {
  readonly path: string;
  readonly choices: number;
  /** The number of the possibility that the user chose. */
  readonly mode: number;
}

export type UncertainInput = RangedInput | ChosenInput;

export interface DrawPlan {
  /** How many, 1 or more. */
  readonly draws: number;
  readonly seed: number;
  readonly shape: 'pert' | 'triangular';
}

export interface Draws {
  readonly count: number;
  /** The values of all inputs, in their order, in one draw; 0 ≤ draw < count. */
  valuesOf(draw: number): number[];
  /** What puts the draws in order of one input: its share of the way through the range, or the number of its choice. */
  orderBy(input: number): Float64Array;
}

/** Thrown where an input of a run is not what it must be; names it by its path. */
export class UncertainInputError extends RangeError {
  readonly path: string;

  constructor(path: string, sentence: string) {
    super(sentence);
    this.name = 'UncertainInputError';
    this.path = path;
  }
}

/**
 * Lays out the draws by Latin hypercube. The same inputs, seed and number of draws give the same values, whoever runs
 * which part of them. An input's draws depend on its place among the inputs; inputs that vary together share one place.
 *
 * @throws UncertainInputError where a range is no range; RangeError where the number of draws or the seed is none.
 */
export function layOutDraws(inputs: readonly UncertainInput[], { draws, seed, shape }: DrawPlan): Draws {
  if (!Number.isSafeInteger(draws) || draws < 1)
    throw new RangeError(`${draws} draws: a whole number of at least 1 is needed.`);
  const sharesOfWord = new Map<string, Float64Array>();
  const columns = inputs.map((input, dimension) => {
    const word = 'choices' in input ? undefined : input.together;
    const shares =
      (word === undefined ? undefined : sharesOfWord.get(word)) ?? latinShares({ seed, draws, dimension });
    if (word !== undefined) sharesOfWord.set(word, shares);
    return { input, shares, quantile: quantileOf(input, shape) };
  });
  return {
    count: draws,
    valuesOf: (draw) => {
      if (!Number.isSafeInteger(draw) || draw < 0 || draw >= draws)
        throw new RangeError(`Draw ${draw}: the draws are numbered from 0 to ${draws - 1}.`);
      return columns.map(({ shares, quantile }) => quantile(shares[draw] as number));
    },
    orderBy: (place) => {
      const column = columns[place];
      if (column === undefined)
        throw new RangeError(`Input ${place}: the inputs are numbered from 0 to ${columns.length - 1}.`);
      const { input, shares, quantile } = column;
      return 'choices' in input ? shares.map(quantile) : shares;
    }
  };
}

function quantileOf(input: UncertainInput, shape: DrawPlan['shape']): Quantile {
  if ('choices' in input) {
    const { choices, mode, path } = input;
    if (!Number.isSafeInteger(choices) || choices < 1 || !(mode >= 0 && mode < choices))
      throw new UncertainInputError(
        path,
        `Choice ${mode} of ${choices}: there must be at least one, and the chosen one among them.`
      );
    return (share) => Math.floor(share * choices);
  }
  try {
    return shape === 'pert' ? pert(input) : triangular(input);
  } catch (error) {
    throw error instanceof RangeError ? new UncertainInputError(input.path, error.message) : error;
  }
}
