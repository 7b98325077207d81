import { expect, test } from 'vitest';
import { theatreAirCourse } from '#lib/charts/theatre-air-course.ts';

const line = (name: string, points: readonly (readonly [number, number])[]) => ({
  name,
  caseName: 'Hernia repair',
  course: points.map(([minute, ppm]) => ({ minute, ppm, path: `${name}.${minute}` }))
});

test('each line begins in clean air, and its table asks for every point', () => {
  const { series, table, summary } = theatreAirCourse({
    of: 'Sevoflurane, Theatres',
    lines: [
      line('Today', [
        [10, 2],
        [60, 3]
      ]),
      line('Low', [
        [10, 1],
        [40, 0.5]
      ])
    ]
  });
  expect(series.map(({ points }) => points[0])).toEqual([
    { x: 0, y: 0 },
    { x: 0, y: 0 }
  ]);
  expect(table.rows.map(({ cells }) => cells.map(({ value }) => value))).toEqual([
    ['10', 2, 1],
    ['40', null, 0.5],
    ['60', 3, null]
  ]);
  expect(table.rows[0]?.cells[2]?.path).toBe('Low.10');
  expect(summary).toMatch(/Today rises to 3\sppm \(Hernia repair\)/);
});

test('where nothing is told there is a sentence, and that it is not 0', () => {
  const { empty, series } = theatreAirCourse({ of: 'Sevoflurane, Theatres', lines: [line('Today', [])] });
  expect(empty).toMatch(/not given.*not 0/);
  expect(series).toEqual([]);
});
