import { describe, expect, it } from 'vitest';
import type { FallCause } from '#lib/calc/estimate-types.ts';
import type { CumulativeCashFlow } from '#lib/charts/cumulative-cash-flow.ts';
import { cumulativeCashFlow } from '#lib/charts/cumulative-cash-flow.ts';
import { runningTotal } from '#lib/charts/running-total.ts';
import { yearlyNet } from '#lib/charts/yearly-net.ts';

describe('cumulative cash flow', () => {
  const chart = cumulativeCashFlow({
    currency: 'EUR',
    paybackLimitYears: 5,
    scenarios: [
      {
        name: 'Closed circuit',
        place: 0,
        isChosen: true,
        cashFlow: ['-1000.00', '400.00', '400.00', '400.00'],
        savings: ['0.00', '400.00', '400.00', '400.00'],
        paybackYears: 2.5,
        aheadForATime: [],
        worthAtEnd: '0',
        band: { low: [-1100, -800, -500, -200], high: [-900, -400, 100, 600] }
      },
      {
        name: 'Too dear',
        place: 1,
        isChosen: false,
        cashFlow: ['-9000.00', '400.00', '400.00', '400.00'],
        savings: ['0.00', '400.00', '400.00', '400.00'],
        paybackYears: null,
        aheadForATime: [],
        worthAtEnd: '0',
        band: null
      }
    ]
  });

  it('adds the years up, one after the other', () => {
    const line = chart.series.find(({ label, drawn }) => label === 'Closed circuit' && drawn === 'line');
    expect(line?.points.map(({ x, y }) => [x, y])).toEqual([
      [0, -1000],
      [1, -600],
      [2, -200],
      [3, 200]
    ]);
  });

  it('draws a scenario in its own colour and dash, whether it stands alone or among others', () => {
    const alone = cumulativeCashFlow({
      currency: 'EUR',
      paybackLimitYears: null,
      scenarios: [
        {
          name: 'Too dear',
          place: 1,
          isChosen: true,
          cashFlow: ['-1', '1'],
          savings: ['0', '1'],
          paybackYears: 1,
          aheadForATime: [],
          worthAtEnd: '0',
          band: { low: [-1, 0], high: [-1, 0] }
        }
      ]
    });
    const look = (of: typeof chart) => of.series.find(({ label }) => label === 'Too dear')?.style;
    expect(look(alone)).toEqual(look(chart));
    expect(new Set(alone.series.map(({ style }) => style.colour))).toEqual(new Set([look(chart)?.colour]));
  });

  it('draws the chosen scenario wider than the others', () => {
    const width = (name: string) => chart.series.find(({ label }) => label === name)?.style.widthPx ?? 0;
    expect(width('Closed circuit')).toBeGreaterThan(width('Too dear'));
  });

  it('marks payback on the line of nothing, where the line crosses it', () => {
    const paid = chart.series.filter(({ drawn }) => drawn === 'points');
    expect(paid.map(({ points }) => points)).toEqual([[{ x: 2.5, y: 0, label: '2.5\u00a0years' }]]);
  });

  it('draws the band of a scenario that has one, from low to high', () => {
    const bands = chart.series.filter(({ drawn }) => drawn === 'band');
    expect(bands).toHaveLength(1);
    expect(bands[0]?.points[3]).toEqual({ x: 3, y: 600, from: -200 });
  });

  it('has the line of nothing and the limit to read against', () => {
    expect(chart.marks).toContainEqual({ kind: 'level', axis: 'y', at: 0, label: '', tone: 'zero' });
    expect(chart.marks).toContainEqual(expect.objectContaining({ axis: 'x', at: 5, tone: 'limit' }));
  });

  it('says who pays for itself and who does not', () => {
    expect(chart.summary).toBe(
      'Closed circuit has paid for itself after 2.5\u00a0years, within the limit of 5\u00a0years; ' +
        'by year 3 it is €200.00 ahead. ' +
        'Too dear does not pay for itself within 3\u00a0years; by year 3 it is €7,800 behind.'
    );
  });

  it('has one row a year, with the band beside the scenario that has one', () => {
    expect(chart.table.columns.map(({ title }) => title)).toEqual([
      'Year',
      'Closed circuit, EUR',
      '5th percentile',
      '95th percentile',
      'Too dear, EUR'
    ]);
    expect(chart.table.rows[3]?.cells.map(({ value }) => value)).toEqual(['3', 200, -200, 600, -7800]);
  });

  describe('of which not everything comes in evenly', () => {
    const flow = (change: Partial<CumulativeCashFlow['scenarios'][number]>) =>
      cumulativeCashFlow({
        currency: 'EUR',
        paybackLimitYears: 5,
        scenarios: [
          {
            name: 'Leased',
            place: 2,
            isChosen: true,
            cashFlow: ['0.00', '-1000.00', '3000.00', '-1000.00'],
            savings: ['0.00', '-1000.00', '-1000.00', '-1000.00'],
            paybackYears: null,
            aheadForATime: [{ fromYears: 2, untilYears: 3, cause: 'yearly-cost' }],
            worthAtEnd: '0',
            band: null,
            ...change
          }
        ]
      });

    it('stands upright at the end of the year in which it falls', () => {
      expect(flow({}).series[0]?.points).toEqual([
        { x: 0, y: 0 },
        { x: 1, y: -1000 },
        { x: 2, y: -2000 },
        { x: 2, y: 2000 },
        { x: 3, y: 1000 }
      ]);
    });

    it('names a time ahead that does not last, with its cause, and marks no payback', () => {
      expect(flow({}).series.filter(({ drawn }) => drawn === 'points')).toEqual([]);
      expect(flow({ cashFlow: ['0', '-1000', '3000', '-2500'] }).summary).toBe(
        'Leased does not pay for itself within 3\u00a0years; it is ahead from 2 to 3\u00a0years, ' +
          'until its yearly cost has used that up; by year 3 it is €500.00 behind.'
      );
      const cause = (given: FallCause) =>
        flow({ aheadForATime: [{ fromYears: 0, untilYears: 1, cause: given }] }).summary;
      expect(cause('replacement')).toContain('from the start to 1\u00a0year, until machines are replaced;');
      expect(cause('later-purchase')).toContain('until more is bought;');
    });

    it('says at once, nothing to pay back, and what the end owes to the machines’ worth', () => {
      const one = { aheadForATime: [], cashFlow: ['0', '5', '5'], savings: ['0', '5', '5'] };
      const atOnce = flow({ ...one, paybackYears: 0 });
      expect(atOnce.summary).toBe('Leased pays for itself at once; by year 2 it is €10.00 ahead.');
      expect(atOnce.series.at(-1)?.points[0]?.label).toBe('at once');
      expect(flow({ ...one, cashFlow: ['0.00', '0', '0'] }).summary).toBe(
        'Leased costs and saves the same as today, so there is nothing to pay back.'
      );
      expect(flow({ ...one, cashFlow: ['-20', '5', '25'], worthAtEnd: '20' }).summary).toBe(
        'Leased does not pay for itself within 2\u00a0years; by year 2 it is €10.00 ahead, ' +
          'what machines are then worth (€20.00) counted.'
      );
    });
  });

  it('has a sentence where there is no scenario', () => {
    const none = cumulativeCashFlow({ currency: 'EUR', paybackLimitYears: null, scenarios: [] });
    expect(none.empty).toMatch(/^Nothing to draw: .* Add one on the Scenarios sheet\.$/);
  });
});

