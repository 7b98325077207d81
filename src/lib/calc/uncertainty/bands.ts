/** The band that a figure of a run lies in. */
import { percentile, sortedFigures, standardErrorOfPercentile } from './percentiles.ts';

/** One edge or the middle of a band, with its own standard error (null where it cannot be told). */
export interface BandPoint {
  readonly value: number;
  readonly standardError: number | null;
}

/** The 5th, 50th and 95th percentile: nine draws in ten lie between the outer two. */
export interface Band {
  readonly low: BandPoint;
  readonly middle: BandPoint;
  readonly high: BandPoint;
  /** Draws in the band's making, and draws that failed and are left out. */
  readonly draws: number;
  readonly failed: number;
}

/** The band of one figure; all values NaN where no draw gave one, Infinity where the percentile is “never”. */
export function bandOf(figures: Float64Array): Band {
  const sorted = sortedFigures(figures);
  const point = (share: number): BandPoint => ({
    value: percentile(sorted, share),
    standardError: standardErrorOfPercentile(sorted, share)
  });
  return {
    low: point(0.05),
    middle: point(0.5),
    high: point(0.95),
    draws: sorted.length,
    failed: figures.length - sorted.length
  };
}

/**
 * The band after more and more of the draws, to see it settle: after 1/steps, 2/steps, … of them. Draws come in random
 * order, so any first part of them is a fair sample.
 */
export function settlingBands(figures: Float64Array, steps = 10): Band[] {
  return Array.from({ length: steps }, (_, k) =>
    bandOf(figures.subarray(0, Math.ceil((figures.length * (k + 1)) / steps)))
  );
}
