/** Published spreads: each for the figure that is in force, and as wide in the draws as it was printed. */
import { describe, expect, test } from 'vitest';
import { publishedSpreadOf, publishedSpreads } from '#lib/calc/reference/published-spreads.ts';
import { newestReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import { take } from '#lib/calc/reference/reference-set.ts';
import { constantPath } from '#lib/calc/reference/ranged-constant.ts';
import { rangeFault } from '#lib/workbook/range-fault.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';
import { pert } from '#lib/calc/uncertainty/distributions.ts';

/** Standard deviation of a distribution by its quantiles. */
function deviationOf(quantile: (share: number) => number): number {
  const count = 20_000;
  const values = Array.from({ length: count }, (_, at) => quantile((at + 0.5) / count));
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / count);
}

describe.each(publishedSpreads.map((spread) => [spread.constant, spread] as const))('%s', (id, spread) => {
  const constant = take(newestReferenceSet, id);
  const found = publishedSpreadOf(constant);

  test('is of the figure in force, which lies within it', () => {
    expect(found).not.toBeNull();
    expect(found!.low).toBeLessThan(constant.value);
    expect(found!.high).toBeGreaterThan(constant.value);
  });

  test('is a range that a workbook can take over', () => {
    const workbook = { ...departmentWorkbook(), referenceSet: newestReferenceSet.id };
    const { low, high } = found!;
    expect(rangeFault(workbook, constantPath(id), { low, high })).toBeNull();
    expect(low).toBeGreaterThan(0);
  });

  test('scatters in the draws as printed', () => {
    if ('low' in spread.width) {
      expect([found!.low, found!.high]).toEqual([spread.width.low, spread.width.high]);
      return;
    }
    const printed =
      'deviation' in spread.width ? spread.width.deviation : spread.width.relativeDeviation * constant.value;
    const drawn = deviationOf(pert({ low: found!.low, mode: constant.value, high: found!.high }));
    // Ends are rounded to three figures.
    expect(drawn / printed).toBeCloseTo(1, 1);
  });
});

test('another figure in force has no published spread', () => {
  const constant = take(newestReferenceSet, 'warming.AR6.100.sevoflurane');
  expect(publishedSpreadOf({ ...constant, value: 144 })).toBeNull();
});
