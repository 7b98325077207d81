/** What must hold of any run of draws, over any model. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bandOf } from '#lib/calc/uncertainty/bands.ts';
import { layOutDraws } from '#lib/calc/uncertainty/draws.ts';
import type { DrawPlan, RangedInput } from '#lib/calc/uncertainty/draws.ts';
import { joinSlices, runDraws } from '#lib/calc/uncertainty/run.ts';
import type { Model } from '#lib/calc/uncertainty/run.ts';

const numbers = fc.integer({ min: -1000, max: 1000 }).map((n) => n / 10);
const ranges = fc.array(
  fc.tuple(numbers, numbers, numbers).map((three) => {
    const [low, mode, high] = three.sort((a, b) => a - b) as [number, number, number];
    return { low, mode, high };
  }),
  { minLength: 1, maxLength: 6 }
);
const named = (given: readonly { low: number; mode: number; high: number }[]): RangedInput[] =>
  given.map((range, index) => ({ path: `input.${index}`, ...range }));
const plans: fc.Arbitrary<DrawPlan> = fc.record({
  draws: fc.integer({ min: 1, max: 300 }),
  seed: fc.nat(),
  shape: fc.constantFrom('pert' as const, 'triangular' as const)
});
const model: Model = (values) => [
  values.reduce((sum, value, index) => sum + (index + 1) * value, 0),
  values.reduce((product, value) => product * Math.sin(value), 1)
];

describe('a run of draws', () => {
  test('gives the same figures, bit for bit, however it is sliced', () => {
    fc.assert(
      fc.property(
        ranges,
        plans,
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 5 }),
        (given, plan, cuts) => {
          const inputs = named(given);
          const edges = [
            ...new Set([0, ...cuts.map((cut) => Math.floor(cut * plan.draws)), plan.draws])
          ].sort((a, b) => a - b);
          // Each worker lays out the draws for itself.
          const slices = edges.slice(1).map((to, k) =>
            runDraws({
              model,
              draws: layOutDraws(inputs, plan),
              figureCount: 2,
              from: edges[k] as number,
              to
            })
          );
          const whole = runDraws({ model, draws: layOutDraws(inputs, plan), figureCount: 2 });
          const joined = joinSlices(slices.reverse());
          expect(joined).toEqual(whole.figures);
          expect(joined.map(bandOf)).toEqual(whole.figures.map(bandOf));
        }
      )
    );
  });

  test('over ranges without width gives the plain answer in every draw', () => {
    fc.assert(
      fc.property(fc.array(numbers, { minLength: 1, maxLength: 5 }), plans, (values, plan) => {
        const inputs = named(values.map((value) => ({ low: value, mode: value, high: value })));
        const [first, second] = model(values) as [number, number];
        const { figures } = runDraws({ model, draws: layOutDraws(inputs, plan), figureCount: 2 });
        expect(figures[0]?.every((figure) => figure === first)).toBe(true);
        expect(figures[1]?.every((figure) => figure === second)).toBe(true);
      })
    );
  });

  test('has each input within its range, and with the mean of its distribution', () => {
    fc.assert(
      fc.property(
        ranges,
        fc.nat(),
        fc.constantFrom('pert' as const, 'triangular' as const),
        (given, seed, shape) => {
          const draws = layOutDraws(named(given), { draws: 200, seed, shape });
          const { figures } = runDraws({ model: (values) => values, draws, figureCount: given.length });
          given.forEach(({ low, mode, high }, index) => {
            const list = figures[index] as Float64Array;
            expect(list.every((value) => value >= low && value <= high)).toBe(true);
            const mean = list.reduce((sum, value) => sum + value, 0) / list.length;
            const wanted = shape === 'pert' ? (low + 4 * mode + high) / 6 : (low + mode + high) / 3;
            // One draw in each of 200 equal parts cannot be off by more than a 200th of the range.
            expect(Math.abs(mean - wanted)).toBeLessThanOrEqual(
              (high - low) / 200 + 1e-12 * Math.abs(wanted)
            );
          });
        }
      )
    );
  });
});

test('the sampled mean of a linear model lies within three standard errors of the true one', () => {
  const given = [
    { low: 0, mode: 3, high: 10, weight: 2 },
    { low: -4, mode: -4, high: 4, weight: -1.5 },
    { low: 100, mode: 150, high: 160, weight: 0.25 },
    { low: 1, mode: 2, high: 3, weight: 10 }
  ];
  const mean = given.reduce(
    (sum, { low, mode, high, weight }) => sum + (weight * (low + 4 * mode + high)) / 6,
    0
  );
  const variance = given.reduce((sum, { low, mode, high, weight }) => {
    const own = (low + 4 * mode + high) / 6;
    return sum + (weight ** 2 * (own - low) * (high - own)) / 7;
  }, 0);
  const draws = 2000;
  for (const seed of [1, 2, 3, 4, 5]) {
    const { figures } = runDraws({
      model: (values) => [values.reduce((sum, value, index) => sum + given[index]!.weight * value, 0)],
      draws: layOutDraws(named(given), { draws, seed, shape: 'pert' }),
      figureCount: 1
    });
    const list = figures[0] as Float64Array;
    const found = list.reduce((sum, value) => sum + value, 0) / draws;
    const spread = list.reduce((sum, value) => sum + (value - found) ** 2, 0) / (draws - 1);
    expect(Math.abs(found - mean)).toBeLessThanOrEqual(3 * Math.sqrt(variance / draws));
    // Strata in each input leave the spread of a sum as it is: within three standard errors of a variance, √(2 / n).
    expect(Math.abs(spread / variance - 1)).toBeLessThanOrEqual(3 * Math.sqrt(2 / draws));
  }
});
