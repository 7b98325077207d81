import { expect, test } from 'vitest';
import { intensityChart } from '#lib/charts/intensity.ts';
import { seriesStyle } from '#lib/charts/series-style.ts';

const of = (name: string, values: readonly (number | null)[]) => ({
  name,
  place: name === 'Today' ? null : 2,
  values,
  pathOf: (row: number) => `${name}.${row}`
});
const drawn = { title: 'Emissions', axisTitle: 'kg CO₂e for a case', rowTitle: 'Case group' };

test('there is a bar from 0 for each row and scenario, and its table asks for each', () => {
  const { series, y, rowEnds, table, summary } = intensityChart({
    ...drawn,
    rows: ['Hernia', 'Hip'],
    scenarios: [of('Today', [6, 2]), of('Low', [3, null])]
  });
  expect(y.names).toEqual(['Hernia: Today', 'Low', 'Hip: Today', 'Low']);
  expect(series.map(({ points }) => points)).toEqual([
    [
      { x: 6, y: 0, from: 0 },
      { x: 2, y: 2, from: 0 }
    ],
    [{ x: 3, y: 1, from: 0 }]
  ]);
  // Today in ink, the third scenario of change in its colour everywhere.
  expect(series.map(({ style }) => style)).toEqual([seriesStyle(7), seriesStyle(2)]);
  expect(rowEnds?.at(-1)).toBe('none given');
  expect(summary).toBe('From 2\u00a0kg CO₂e to 6\u00a0kg CO₂e; kg CO₂e for a case.');
  expect(table.rows.map(({ cells }) => cells.slice(1).map(({ path }) => path))).toEqual([
    ['Today.0', 'Low.0'],
    ['Today.1', undefined]
  ]);
});

test('where nothing is emitted there is a sentence', () => {
  expect(intensityChart({ ...drawn, rows: ['Hip'], scenarios: [of('Today', [0])] }).empty).toMatch(
    /Nothing to draw/
  );
  expect(intensityChart({ ...drawn, rows: [], scenarios: [of('Today', [])] }).empty).toMatch(
    /Nothing to draw/
  );
});
