import { expect, it } from 'vitest';
import { modelAgainstPublished, type ModelAgainstPublished } from '#lib/charts/model-against-published.ts';

// Figures made up for the test: it checks the drawing, not the model.
const given: ModelAgainstPublished = {
  quantity: 'Liquid used',
  unit: 'mL',
  scale: 'log',
  checks: [
    { what: 'First hour', group: 'Isoflurane', published: 10, model: 11, source: 'A 2000' },
    { what: 'Third hour', group: 'Desflurane', published: 40, model: 26, source: 'B 2001' },
    { what: 'Nothing left', group: 'Desflurane', published: 0, model: 0.1, source: 'C 2002' }
  ]
};

it('draws the line of equality and a quarter to either side', () => {
  const { marks } = modelAgainstPublished(given);
  expect(marks.map((mark) => mark.kind === 'ratio' && mark.yOverX)).toEqual([1, 1.25, 0.75]);
});

it('hides no miss: it names the furthest in its sentence, and numbers every point as the table does', () => {
  const chart = modelAgainstPublished(given);
  expect(chart.summary).toBe(
    '1 of 2 figures lie within 25 % of the published one; the furthest, Third hour, is 35\u00a0% below it.'
  );
  const labels = chart.series.flatMap(({ points }) => points.map(({ label }) => label));
  expect(labels).toEqual(['1', '2']);
  expect(chart.table.rows.map(({ cells }) => [cells[0]?.text, cells[1]?.text])).toEqual([
    ['First hour', '1'],
    ['Third hour', '2'],
    ['Nothing left', '–']
  ]);
});

it('keeps what no ratio can be taken of in the table', () => {
  const { rows } = modelAgainstPublished(given).table;
  expect(rows.map(({ cells }) => [cells[0]?.text, cells[5]?.text])).toEqual([
    ['First hour', '10'],
    ['Third hour', '\u221235'],
    ['Nothing left', '–']
  ]);
});

it.each(['linear', 'log'] as const)(
  'is square, with one %s scale both ways that holds every point',
  (scale) => {
    const { isSquare, x, y, series } = modelAgainstPublished({ ...given, scale });
    expect(isSquare).toBe(true);
    expect([y.scale, y.least, y.most]).toEqual([x.scale, x.least, x.most]);
    for (const point of series.flatMap(({ points }) => points))
      for (const value of [point.x, point.y]) {
        expect(value).toBeGreaterThan(x.least!);
        expect(value).toBeLessThan(x.most!);
      }
  }
);

it('writes no unit for a pure number', () => {
  expect(modelAgainstPublished({ ...given, unit: '' }).x.title).toBe('Published');
});

it('has a sentence where there is nothing to compare', () => {
  const none = modelAgainstPublished({ ...given, checks: [] });
  expect(none.empty).toBe('No published measurement of liquid used to compare with.');
  expect(none.marks).toEqual([]);
});
