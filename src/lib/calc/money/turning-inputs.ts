/** Which single input, changed within its range, turns the answer to whether the investment pays in time. */
import { breakEven } from './break-even.ts';

export interface CandidateInput {
  /** Path of its cell. */
  readonly path: string;
  readonly now: number;
  readonly low: number;
  readonly high: number;
  /** True where it takes whole numbers alone, as a count does. */
  readonly whole?: boolean;
}

export interface TurningInput extends CandidateInput {
  /** Value next to today's at which the answer turns. */
  readonly turnsAt: number;
  /** How far that is, as a share of the way from today's value to the end of the range on that side, 0 to 1. */
  readonly shareOfWay: number;
}

/**
 * The inputs that turn the answer on their own, the nearest turn first. `of(path, value)` gives the cumulative net cash
 * flow at the limit with this one input changed. Each side of today's value is looked over by itself, so that the turn
 * given is the nearer one.
 */
export function turningInputs(
  inputs: readonly CandidateInput[],
  of: (path: string, value: number) => number
): TurningInput[] {
  return inputs
    .flatMap((input) => {
      const turns = ([input.low, input.high] as const).flatMap((end) => {
        if (end === input.now) return [];
        if (input.whole === true) return wholeTurn(input, end, of);
        // Walked from today's value outwards, whichever way that is, so that the first root is the nearest.
        const found = breakEven({
          of: (share) => of(input.path, input.now + share * (end - input.now)),
          low: 0,
          high: 1
        });
        if (found.kind !== 'found') return [];
        return [{ ...input, turnsAt: input.now + found.value * (end - input.now), shareOfWay: found.value }];
      });
      return turns.sort((a, b) => a.shareOfWay - b.shareOfWay).slice(0, 1);
    })
    .sort((a, b) => a.shareOfWay - b.shareOfWay);
}

/** The first whole number on the way from today's value to the end at which the answer is another. */
function wholeTurn(
  input: CandidateInput,
  end: number,
  of: (path: string, value: number) => number
): TurningInput[] {
  const { path, now } = input;
  const step = Math.sign(end - now);
  const pays = of(path, now) >= 0;
  for (let value = now + step; (end - value) * step >= 0; value += step)
    if (of(path, value) >= 0 !== pays)
      return [{ ...input, turnsAt: value, shareOfWay: (value - now) / (end - now) }];
  return [];
}
