/** Finds where a function is 0 within a range, over any function that can be evaluated: a whole estimate, for one. */

export type Solution =
  | { readonly kind: 'found'; readonly value: number }
  /** No change of sign was met: the function is above, or below, 0 throughout as far as it was looked at. */
  | { readonly kind: 'always-positive' }
  | { readonly kind: 'always-negative' };

/** Thrown where the function cannot be solved for as asked. */
export class UnsolvableError extends Error {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'UnsolvableError';
  }
}

/**
 * The lowest root of a continuous function in [low, high].
 *
 * The range is first looked over at `looks` even steps for a change of sign, then the bracket is closed by Brent's
 * method (inverse quadratic interpolation and secant steps, guarded by halving), to `tolerance` in the value. Two roots
 * between neighbouring looks are not seen.
 *
 * @param of the function; must give a finite number everywhere in the range.
 * @param tolerance half width of the bracket that is left; by default 1e-9 of the range.
 * @returns the root, or the sign that the function has throughout.
 * @throws UnsolvableError where low is not below high, or the function gives no finite number.
 */
export function solve({
  of,
  low,
  high,
  looks = 16,
  tolerance = 1e-9 * (high - low)
}: {
  of: (value: number) => number;
  low: number;
  high: number;
  looks?: number;
  tolerance?: number;
}): Solution {
  if (!(low < high))
    throw new UnsolvableError(`The range from ${low} to ${high} is empty: low must be below high.`);
  const at = (value: number): number => {
    const result = of(value);
    if (!Number.isFinite(result)) throw new UnsolvableError(`At ${value} there is no result to solve for.`);
    return result;
  };
  let from = low;
  let atFrom = at(low);
  if (atFrom === 0) return { kind: 'found', value: low };
  for (let look = 1; look <= looks; look += 1) {
    const to = look === looks ? high : low + ((high - low) * look) / looks;
    const atTo = at(to);
    if (atTo === 0) return { kind: 'found', value: to };
    if (Math.sign(atTo) !== Math.sign(atFrom))
      return { kind: 'found', value: closeBracket({ at, from, atFrom, to, atTo, tolerance }) };
    [from, atFrom] = [to, atTo];
  }
  return { kind: atFrom > 0 ? 'always-positive' : 'always-negative' };
}

/** Brent's method: R. P. Brent, Algorithms for Minimization without Derivatives, 1973, chapter 4. From memory. */
function closeBracket({
  at,
  from,
  atFrom,
  to,
  atTo,
  tolerance
}: {
  at: (value: number) => number;
  from: number;
  atFrom: number;
  to: number;
  atTo: number;
  tolerance: number;
}): number {
  // `best` has the smallest value so far, `other` the opposite sign, `last` is the best before.
  let [other, atOther, best, atBest] = [from, atFrom, to, atTo];
  let [last, atLast] = [other, atOther];
  let step = best - last;
  let stepBefore = step;
  for (;;) {
    if (Math.abs(atOther) < Math.abs(atBest)) {
      [last, atLast] = [best, atBest];
      [best, atBest, other, atOther] = [other, atOther, best, atBest];
    }
    const smallest = 2 * Number.EPSILON * Math.abs(best) + tolerance / 2;
    const half = (other - best) / 2;
    if (Math.abs(half) <= smallest || atBest === 0) return best;
    const guess = interpolatedStep({ best, atBest, other, atOther, last, atLast });
    if (
      Math.abs(stepBefore) >= smallest &&
      Math.abs(atLast) > Math.abs(atBest) &&
      guess * half > 0 &&
      Math.abs(guess) < Math.min(1.5 * Math.abs(half) - smallest / 2, Math.abs(stepBefore) / 2)
    )
      [stepBefore, step] = [step, guess];
    else [stepBefore, step] = [half, half];
    [last, atLast] = [best, atBest];
    best += Math.abs(step) > smallest ? step : smallest * Math.sign(half);
    atBest = at(best);
    if (Math.sign(atBest) === Math.sign(atOther)) {
      [other, atOther] = [last, atLast];
      stepBefore = step = best - last;
    }
  }
}

/** Step from `best` to where the secant, or with three points the inverse parabola, meets 0. */
function interpolatedStep({
  best,
  atBest,
  other,
  atOther,
  last,
  atLast
}: {
  best: number;
  atBest: number;
  other: number;
  atOther: number;
  last: number;
  atLast: number;
}): number {
  if (last === other || atLast === atBest || atLast === atOther)
    return ((other - best) * atBest) / (atBest - atOther);
  const [s, q, t] = [atBest / atLast, atLast / atOther, atBest / atOther];
  const numerator = s * ((other - best) * q * (q - t) - (best - last) * (t - 1));
  return -numerator / ((q - 1) * (t - 1) * (s - 1));
}
