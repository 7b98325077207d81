/** How likely each scenario has paid for itself within a limit, over a range of limits. */
import type { ChartData, Mark } from './chart-data.ts';
import { nameCell, nameColumn, numberCell, numberColumn } from './chart-table.ts';
import { figureText, listInWords } from './figure-text.ts';
import { seriesStyle } from './series-style.ts';

export interface PaybackProbability {
  /** The limits, in years, rising. */
  readonly limitsYears: readonly number[];
  /** The user's own limit; null: none set. */
  readonly chosenLimitYears: number | null;
  readonly scenarios: readonly {
    readonly name: string;
    /** Share of draws with payback within each limit, percent. */
    readonly probabilityPercent: readonly number[];
    /** Name by which the share at the limit of this place can be asked where it comes from. */
    readonly path?: (limit: number) => string;
  }[];
}

const years = { kind: 'number', unit: 'years' } as const;
const percent = { kind: 'percent' } as const;

export function paybackProbability(given: PaybackProbability): ChartData {
  const { limitsYears, chosenLimitYears, scenarios } = given;
  const empty =
    limitsYears.length === 0 || scenarios.length === 0
      ? 'Nothing to draw yet: give inputs their ranges, then run the draws.'
      : null;
  // The largest limit not above the chosen one: a probability that was really counted.
  const chosen =
    chosenLimitYears === null ? -1 : limitsYears.findLastIndex((limit) => limit <= chosenLimitYears);
  const at = limitsYears[chosen] === undefined ? limitsYears.length - 1 : chosen;
  const sentences = scenarios.map(
    ({ name, probabilityPercent }) => `${name} in ${figureText(probabilityPercent[at] ?? 0, percent)}`
  );
  const marks: Mark[] =
    chosenLimitYears === null
      ? []
      : [
          {
            kind: 'level',
            axis: 'x',
            at: chosenLimitYears,
            label: `Limit, ${figureText(chosenLimitYears, years)}`,
            tone: 'limit'
          }
        ];

  return {
    title: 'Probability of payback',
    summary:
      empty ??
      `Within ${figureText(limitsYears[at] ?? 0, years)}, ${listInWords(sentences)} of the draws has paid for itself.`,
    empty,
    kind: 'plot',
    stacked: false,
    x: { title: 'Payback within, years', scale: 'linear', figures: years, least: 0 },
    y: { title: 'Probability, %', scale: 'linear', figures: percent, least: 0, most: 100 },
    series: scenarios.map(({ name, probabilityPercent }, index) => ({
      label: name,
      drawn: 'line',
      // All of them end near 100 %: at their ends names would have to be guessed.
      named: 'in-key',
      style: seriesStyle(index),
      points: limitsYears.flatMap((x, limit) => {
        const y = probabilityPercent[limit];
        return y === undefined ? [] : [{ x, y }];
      })
    })),
    marks,
    table: {
      columns: [nameColumn('Limit, years'), ...scenarios.map(({ name }) => numberColumn(`${name}, %`))],
      rows: limitsYears.map((limit, index) => ({
        cells: [
          nameCell(figureText(limit, { kind: 'number' })),
          ...scenarios.map(({ probabilityPercent, path }) =>
            numberCell(probabilityPercent[index] ?? null, path?.(index))
          )
        ]
      }))
    }
  };
}
