import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { evenTicks } from '#lib/charts/even-ticks.ts';

describe('ticks', () => {
  it.each([
    [{ low: 0, high: 8, most: 5 }, [0, 2, 4, 6, 8]],
    [{ low: -2500, high: 111144, most: 9 }, [0, 20000, 40000, 60000, 80000, 100000]],
    [{ low: 0, high: 1, most: 6 }, [0, 0.2, 0.4, 0.6, 0.8, 1]],
    [{ low: 0.31, high: 0.38, most: 5 }, [0.32, 0.34, 0.36, 0.38]],
    [{ low: -3, high: 3, most: 4 }, [-2, 0, 2]]
  ])('%j are round', (range, ticks) => {
    expect(evenTicks(range)).toEqual(ticks);
  });

  it('are none where the axis has no length', () => {
    expect(evenTicks({ low: 4, high: 4, most: 5 })).toEqual([]);
    expect(evenTicks({ low: NaN, high: 4, most: 5 })).toEqual([]);
  });

  it('are within the axis, not too many, and enough to read by', () => {
    const end = fc.double({ min: -1e9, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(end, end, fc.integer({ min: 3, max: 12 }), (one, other, most) => {
        const [low, high] = [Math.min(one, other), Math.max(one, other)];
        fc.pre(high - low > 1e-3);
        const ticks = evenTicks({ low, high, most });
        expect(ticks.length).toBeLessThanOrEqual(most);
        expect(ticks.length).toBeGreaterThanOrEqual(1);
        for (const tick of ticks) {
          const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
          expect(tick).toBeGreaterThanOrEqual(low - slack);
          expect(tick).toBeLessThanOrEqual(high + slack);
        }
      })
    );
  });
});
