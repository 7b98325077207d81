import { describe, expect, test } from 'vitest';
import { internalRatesOf } from '#lib/calc/money/internal-rate.ts';

/** The flows whose net present value has just these roots: the product of (1 + i − (1 + rate)). */
const flowsWithRates = (rates: readonly number[]): number[] =>
  rates.reduce(
    (flows, rate) => [...flows, 0].map((flow, year) => flow - (1 + rate) * (flows[year - 1] ?? 0)),
    [1]
  );

const expectRates = (found: number[], wanted: readonly number[], within: number): void => {
  expect(found).toHaveLength(wanted.length);
  wanted.forEach((rate, index) =>
    expect(Math.abs((found[index] as number) - rate)).toBeLessThanOrEqual(within)
  );
};

describe('internal rates', () => {
  test.each([
    ['one', [0.12]],
    ['one below 0', [-0.4]],
    ['one at 0', [0]],
    ['two', [0.1, 0.5]],
    ['two that lie close', [0.1, 0.101]],
    ['on both sides of 0', [-0.5, 0, 0.25]],
    ['five', [-0.9, -0.2, 0.05, 0.3, 4]]
  ])('finds all: %s', (_, rates) => {
    expectRates(internalRatesOf(flowsWithRates(rates)), rates, 1e-9);
  });

  test('finds a rate at which the value only touches 0', () => {
    expectRates(internalRatesOf(flowsWithRates([0.2, 0.2])), [0.2], 1e-7);
  });

  test.each([
    ['nothing', []],
    ['no flow but 0', [0, 0, 0]],
    ['one flow', [-100, 0, 0]],
    ['only outlays', [-100, -1, -5]],
    ['only inflows', [100, 1, 5]],
    ['a sign that changes but no root', [100, -150, 100]]
  ])('says that there is none: %s', (_, flows) => {
    expect(internalRatesOf(flows)).toEqual([]);
  });

  test('does not overflow over 60 years', () => {
    expectRates(internalRatesOf([-1, ...Array<number>(59).fill(0), 2]), [2 ** (1 / 60) - 1], 1e-14);
    const annuity = internalRatesOf([-1000, ...Array<number>(60).fill(1)]);
    expect(annuity).toHaveLength(1);
    expect(annuity[0]).toBeLessThan(0);
    const high = internalRatesOf([-1, ...Array<number>(60).fill(1e9)]);
    expectRates(high, [1e9], 1);
  });
});
