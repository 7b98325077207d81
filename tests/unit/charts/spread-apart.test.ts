import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { spreadApart } from '#lib/charts/spread-apart.ts';

describe('labels spread apart', () => {
  it('stay where they belong while they do not touch', () => {
    expect(spreadApart({ wanted: [10, 60, 35], size: 20, from: 0, to: 100 })).toEqual([10, 60, 35]);
  });

  it('share the shift when two want the same place', () => {
    expect(spreadApart({ wanted: [50, 50], size: 20, from: 0, to: 100 })).toEqual([40, 60]);
  });

  it('keep inside', () => {
    expect(spreadApart({ wanted: [0, 100], size: 20, from: 0, to: 100 })).toEqual([10, 90]);
  });

  it('never touch and keep their order, as long as there is room', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -50, max: 350, noNaN: true }), { maxLength: 12 }), (wanted) => {
        const placed = spreadApart({ wanted, size: 20, from: 0, to: 300 });
        const order = wanted.map((_, index) => index).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
        order.slice(1).forEach((index, before) => {
          const previous = placed[order[before] ?? 0] ?? NaN;
          expect((placed[index] ?? NaN) - previous).toBeGreaterThanOrEqual(20 - 1e-9);
        });
        for (const middle of placed) {
          expect(middle).toBeGreaterThanOrEqual(10 - 1e-9);
          expect(middle).toBeLessThanOrEqual(290 + 1e-9);
        }
      })
    );
  });
});
