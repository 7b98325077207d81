/** Percentiles of drawn figures. */

/** Figures in rising order; draws that failed (NaN) are left out, Infinity (“never”) stays and comes last. */
export function sortedFigures(figures: Float64Array): Float64Array {
  return figures.filter((figure) => !Number.isNaN(figure)).sort();
}

/**
 * The value that a share of the figures lies below, by the common convention of spreadsheets and statistics programs
 * (R. J. Hyndman, Y. Fan, The American Statistician 50 (1996), 361, type 7): at place (n − 1) · share of the sorted
 * figures, interpolated between neighbours. Next to a “never”, which no interpolation reaches, it is “never”.
 *
 * @param sorted figures in rising order, without NaN.
 * @param share 0 to 1.
 * @returns NaN where there are no figures.
 */
export function percentile(sorted: Float64Array, share: number): number {
  if (!(share >= 0 && share <= 1)) throw new RangeError(`A share of ${share}: 0 to 1 is allowed.`);
  const place = (sorted.length - 1) * share;
  const before = Math.floor(place);
  const [low, high] = [sorted[before] ?? NaN, sorted[Math.ceil(place)] ?? NaN];
  return low === high ? low : low + (high - low) * (place - before);
}

/**
 * How far chance may have moved a percentile, as one standard error: half the distance between the figures that lie one
 * standard deviation of the binomial count, √(n · share · (1 − share)), below and above its place.
 *
 * R. S. Woodruff, Journal of the American Statistical Association 47 (1952), 635. It holds for draws made at random;
 * those of a Latin hypercube scatter less, so it errs on the safe side.
 *
 * @returns null where it cannot be told: too few figures, or “never” within its reach.
 */
export function standardErrorOfPercentile(sorted: Float64Array, share: number): number | null {
  const place = (sorted.length - 1) * share;
  const reach = Math.sqrt(sorted.length * share * (1 - share));
  if (place - reach < 0 || place + reach > sorted.length - 1) return null;
  const at = (where: number): number => percentile(sorted, where / (sorted.length - 1));
  const half = (at(place + reach) - at(place - reach)) / 2;
  return Number.isFinite(half) ? half : null;
}
