/**
 * What a number may be, between a low and a high value with a most likely one: as its quantile function, which turns a
 * share from 0 to 1 into the value that this share of the distribution lies below.
 */
import { betaDistribution } from './beta-distribution.ts';

export type Quantile = (share: number) => number;

export interface ThreePoints {
  readonly low: number;
  /** The most likely value. */
  readonly mode: number;
  readonly high: number;
}

/** Thrown where three values make no distribution. */
export class DistributionError extends RangeError {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'DistributionError';
  }
}

function check({ low, mode, high }: ThreePoints): void {
  for (const [word, value] of Object.entries({ low, mode, high }))
    if (!Number.isFinite(value))
      throw new DistributionError(`The ${word} value is ${value}: a number is needed.`);
  if (low > high)
    throw new DistributionError(`Low ${low} is above high ${high}: low must not be above high.`);
  if (mode < low || mode > high)
    throw new DistributionError(
      `The value ${mode} lies outside its range from ${low} to ${high}: widen the range or change the value.`
    );
}

/**
 * The PERT distribution: a beta distribution stretched over the range, with a = 1 + 4 (mode − low) / (high − low) and
 * a + b = 6. Mean (low + 4 mode + high) / 6, variance (mean − low)(high − mean) / 7. A range without width gives the mode.
 *
 * After D. G. Malcolm, J. H. Roseboom, C. E. Clark, W. Fazar, Operations Research 7 (1959), 646. From memory.
 * @throws DistributionError where a value is no number, low is above high, or the mode lies outside.
 */
export function pert(points: ThreePoints): Quantile {
  check(points);
  const { low, mode, high } = points;
  const width = high - low;
  if (width === 0) return () => mode;
  const a = 1 + (4 * (mode - low)) / width;
  const quantile = betaQuantile(a);
  return (share) => low + width * quantile(share);
}

/**
 * The triangular distribution. Mean (low + mode + high) / 3. A range without width gives the mode.
 * @throws DistributionError as `pert`.
 */
export function triangular(points: ThreePoints): Quantile {
  check(points);
  const { low, mode, high } = points;
  const width = high - low;
  if (width === 0) return () => mode;
  const shareBelowMode = (mode - low) / width;
  return (share) =>
    share < shareBelowMode
      ? low + Math.sqrt(share * width * (mode - low))
      : high - Math.sqrt((1 - share) * width * (high - mode));
}

const STEPS = 256;
/** A step of Newton's method this small, against the way to the nearer end, leaves an error of about its square. */
const SMALL_STEP = 1e-8;

/** Quantiles of the beta distribution with a + b = 6: bracketed in a table, then by Newton's method within the bracket. */
function betaQuantile(a: number): Quantile {
  const { density, shareBelow } = betaDistribution(a);
  const table = Float64Array.from({ length: STEPS + 1 }, (_, k) => shareBelow(k / STEPS));
  return (share) => {
    if (share <= 0) return 0;
    if (share >= 1) return 1;
    let [below, above] = [0, STEPS];
    while (above - below > 1) {
      const middle = (below + above) >> 1;
      if ((table[middle] as number) <= share) below = middle;
      else above = middle;
    }
    const [atBelow, atAbove] = [table[below] as number, table[above] as number];
    let [from, to] = [below / STEPS, above / STEPS];
    let x = from + ((to - from) * (share - atBelow)) / (atAbove - atBelow);
    for (let k = 0; k < 100; k += 1) {
      const off = shareBelow(x) - share;
      if (off < 0) from = x;
      else to = x;
      const newton = x - off / density(x);
      // Newton's step where it stays inside, else halving: so it cannot leave, and cannot stand still.
      const next = newton >= from && newton <= to ? newton : (from + to) / 2;
      const isSmall = Math.abs(next - x) <= SMALL_STEP * Math.min(x, 1 - x);
      x = next;
      if (isSmall) break;
    }
    return x;
  };
}
