/** Which input moves the answer: each at its low and at its high, the rest as entered, the widest swing first. */
import type { ChartData, Figures } from './chart-data.ts';
import { nameCell, nameColumn, numberCell, numberColumn } from './chart-table.ts';
import { figureText, listInWords } from './figure-text.ts';
import { seriesStyle } from './series-style.ts';

export interface SwingRanges {
  /** The answer, as written in a sentence: `yearly saving`. */
  readonly answer: string;
  readonly figures: Figures;
  /** The answer with every input as entered. */
  readonly base: number;
  readonly swings: readonly {
    readonly input: string;
    /** The input's low and high, written out: `60 min`. */
    readonly low: string;
    readonly high: string;
    /** null: no answer there, e.g. it never pays back. */
    readonly atLow: number | null;
    readonly atHigh: number | null;
    /** Names by which the answers at the low and at the high can be asked where they come from. */
    readonly paths?: readonly [string, string];
  }[];
}

const mostDrawn = 15;

export function swingRanges({ answer, figures, base, swings }: SwingRanges): ChartData {
  const reach = ({ atLow, atHigh }: (typeof swings)[number]): number =>
    atLow === null || atHigh === null
      ? Infinity
      : Math.max(base, atLow, atHigh) - Math.min(base, atLow, atHigh);
  const bySwing = [...swings].sort((a, b) => reach(b) - reach(a) || 0);
  const drawn = bySwing.slice(0, mostDrawn);
  const sentences = drawn
    .slice(0, 3)
    .map(({ input, atLow, atHigh }) =>
      atLow === null || atHigh === null
        ? `${input} (no answer at one end)`
        : `${input} (${figureText(atLow, figures)} to ${figureText(atHigh, figures)})`
    );
  const unit = figures.kind === 'money' ? figures.currency : figures.kind === 'percent' ? '%' : figures.unit;
  const heading = answer.charAt(0).toUpperCase() + answer.slice(1);
  const answerColumn = unit === undefined ? heading : `${heading}, ${unit}`;
  const empty =
    swings.length === 0
      ? 'Nothing to draw: no input has a range. Give a cell a low and a high value to see how far it moves the answer.'
      : null;

  return {
    title: `What moves the ${answer}`,
    summary:
      empty ??
      `As entered the ${answer} is ${figureText(base, figures)}; it moves most with ${listInWords(sentences)}.` +
        (swings.length > mostDrawn
          ? ` The chart shows the ${mostDrawn} widest of ${swings.length} ranges.`
          : ''),
    empty,
    kind: 'rows',
    stacked: false,
    x: { title: answerColumn, scale: 'linear', figures },
    y: { title: 'Input', scale: 'names', figures, names: drawn.map(({ input }) => input) },
    series: [
      {
        label: 'Input at its low',
        drawn: 'bars',
        named: 'in-key',
        style: seriesStyle(1),
        points: drawn.flatMap(({ atLow, low }, y) =>
          atLow === null ? [] : [{ x: atLow, y, from: base, label: low }]
        )
      },
      {
        label: 'Input at its high',
        drawn: 'bars',
        named: 'in-key',
        style: seriesStyle(0),
        points: drawn.flatMap(({ atHigh, high }, y) =>
          atHigh === null ? [] : [{ x: atHigh, y, from: base, label: high }]
        )
      }
    ],
    marks: [
      { kind: 'level', axis: 'x', at: base, label: `As entered, ${figureText(base, figures)}`, tone: 'zero' }
    ],
    table: {
      columns: [
        nameColumn('Input'),
        nameColumn('Low'),
        nameColumn('High'),
        numberColumn(`${answerColumn}, at the low`),
        numberColumn(`${answerColumn}, at the high`)
      ],
      rows: bySwing.map(({ input, low, high, atLow, atHigh, paths }) => ({
        cells: [
          nameCell(input),
          nameCell(low),
          nameCell(high),
          numberCell(atLow, paths?.[0]),
          numberCell(atHigh, paths?.[1])
        ]
      }))
    }
  };
}
