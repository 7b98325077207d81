import { describe, expect, it } from 'vitest';
import { paybackProbability } from '#lib/charts/payback-probability.ts';
import { swingRanges } from '#lib/charts/swing-ranges.ts';

describe('ranges by swing', () => {
  const swing = (input: string, atLow: number | null, atHigh: number | null) => ({
    input,
    low: 'low',
    high: 'high',
    atLow,
    atHigh
  });
  const figures = { kind: 'money', currency: 'EUR' } as const;
  const chart = swingRanges({
    answer: 'yearly saving',
    figures,
    base: 5000,
    swings: [swing('Small', 4900, 5100), swing('Wide', 9000, 2000), swing('One way', 3000, 5000)]
  });

  it('puts the widest swing first', () => {
    expect(chart.y.names).toEqual(['Wide', 'One way', 'Small']);
    expect(chart.table.rows.map(({ cells }) => cells[0]?.text)).toEqual(['Wide', 'One way', 'Small']);
  });

  it('draws each bar from the answer as entered', () => {
    const [low, high] = chart.series;
    expect(low?.points[0]).toEqual({ x: 9000, y: 0, from: 5000, label: 'low' });
    expect(high?.points[0]).toEqual({ x: 2000, y: 0, from: 5000, label: 'high' });
    expect(chart.marks[0]).toMatchObject({ axis: 'x', at: 5000 });
  });

  it('puts an input without an answer at one end first, and draws the end that there is', () => {
    const none = swingRanges({
      answer: 'payback',
      figures,
      base: 5,
      swings: [swing('A', 4, 6), swing('B', null, 7)]
    });
    expect(none.y.names).toEqual(['B', 'A']);
    expect(none.series[0]?.points).toEqual([{ x: 4, y: 1, from: 5, label: 'low' }]);
    expect(none.summary).toContain('B (no answer at one end)');
    expect(none.table.rows[0]?.cells[3]).toEqual({ text: '–', value: null });
  });

  it('draws the widest fifteen and keeps the rest in the table', () => {
    const swings = Array.from({ length: 20 }, (_, index) =>
      swing(`Input ${index}`, 5000 - index, 5000 + index)
    );
    const many = swingRanges({ answer: 'yearly saving', figures, base: 5000, swings });
    expect(many.y.names).toHaveLength(15);
    expect(many.table.rows).toHaveLength(20);
    expect(many.summary).toContain('15 widest of 20');
  });

  it('has a sentence where no input has a range', () => {
    const none = swingRanges({ answer: 'yearly saving', figures, base: 5000, swings: [] });
    expect(none.empty).toMatch(/^Nothing to draw: .* Give a cell a low and a high value/);
  });
});

describe('probability of payback', () => {
  const given = {
    limitsYears: [0, 2, 4, 6],
    chosenLimitYears: 5,
    scenarios: [{ name: 'Closed circuit', probabilityPercent: [0, 20, 60, 95] }]
  };

  it('reads out the probability at the last limit counted that is not past the chosen one', () => {
    expect(paybackProbability(given).summary).toBe(
      'Within 4\u00a0years, Closed circuit in 60\u00a0% of the draws has paid for itself.'
    );
  });

  it('reads out the last limit where none is chosen, and draws no limit', () => {
    const open = paybackProbability({ ...given, chosenLimitYears: null });
    expect(open.summary).toContain('Within 6\u00a0years, Closed circuit in 95\u00a0%');
    expect(open.marks).toEqual([]);
  });

  it('spans 0 to 100 %, so that curves compare at a glance', () => {
    expect(paybackProbability(given).y).toMatchObject({ least: 0, most: 100 });
  });

  it.each([
    { ...given, limitsYears: [] },
    { ...given, scenarios: [] }
  ])('has a sentence before the draws are run', (none) => {
    expect(paybackProbability(none).empty).toBe(
      'Nothing to draw yet: give inputs their ranges, then run the draws.'
    );
  });
});
