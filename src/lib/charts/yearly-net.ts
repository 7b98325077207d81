/** Net cash flow of each year against the baseline: paid out below the line, saved above it. */
import type { ChartData } from './chart-data.ts';
import { moneyCell, nameCell, nameColumn, numberColumn } from './chart-table.ts';
import { figureText } from './figure-text.ts';
import { seriesStyle } from './series-style.ts';

export interface YearlyNet {
  readonly scenario: string;
  readonly currency: string;
  /** Year 0 first, decimal text. */
  readonly cashFlow: readonly string[];
  /** Path of the years in the estimate; a year's net cash flow lies below it. */
  readonly path?: string;
}

export function yearlyNet({ scenario, currency, cashFlow, path }: YearlyNet): ChartData {
  const figures = { kind: 'money', currency } as const;
  const amounts = cashFlow.map(Number);
  const points = (which: (amount: number) => boolean): { x: number; y: number }[] =>
    amounts.flatMap((y, x) => (which(y) ? [{ x, y }] : []));
  const first = amounts[0] ?? 0;
  const later = amounts.slice(1);
  const least = Math.min(...later);
  const most = Math.max(...later);

  const empty = amounts.every((amount) => amount === 0)
    ? `Nothing to draw: ${scenario} costs and saves the same as the baseline in every year.`
    : null;
  const opening =
    first < 0 ? `${figureText(-first, figures)} paid at the start` : 'Nothing paid at the start';
  const span =
    least === most
      ? figureText(most, figures)
      : `between ${figureText(least, figures)} and ${figureText(most, figures)}`;
  const then = later.length === 0 ? '' : `; then ${span} a year, net of running cost`;

  return {
    title: `Paid and saved year by year: ${scenario}`,
    summary: empty ?? `${opening}${then}.`,
    empty,
    kind: 'columns',
    stacked: false,
    x: {
      title: 'Year',
      scale: 'names',
      figures: { kind: 'number' },
      names: amounts.map((_, year) => String(year))
    },
    y: { title: `Net cash flow against today, ${currency}`, scale: 'linear', figures, least: 0 },
    series: [
      {
        label: 'Saved',
        drawn: 'bars',
        named: 'in-key',
        style: seriesStyle(4),
        points: points((amount) => amount >= 0)
      },
      {
        label: 'Paid out',
        drawn: 'bars',
        named: 'in-key',
        style: seriesStyle(1),
        points: points((amount) => amount < 0)
      }
    ],
    marks: [{ kind: 'level', axis: 'y', at: 0, label: '', tone: 'zero' }],
    table: {
      columns: [nameColumn('Year'), numberColumn(`Net cash flow, ${currency}`)],
      rows: cashFlow.map((amount, year) => ({
        cells: [
          nameCell(String(year)),
          moneyCell(amount, path === undefined ? undefined : `${path}.${year}.net`)
        ]
      }))
    }
  };
}
