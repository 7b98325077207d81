/** Cumulative cash flow against the baseline, with its band, the payback point and the user's limit. */
import type { ChartData, Mark, Series } from './chart-data.ts';
import { moneyCell, nameCell, nameColumn, numberColumn } from './chart-table.ts';
import { figureText } from './figure-text.ts';
import { runningTotal } from './running-total.ts';
import { seriesStyle } from './series-style.ts';

export interface CumulativeCashFlow {
  readonly currency: string;
  readonly paybackLimitYears: number | null;
  readonly scenarios: readonly {
    readonly name: string;
    /** Net cash flow of each year against the baseline, year 0 first, decimal text. */
    readonly cashFlow: readonly string[];
    /** Simple payback; null: never within these years. */
    readonly paybackYears: number | null;
    /** 5th and 95th percentile of the cumulative flow, year 0 first; null: no uncertainty run. */
    readonly band: { readonly low: readonly number[]; readonly high: readonly number[] } | null;
    /** Names by which figures of the curve, and of the edges of the band, can be asked where they come from. */
    readonly paths?: {
      readonly cumulative: (year: number) => string;
      readonly edge: (edge: 'low' | 'high', year: number) => string;
    };
  }[];
}

export function cumulativeCashFlow({
  currency,
  paybackLimitYears,
  scenarios
}: CumulativeCashFlow): ChartData {
  const figures = { kind: 'money', currency } as const;
  const years = { kind: 'number', unit: 'years' } as const;
  const totals = scenarios.map(({ cashFlow }) => runningTotal(cashFlow));
  const lastYear = Math.max(0, ...scenarios.map(({ cashFlow }) => cashFlow.length - 1));

  const bands = scenarios.flatMap(({ band }, index): Series[] =>
    band === null
      ? []
      : [
          {
            label: '5th to 95th percentile',
            drawn: 'band',
            named: 'in-key',
            style: seriesStyle(index),
            points: band.high.map((y, x) => ({ x, y, from: band.low[x] ?? y }))
          }
        ]
  );
  const curves = scenarios.map(({ name }, index): Series => ({
    label: name,
    drawn: 'line',
    named: 'at-end',
    style: seriesStyle(index),
    points: (totals[index] ?? []).map((y, x) => ({ x, y }))
  }));
  const paybacks = scenarios.flatMap(({ name, paybackYears }, index): Series[] =>
    paybackYears === null || paybackYears > lastYear
      ? []
      : [
          {
            label: `${name}, payback`,
            drawn: 'points',
            named: 'by-labels',
            style: seriesStyle(index),
            points: [{ x: paybackYears, y: 0, label: figureText(paybackYears, years) }]
          }
        ]
  );

  const sentence = ({ name, paybackYears }: (typeof scenarios)[number], index: number): string => {
    const end = totals[index]?.at(-1) ?? 0;
    const after = `by year ${lastYear} it is ${figureText(Math.abs(end), figures)} ${end < 0 ? 'behind' : 'ahead'}`;
    if (paybackYears === null)
      return `${name} does not pay for itself within ${figureText(lastYear, years)}; ${after}.`;
    const within =
      paybackLimitYears === null
        ? ''
        : `, ${paybackYears <= paybackLimitYears ? 'within' : 'past'} the limit of ${figureText(paybackLimitYears, years)}`;
    return `${name} has paid for itself after ${figureText(paybackYears, years)}${within}; ${after}.`;
  };

  const empty = scenarios.every(({ cashFlow }) => cashFlow.length < 2)
    ? 'Nothing to draw: there is no scenario to set against the baseline. Add one on the Scenarios sheet.'
    : null;
  const marks: Mark[] = [{ kind: 'level', axis: 'y', at: 0, label: '', tone: 'zero' }];
  if (paybackLimitYears !== null) {
    const label = `Limit, ${figureText(paybackLimitYears, years)}`;
    marks.push({ kind: 'level', axis: 'x', at: paybackLimitYears, label, tone: 'limit' });
  }

  return {
    title: 'Cumulative cash flow against today',
    summary: empty ?? scenarios.map(sentence).join(' '),
    empty,
    kind: 'plot',
    stacked: false,
    x: { title: 'Years from the purchase', scale: 'linear', figures: years, least: 0, most: lastYear },
    y: { title: `Saved so far less paid so far, ${currency}`, scale: 'linear', figures },
    series: [...bands, ...curves, ...paybacks],
    marks,
    table: {
      columns: [
        nameColumn('Year'),
        ...scenarios.flatMap(({ name, band }) => [
          numberColumn(`${name}, ${currency}`),
          ...(band === null ? [] : [numberColumn('5th percentile'), numberColumn('95th percentile')])
        ])
      ],
      rows: Array.from({ length: lastYear + 1 }, (_, year) => ({
        cells: [
          nameCell(String(year)),
          ...scenarios.flatMap(({ band, paths }, index) => [
            moneyCell(totals[index]?.[year] ?? null, paths?.cumulative(year)),
            ...(band === null
              ? []
              : (['low', 'high'] as const).map((edge) =>
                  moneyCell(band[edge][year] ?? null, paths?.edge(edge, year))
                ))
          ])
        ]
      }))
    }
  };
}
