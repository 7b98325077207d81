/** Yearly cost and yearly tonnes: one bar a scenario, one part a line. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import type { Co2eLines, CostLines } from '#lib/calc/estimate-types.ts';
import type { ChartData } from '#lib/charts/chart-data.ts';
import { yearlyCost } from '#lib/charts/yearly-cost.ts';
import { yearlyTonnes } from '#lib/charts/yearly-tonnes.ts';

const cost = (given: Partial<CostLines>): CostLines => ({
  agents: '0.00',
  gases: '0.00',
  absorbent: '0.00',
  drugs: '0.00',
  capture: '0.00',
  service: '0.00',
  electricity: '0.00',
  other: '0.00',
  carbon: '0.00',
  recovery: '0.00',
  total: '0.00',
  ...given
});
const co2e = (given: Partial<Co2eLines>): Co2eLines => ({
  agents: 0,
  nitrousOxide: 0,
  nitrousOxideLost: 0,
  gases: 0,
  absorbent: 0,
  electricity: 0,
  intravenous: 0,
  manufacture: 0,
  total: 0,
  ...given
});

/** What is drawn in a row, added up. */
const drawnSum = (chart: ChartData, place: number): number =>
  chart.series.reduce((sum, { points }) => sum + (points.find(({ y }) => y === place)?.x ?? 0), 0);
/** A column of the table as numbers, the total last. */
const shown = (chart: ChartData, column: number): number[] =>
  chart.table.rows.map(({ cells }) => Number(cells[column]?.text.replaceAll(',', '').replace('\u2212', '-')));

describe('yearly cost', () => {
  const chart = yearlyCost({
    currency: 'EUR',
    scenarios: [
      {
        id: 'today',
        name: 'Today',
        cost: cost({ agents: '81234.20', service: '14400.50', total: '95634.70' })
      },
      {
        id: 'new',
        name: 'Closed circuit',
        cost: cost({
          agents: '21890.10',
          service: '4700.00',
          carbon: '900.00',
          recovery: '-2500.00',
          total: '26590.10'
        })
      }
    ]
  });

  it('stacks the lines of each scenario to its total', () => {
    expect(drawnSum(chart, 0)).toBeCloseTo(95634.7, 6);
    expect(drawnSum(chart, 1)).toBeCloseTo(26590.1, 6);
    expect(chart.rowEnds).toEqual(['€95,635', '€26,590']);
  });

  it('says what each scenario saves against the baseline', () => {
    expect(chart.summary).toBe('Today costs €95,635 a year; against it Closed circuit saves €69,045.');
  });

  it('draws no line that is nothing everywhere, and keeps it in the table; what is not cash is in neither', () => {
    expect(chart.series.map(({ label }) => label)).toEqual(['Agents', 'Service']);
    const titles = chart.table.rows.map(({ cells }) => cells[0]?.text);
    expect(titles).toContain('Electricity');
    expect(titles.join()).not.toMatch(/carbon|recovery/i);
  });

  it('asks for every figure of the table by its path in the estimate', () => {
    expect(chart.table.rows[0]?.cells.map(({ path }) => path)).toEqual([
      undefined,
      'today.perYear.cost.agents',
      'new.perYear.cost.agents'
    ]);
    expect(chart.table.rows.at(-1)?.cells[2]?.path).toBe('new.perYear.cost.total');
    expect(chart.table.rows.at(-1)?.total).toBe(true);
  });

  it('keeps the exact amounts for a file', () => {
    expect(chart.table.rows[0]?.cells[1]?.value).toBe('81234.20');
    expect(chart.table.rows.at(-1)?.cells[1]?.value).toBe(95634.7);
  });

  it('shows parts that add up to the total as shown, whatever the amounts', () => {
    const cents = fc.integer({ min: -1_000_000, max: 50_000_000 }).map((amount) => (amount / 100).toFixed(2));
    fc.assert(
      fc.property(cents, cents, cents, (agents, gases, service) => {
        const total = (Number(agents) + Number(gases) + Number(service)).toFixed(2);
        const scenarios = [{ id: 'a', name: 'A', cost: cost({ agents, gases, service, total }) }];
        const column = shown(yearlyCost({ currency: 'EUR', scenarios }), 1);
        const sum = column.pop() ?? NaN;
        expect(column.reduce((so, part) => so + part, 0)).toBe(sum);
      })
    );
  });

  it.each([[[]], [[{ id: 'a', name: 'A', cost: cost({}) }]]])(
    'has a sentence where nothing costs: %j',
    (scenarios) => {
      expect(yearlyCost({ currency: 'EUR', scenarios }).empty).toMatch(/^Nothing to draw: .* Fill in /);
    }
  );
});

describe('yearly tonnes', () => {
  const chart = yearlyTonnes({
    warming: 'AR6, 100 years',
    scenarios: [
      { id: 'today', name: 'Today', co2eKg: co2e({ agents: 121234, gases: 1200, total: 122434 }) },
      { id: 'worse', name: 'Two more theatres', co2eKg: co2e({ agents: 130000, total: 130000 }) }
    ]
  });

  it('counts in tonnes and says how warming is counted', () => {
    expect(drawnSum(chart, 0)).toBeCloseTo(122.434, 9);
    expect(chart.x.title).toBe('CO₂e a year, t (AR6, 100 years)');
    expect(chart.summary).toBe(
      'Today causes 122\u00a0t CO₂e a year; against it Two more theatres adds 7.57\u00a0t (AR6, 100 years).'
    );
  });

  it('shows parts that add up to the total as shown', () => {
    const column = shown(chart, 1);
    const total = column.pop();
    expect(column.reduce((sum, part) => sum + part, 0)).toBe(total);
  });

  it('gives a line the colour that it has in the chart of cost', () => {
    const colours = (given: ChartData): Record<string, unknown> =>
      Object.fromEntries(given.series.map(({ label, style }) => [label, style.colour]));
    const inCost = yearlyCost({
      currency: 'EUR',
      scenarios: [
        { id: 'a', name: 'A', cost: cost({ agents: '1', absorbent: '1', electricity: '1', total: '3' }) }
      ]
    });
    const inTonnes = yearlyTonnes({
      warming: 'AR6, 100 years',
      scenarios: [{ id: 'a', name: 'A', co2eKg: co2e({ agents: 1, absorbent: 1, electricity: 1, total: 3 }) }]
    });
    expect(colours(inTonnes)).toEqual(colours(inCost));
  });
});
