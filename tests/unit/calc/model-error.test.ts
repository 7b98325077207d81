import { expect, it } from 'vitest';
import { modelErrors } from '#lib/calc/published/model-error.ts';
import { publishedChecks } from '#lib/calc/published/published-checks.ts';
import type { PublishedCheck } from '#lib/calc/published/published-checks.ts';
import { referenceSets } from '#lib/calc/reference/reference-sets.ts';

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
  expect(uptake!.bias).toBeCloseTo((0.2 - 0.4) / 2, 12);
  expect(uptake!.rootMeanSquare).toBeCloseTo(Math.sqrt((0.04 + 0.16) / 2), 12);
  expect(use).toMatchObject({ area: 'measured use', rows: 1, bias: -0.5, rootMeanSquare: 0.5 });
});

it.each(['formula', 'rule of thumb', 'own arithmetic'] as const)('leaves out what is %s', (kind) => {
  expect(modelErrors([row({ kind })], 'eger')).toEqual([]);
});

it('leaves out lower bounds', () => {
  expect(modelErrors([row({ accepted: { low: 10, high: Infinity } })], 'eger')).toEqual([]);
});

it.each(referenceSets)('of set $id stays below a third in every area of measured use and uptake', (set) => {
  const errors = modelErrors(publishedChecks(set), 'eger');
  for (const area of ['uptake', 'measured use', 'difference between flows'] as const) {
    const of = errors.find((each) => each.area === area)!;
    expect(of.rows).toBeGreaterThan(1);
    expect(of.rootMeanSquare).toBeLessThan(1 / 3);
  }
});
