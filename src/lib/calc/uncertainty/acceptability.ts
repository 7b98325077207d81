/** How likely it is that a figure stays within a limit or above it, for one limit and over a range of them. */

export interface Likelihood {
  readonly limit: number;
  /** Share of the draws within the limit, or above it, 0 to 1; NaN where no draw gave a figure. */
  readonly probability: number;
  /** Standard error √(p (1 − p) / n) of the share, as for draws at random: a Latin hypercube's is smaller as a rule. */
  readonly standardError: number;
}

/** The likelihood that the figure is at or below the limit; failed draws (NaN) are left out, “never” is above any limit. */
export const likelihoodWithin = (figures: Float64Array, limit: number): Likelihood =>
  likelihood(figures, { limit, holds: (figure) => figure <= limit && figure !== Infinity });

/** The likelihood that the figure is above the limit; failed draws (NaN) are left out. */
export const likelihoodAbove = (figures: Float64Array, limit: number): Likelihood =>
  likelihood(figures, { limit, holds: (figure) => figure > limit });

function likelihood(
  figures: Float64Array,
  { limit, holds }: { limit: number; holds: (figure: number) => boolean }
): Likelihood {
  let [counted, draws] = [0, 0];
  for (const figure of figures) {
    if (Number.isNaN(figure)) continue;
    draws += 1;
    if (holds(figure)) counted += 1;
  }
  const probability = counted / draws;
  return { limit, probability, standardError: Math.sqrt((probability * (1 - probability)) / draws) };
}

/** The acceptability curve: the likelihood for each of the limits. */
export function acceptability(figures: Float64Array, limits: readonly number[]): Likelihood[] {
  return limits.map((limit) => likelihoodWithin(figures, limit));
}
