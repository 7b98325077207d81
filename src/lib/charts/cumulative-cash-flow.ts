/** Cumulative cash flow against the baseline, with its band, the payback point and the user's limit. */
import type { AheadForATime } from '#lib/calc/estimate-types.ts';
import { aheadInWords, nothingAtStake } from './ahead-in-words.ts';
import type { ChartData, ChartPoint, Mark, Series } from './chart-data.ts';
import { moneyCell, nameCell, nameColumn, numberColumn } from './chart-table.ts';
import { figureText } from './figure-text.ts';
import { runningTotal } from './running-total.ts';
import { seriesStyle } from './series-style.ts';

export interface CumulativeCashFlow {
  readonly currency: string;
  readonly paybackLimitYears: number | null;
  readonly scenarios: readonly {
    readonly name: string;
    /** 0 for the first scenario that is not today: it sets the colour and the dash, the same in every chart. */
    readonly place: number;
    /** The one that is looked at stands out among others. */
    readonly isChosen: boolean;
    /** Net cash flow of each year against the baseline, year 0 first, decimal text. */
    readonly cashFlow: readonly string[];
    /** What of it comes in evenly over its year, decimal text; the rest falls at the year's end. */
    readonly savings: readonly string[];
    /** Simple payback, 0: at once; null: never within these years, or there is nothing to pay back. */
    readonly paybackYears: number | null;
    /** When it stands ahead without staying there. */
    readonly aheadForATime: readonly AheadForATime[];
    /** Of what the last year brings, what machines are still worth: no payback rests on it. */
    readonly worthAtEnd: string;
    /** 5th and 95th percentile of the cumulative flow, year 0 first; null: no uncertainty run. */
    readonly band: { readonly low: readonly number[]; readonly high: readonly number[] } | null;
    /** Names by which figures of the curve, and of the edges of the band, can be asked where they come from. */
    readonly paths?: {
      readonly cumulative: (year: number) => string;
      readonly edge: (edge: 'low' | 'high', year: number) => string;
    };
  }[];
}

/** Wider than a line is else. */
const chosenWidthPx = 3.5;

export function cumulativeCashFlow({
  currency,
  paybackLimitYears,
  scenarios
}: CumulativeCashFlow): ChartData {
  const figures = { kind: 'money', currency } as const;
  const years = { kind: 'number', unit: 'years' } as const;
  const totals = scenarios.map(({ cashFlow }) => runningTotal(cashFlow));
  const lastYear = Math.max(0, ...scenarios.map(({ cashFlow }) => cashFlow.length - 1));

  const bands = scenarios.flatMap(({ band, place }): Series[] =>
    band === null
      ? []
      : [
          {
            label: '5th to 95th percentile',
            drawn: 'band',
            named: 'in-key',
            style: seriesStyle(place),
            points: band.high.map((y, x) => ({ x, y, from: band.low[x] ?? y }))
          }
        ]
  );
  const curves = scenarios.map(({ name, savings, place, isChosen }, index): Series => ({
    label: name,
    drawn: 'line',
    named: 'at-end',
    style: { ...seriesStyle(place), ...(isChosen && scenarios.length > 1 ? { widthPx: chosenWidthPx } : {}) },
    points: curveOf(totals[index] ?? [], savings)
  }));
  const paybacks = scenarios.flatMap(({ name, paybackYears, place }): Series[] =>
    paybackYears === null || paybackYears > lastYear
      ? []
      : [
          {
            label: `${name}, payback`,
            drawn: 'points',
            named: 'by-labels',
            style: seriesStyle(place),
            points: [
              {
                x: paybackYears,
                y: 0,
                label: paybackYears === 0 ? 'at once' : figureText(paybackYears, years)
              }
            ]
          }
        ]
  );

  const sentence = (
    { name, cashFlow, paybackYears, aheadForATime, worthAtEnd }: (typeof scenarios)[number],
    index: number
  ): string => {
    if (nothingAtStake(cashFlow))
      return `${name} costs and saves the same as today, so there is nothing to pay back.`;
    const end = totals[index]?.at(-1) ?? 0;
    const worth =
      Number(worthAtEnd) === 0
        ? ''
        : `, what machines are then worth (${figureText(Number(worthAtEnd), figures)}) counted`;
    const ahead = aheadForATime.length === 0 ? '' : `it is ahead ${aheadInWords(aheadForATime)}; `;
    const after = `${ahead}by year ${lastYear} it is ${figureText(Math.abs(end), figures)} ${end < 0 ? 'behind' : 'ahead'}${worth}`;
    if (paybackYears === null)
      return `${name} does not pay for itself within ${figureText(lastYear, years)}; ${after}.`;
    if (paybackYears === 0) return `${name} pays for itself at once; ${after}.`;
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

/** The sum at each year's end; where something is paid or comes in there at once, the sum just before it as well. */
function curveOf(sums: readonly number[], savings: readonly string[]): ChartPoint[] {
  return sums.flatMap((y, x): ChartPoint[] => {
    const before = sums[x - 1];
    if (before === undefined) return [{ x, y }];
    const justBefore = Number((before + Number(savings[x] ?? 0)).toFixed(6));
    return justBefore === y
      ? [{ x, y }]
      : [
          { x, y: justBefore },
          { x, y }
        ];
  });
}
