import { describe, expect, it } from 'vitest';
import { vapourDestination } from '#lib/charts/vapour-destination.ts';

const rows = [
  { name: 'Today', takenUpMl: 6.9, spilledMl: 21.3, leftMl: 1.1, path: 'today.cases.hernia' },
  { name: 'Low flow', takenUpMl: 6.8, spilledMl: 9.2, leftMl: 1 }
];

describe('where the vapour went', () => {
  const chart = vapourDestination({ of: 'one case', rowsAre: 'Scenario', rows });

  it('stacks parts that add up to what was used', () => {
    expect(chart.stacked).toBe(true);
    rows.forEach((row, place) => {
      const drawn = chart.series.map(({ points }) => points.find(({ y }) => y === place)?.x ?? NaN);
      const used = row.takenUpMl + row.spilledMl + row.leftMl;
      expect(drawn.reduce((sum, part) => sum + part, 0)).toBeCloseTo(used, 12);
    });
  });

  it('shows parts that add up to the total as shown', () => {
    for (const { cells } of chart.table.rows) {
      const [, ...numbers] = cells.map(({ text }) => Number(text));
      const total = numbers.pop() ?? NaN;
      expect(numbers.reduce((sum, part) => sum + part, 0)).toBeCloseTo(total, 9);
    }
  });

  it('says the share that was spilled', () => {
    expect(chart.summary).toContain('73\u00a0% with Today and 54\u00a0% with Low flow is spilled');
    expect(chart.rowEnds).toEqual(['29.3\u00a0mL', '17\u00a0mL']);
  });

  it('gives each part its path where the row has one', () => {
    expect(chart.table.rows[0]?.cells.map(({ path }) => path)).toEqual([
      undefined,
      'today.cases.hernia.takenUpMl',
      'today.cases.hernia.spilledMl',
      'today.cases.hernia.leftMl',
      'today.cases.hernia.liquidMl'
    ]);
    expect(chart.table.rows[1]?.cells.every(({ path }) => path === undefined)).toBe(true);
  });

  it('counts in litres from a litre up', () => {
    const year = vapourDestination({
      of: 'a year',
      rowsAre: 'Scenario',
      rows: [{ name: 'Today', takenUpMl: 2000, spilledMl: 6000, leftMl: 500 }]
    });
    expect(year.x.title).toBe('Liquid agent, L');
    expect(year.rowEnds).toEqual(['8.5\u00a0L']);
    expect(year.table.rows[0]?.cells[2]?.value).toBe(6);
  });

  it.each([[[]], [[{ name: 'Spinal', takenUpMl: 0, spilledMl: 0, leftMl: 0 }]]])(
    'has a sentence where no vapour is used: %j',
    (none) => {
      const chart = vapourDestination({ of: 'one case', rowsAre: 'Case', rows: none });
      expect(chart.empty).toMatch(/^Nothing to draw: no vapour is used\. Give /);
    }
  );
});
