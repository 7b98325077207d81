import { expect, test } from 'vitest';
import { seriesStyle } from '#lib/charts/series-style.ts';
import { tonnesBySet } from '#lib/charts/tonnes-by-set.ts';

const sets = [
  { name: 'One, 20 years', isInForce: false },
  { name: 'One, 100 years', isInForce: true }
];
const scenario = (name: string, tonnes: readonly (number | null)[]) => ({
  name,
  place: name === 'Today' ? null : 2,
  tonnes,
  pathOf: (set: number) => `${name}.${set}`
});

test('there is a bar from 0 for each way and scenario, and its table asks for each', () => {
  const { series, y, table, rowEnds } = tonnesBySet({
    sets,
    scenarios: [scenario('Today', [30, 10]), scenario('Low', [20, null])]
  });
  expect(y.names).toEqual(['One, 20 years: Today', 'Low', 'One, 100 years, in force: Today', 'Low']);
  expect(series.map(({ points }) => points)).toEqual([
    [
      { x: 30, y: 0, from: 0 },
      { x: 10, y: 2, from: 0 }
    ],
    [{ x: 20, y: 1, from: 0 }]
  ]);
  // Today in ink, the third scenario of change in its colour everywhere.
  expect(series.map(({ style }) => style)).toEqual([seriesStyle(7), seriesStyle(2)]);
  expect(rowEnds?.at(-1)).toBe('missing');
  expect(table.rows.map(({ cells }) => cells.slice(1).map(({ path }) => path))).toEqual([
    ['Today.0', 'Low.0'],
    ['Today.1', undefined]
  ]);
});

test('where nothing is emitted there is a sentence', () => {
  expect(tonnesBySet({ sets, scenarios: [scenario('Today', [0, 0])] }).empty).toMatch(/Nothing to draw/);
});
