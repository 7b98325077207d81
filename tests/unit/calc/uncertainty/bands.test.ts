import { describe, expect, test } from 'vitest';
import { acceptability, likelihoodAbove, likelihoodWithin } from '#lib/calc/uncertainty/acceptability.ts';
import { bandOf, settlingBands } from '#lib/calc/uncertainty/bands.ts';
import { generator } from '#lib/calc/uncertainty/generator.ts';
import { percentile, sortedFigures, standardErrorOfPercentile } from '#lib/calc/uncertainty/percentiles.ts';

const list = (...figures: number[]): Float64Array => Float64Array.from(figures);

describe('percentiles', () => {
  test('interpolate between neighbours', () => {
    const sorted = list(10, 20, 30, 40, 50);
    expect([0, 0.25, 0.5, 0.6, 0.95, 1].map((share) => percentile(sorted, share))).toEqual([
      10, 20, 30, 34, 48, 50
    ]);
    expect(percentile(list(7), 0.3)).toBe(7);
    expect(percentile(list(), 0.5)).toBeNaN();
    expect(() => percentile(sorted, 1.1)).toThrow('0 to 1');
  });

  test('keep “never” last, and leave failed draws out', () => {
    const sorted = sortedFigures(list(3, Infinity, NaN, -1, Infinity, 2));
    expect([...sorted]).toEqual([-1, 2, 3, Infinity, Infinity]);
    expect(percentile(sorted, 0.5)).toBe(3);
    expect(percentile(sorted, 0.6)).toBe(Infinity);
    expect(percentile(sorted, 1)).toBe(Infinity);
  });

  test('have a standard error that matches their scatter over many runs', () => {
    // Uniform draws: the percentile p scatters by √(p (1 − p) / n).
    const [n, runs] = [400, 600];
    for (const share of [0.05, 0.5, 0.95]) {
      const found = Array.from({ length: runs }, (_, run) => {
        const { nextUniform } = generator({ seed: 11, stream: run });
        const sorted = sortedFigures(Float64Array.from({ length: n }, nextUniform));
        return {
          value: percentile(sorted, share),
          error: standardErrorOfPercentile(sorted, share) as number
        };
      });
      const mean = found.reduce((sum, { value }) => sum + value, 0) / runs;
      const scatter = Math.sqrt(found.reduce((sum, { value }) => sum + (value - mean) ** 2, 0) / (runs - 1));
      const error = found.reduce((sum, one) => sum + one.error, 0) / runs;
      expect(scatter / Math.sqrt((share * (1 - share)) / n)).toBeCloseTo(1, 0.9);
      expect(Math.abs(error / scatter - 1)).toBeLessThan(0.12);
    }
  });

  test('have no standard error where too few figures stand, or “never” lies within reach', () => {
    expect(standardErrorOfPercentile(list(1, 2, 3), 0.05)).toBeNull();
    expect(standardErrorOfPercentile(list(1), 0.5)).toBeNull();
    const half = Float64Array.from({ length: 100 }, (_, k) => (k < 52 ? k : Infinity));
    expect(standardErrorOfPercentile(half, 0.5)).toBeNull();
    expect(standardErrorOfPercentile(half, 0.1)).toBeCloseTo(3, 5);
  });
});

describe('bands', () => {
  test('hold the 5th, 50th and 95th percentile, and count what failed', () => {
    const band = bandOf(Float64Array.from({ length: 103 }, (_, k) => (k > 100 ? NaN : 100 - k)));
    expect([band.low.value, band.middle.value, band.high.value]).toEqual([5, 50, 95]);
    expect([band.draws, band.failed]).toEqual([101, 2]);
  });

  test('of nothing are no numbers', () => {
    expect(bandOf(list(NaN))).toMatchObject({
      draws: 0,
      failed: 1,
      middle: { value: NaN, standardError: null }
    });
  });

  test('settle with more draws: the last is the whole, and its error is the least', () => {
    const { nextUniform } = generator({ seed: 3, stream: 0 });
    const figures = Float64Array.from({ length: 5000 }, nextUniform);
    const bands = settlingBands(figures, 5);
    expect(bands.map(({ draws }) => draws)).toEqual([1000, 2000, 3000, 4000, 5000]);
    expect(bands.at(-1)).toEqual(bandOf(figures));
    const errors = bands.map(({ middle }) => middle.standardError as number);
    expect(errors.at(-1)).toBeLessThan((errors[0] as number) * 0.7);
  });
});

describe('likelihood', () => {
  test('is the share at or below the limit; “never” is within none', () => {
    const paybacks = list(2, 5, 5.01, Infinity, NaN);
    expect(likelihoodWithin(paybacks, 5)).toEqual({ limit: 5, probability: 0.5, standardError: 0.25 });
    expect(likelihoodWithin(paybacks, Infinity).probability).toBe(0.75);
    expect(likelihoodWithin(list(NaN), 5).probability).toBeNaN();
  });

  test('is the share above a limit, what stands on it left out', () => {
    const worth = list(-1, 0, 0.01, 3, NaN);
    expect(likelihoodAbove(worth, 0)).toEqual({ limit: 0, probability: 0.5, standardError: 0.25 });
    expect(likelihoodAbove(list(NaN), 0).probability).toBeNaN();
  });

  test('rises along the curve', () => {
    const curve = acceptability(list(1, 2, 3, 4), [0, 1, 2.5, 9]);
    expect(curve.map(({ limit, probability }) => [limit, probability])).toEqual([
      [0, 0],
      [1, 0.25],
      [2.5, 0.5],
      [9, 1]
    ]);
  });
});
