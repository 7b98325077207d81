import { expect, it } from 'vitest';
import { modelErrors, recordedModelError } from '#lib/calc/published/model-error.ts';
import { publishedChecks } from '#lib/calc/published/published-checks.ts';
import type { PublishedCheck } from '#lib/calc/published/published-checks.ts';
import { referenceSets } from '#lib/calc/reference/reference-sets.ts';
import { workingOf } from '#lib/calc/working/recorder.ts';

const row = (change: Partial<PublishedCheck>): PublishedCheck =>
  ({
    area: 'uptake',
    kind: 'measurement',
    published: 10,
    accepted: { low: 0, high: 20 },
    model: { eger: 11, 'reference-adult': 10, 'two-fat': 10 },
    ...change
  }) as PublishedCheck;
const gives = (figure: number) => ({ eger: figure, 'reference-adult': figure, 'two-fat': figure });

it('has bias and root mean square of the relative error, by area', () => {
  const [uptake, use] = modelErrors(
    [row({ model: gives(12) }), row({ area: 'measured use', model: gives(5) }), row({ model: gives(6) })],
    'eger'
  );
  expect(uptake).toMatchObject({ area: 'uptake', rows: 2 });
  expect(uptake!.biasPercent).toBeCloseTo((20 - 40) / 2, 10);
  expect(uptake!.rootMeanSquarePercent).toBeCloseTo(Math.sqrt((400 + 1600) / 2), 10);
  expect(use).toMatchObject({ area: 'measured use', rows: 1, biasPercent: -50, rootMeanSquarePercent: 50 });
});

it.each(['measurement not counted', 'formula', 'rule of thumb', 'own arithmetic'] as const)(
  'leaves out what is %s',
  (kind) => {
    expect(modelErrors([row({ kind })], 'eger')).toEqual([]);
  }
);

it('leaves out lower bounds', () => {
  expect(modelErrors([row({ accepted: { low: 10, high: Infinity } })], 'eger')).toEqual([]);
});

it.each(referenceSets)('of set $id stays below a third in every area of measured use and uptake', (set) => {
  const errors = modelErrors(publishedChecks(set), 'eger');
  for (const area of ['uptake', 'measured use', 'difference between flows'] as const) {
    const of = errors.find((each) => each.area === area)!;
    expect(of.rows).toBeGreaterThan(1);
    expect(of.rootMeanSquarePercent).toBeLessThan(100 / 3);
  }
});

it('has a working that ends in what is shown', () => {
  const [reference] = referenceSets;
  const checks = publishedChecks(reference!);
  for (const { area, biasPercent, rootMeanSquarePercent } of modelErrors(checks, 'eger')) {
    const recorded = recordedModelError(checks, { area, reference: reference!, bodyModel: 'eger' });
    expect(workingOf(recorded.bias).value).toBe(biasPercent);
    expect(workingOf(recorded.rootMeanSquare).value).toBe(rootMeanSquarePercent);
  }
});
