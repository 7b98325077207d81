import { describe, expect, it } from 'vitest';
import { labelsFitBeside, namesOnAxis } from '#lib/charts/axis-names.ts';
import { chartConfig, chartHeightPx, chartScene } from '#lib/charts/chart-config.ts';
import type { ChartLook } from '#lib/charts/chart-look.ts';
import { cumulativeCashFlow } from '#lib/charts/cumulative-cash-flow.ts';
import { swingRanges } from '#lib/charts/swing-ranges.ts';
import { tonnesAgainstWorth } from '#lib/charts/tonnes-against-worth.ts';

const look = {} as ChartLook;
const cashFlow = (name: string) =>
  cumulativeCashFlow({
    currency: 'EUR',
    paybackLimitYears: null,
    scenarios: [
      {
        name,
        place: 0,
        isChosen: true,
        cashFlow: ['-1', '1'],
        savings: ['0', '1'],
        paybackYears: 1,
        aheadForATime: [],
        worthAtEnd: '0',
        band: null
      }
    ]
  });
const swings = (count: number, [low, high] = ['1', '2']) =>
  swingRanges({
    answer: 'yearly saving',
    figures: { kind: 'number' },
    base: 1,
    swings: Array.from({ length: count }, (_, index) => ({
      input: `Input ${index}`,
      low,
      high,
      atLow: 0,
      atHigh: 2
    }))
  });

describe('the lay-out of a chart', () => {
  it('names lines beside the plot where there is room, and in a key where there is none', () => {
    expect(chartScene(cashFlow('Closed circuit'), look, 900).namesAtEnds).toBe(true);
    expect(chartScene(cashFlow('Closed circuit'), look, 400).namesAtEnds).toBe(false);
    expect(chartScene(cashFlow('Closed circuit '.repeat(5)), look, 900).namesAtEnds).toBe(false);
  });

  it('says what a range goes from and to beside its bar, or under its name where the bars would have no room', () => {
    const long = swings(2, ['a low with a long name', 'a high with a long name']);
    expect(labelsFitBeside(long, 1200)).toBe(true);
    expect(namesOnAxis(long, 1200)).toEqual([['Input 0'], ['Input 1']]);
    expect(labelsFitBeside(long, 400)).toBe(false);
    expect(namesOnAxis(long, 400)[1]?.join(' ')).toBe(
      'Input 1 a low with a long name to a high with a long name'
    );
    expect(chartHeightPx(long, 400)).toBeGreaterThan(chartHeightPx(swings(2), 400));
    expect(labelsFitBeside(swings(2), 400)).toBe(true);
  });

  it('has room for the key where there is one', () => {
    expect(chartHeightPx(cashFlow('Closed circuit '.repeat(5)), 900)).toBeGreaterThan(
      chartHeightPx(cashFlow('Closed circuit'), 900)
    );
  });

  it('grows with each row, and needs no width yet to have a height', () => {
    const perRow = chartHeightPx(swings(4), 900) - chartHeightPx(swings(3), 900);
    expect(perRow).toBeGreaterThanOrEqual(30);
    expect(chartHeightPx(swings(0), 0)).toBeGreaterThan(0);
    expect(Number.isFinite(chartHeightPx(swings(3), 0))).toBe(true);
  });
});

describe('a point', () => {
  const option = (id: string, isTwin: boolean) => ({
    id,
    name: id,
    place: 0,
    isTwin,
    isChosen: false,
    co2eAvoidedKg: 1000,
    npv: '1',
    path: id
  });
  const drawn = (isTwin: boolean) => {
    const data = tonnesAgainstWorth({
      currency: 'EUR',
      appraisalYears: 10,
      options: [option('a', isTwin), option('b', false)],
      taken: []
    });
    const paper = '#fff';
    const full = { paper, ink: '#000', series: ['#123456'] } as unknown as ChartLook;
    const { datasets } = chartConfig(chartScene(data, full, 900), { widthPx: 900, responsive: false }).data;
    return { paper, point: datasets[0] as { backgroundColor: unknown; pointBorderColor: unknown } };
  };

  it('that is hollow is seen by its edge, which has the colour of its scenario', () => {
    const { point, paper } = drawn(true);
    expect(point.backgroundColor).toBe(paper);
    expect(point.pointBorderColor).toBe('#123456');
  });

  it('that is full has its colour within', () => expect(drawn(false).point.backgroundColor).toBe('#123456'));
});
