/** How likely it is that a figure stays within a limit, for one limit and over a range of them. */

export interface Likelihood {
  readonly limit: number;
  /** Share of the draws at or below the limit, 0 to 1; NaN where no draw gave a figure. */
  readonly probability: number;
  /** Standard error √(p (1 − p) / n) of the share, as for draws at random: a Latin hypercube's is smaller as a rule. */
  readonly standardError: number;
}

/** The likelihood that the figure is at or below the limit; failed draws (NaN) are left out, “never” is above any limit. */
export function likelihoodWithin(figures: Float64Array, limit: number): Likelihood {
  let [within, draws] = [0, 0];
  for (const figure of figures) {
    if (Number.isNaN(figure)) continue;
    draws += 1;
    if (figure <= limit && figure !== Infinity) within += 1;
  }
  const probability = within / draws;
  return { limit, probability, standardError: Math.sqrt((probability * (1 - probability)) / draws) };
}

/** The acceptability curve: the likelihood for each of the limits. */
export function acceptability(figures: Float64Array, limits: readonly number[]): Likelihood[] {
  return limits.map((limit) => likelihoodWithin(figures, limit));
}