it('sums of amounts keep their cents', () => {
  expect(runningTotal(['0.10', '0.20', '0.30'])).toEqual([0.1, 0.3, 0.6]);
  expect(runningTotal([])).toEqual([]);
});

describe('net cash flow year by year', () => {
  const chart = yearlyNet({
    scenario: 'Closed circuit',
    currency: 'EUR',
    cashFlow: ['-2000.00', '700.00', '-50.00'],
    path: 'new.againstBaseline.years'
  });

  it('tells what is paid from what is saved, each year in one of the two', () => {
    const [saved, paid] = chart.series;
    expect(saved?.points).toEqual([{ x: 1, y: 700 }]);
    expect(paid?.points).toEqual([
      { x: 0, y: -2000 },
      { x: 2, y: -50 }
    ]);
    expect(saved?.style.colour).not.toBe(paid?.style.colour);
  });

  it('asks for each year by its path', () => {
    expect(chart.table.rows.map(({ cells }) => cells[1]?.path)).toEqual([
      'new.againstBaseline.years.0.net',
      'new.againstBaseline.years.1.net',
      'new.againstBaseline.years.2.net'
    ]);
  });

  it('reads out the start and the span of the later years', () => {
    expect(chart.summary).toBe(
      '€2,000 paid at the start; then between \u2212€50.00 and €700.00 a year, net of running cost.'
    );
  });

  it.each([[[]], [['0.00', '0.00']]])('has a sentence where nothing changes: %j', (cashFlow) => {
    const none = yearlyNet({ scenario: 'Today', currency: 'EUR', cashFlow });
    expect(none.empty).toMatch(/^Nothing to draw: Today costs and saves the same/);
  });
});
