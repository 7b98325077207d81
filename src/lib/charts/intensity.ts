/** Emissions for a case, an hour or a MAC-hour: one bar for each thing compared and each scenario. */
import type { ChartData } from './chart-data.ts';
import { nameCell, nameColumn, numberCell, numberColumn } from './chart-table.ts';
import { figureText } from './figure-text.ts';
import { seriesStyle, todaysPlace } from './series-style.ts';

export interface Intensities {
  readonly title: string;
  /** Of what is drawn, e.g. `kg CO₂e for a MAC-hour`. */
  readonly axisTitle: string;
  /** What the rows are, e.g. `Case group`. */
  readonly rowTitle: string;
  readonly rows: readonly string[];
  /** Of each scenario one value a row; null: there is nothing to divide by. */
  readonly scenarios: readonly {
    readonly name: string;
    /** 0 for the first scenario that is not today, null for today; it sets the colour, as in the other charts. */
    readonly place: number | null;
    readonly values: readonly (number | null)[];
    readonly pathOf: (row: number) => string;
  }[];
}

const figures = { kind: 'number', unit: 'kg CO₂e' } as const;

export function intensityChart({ title, axisTitle, rowTitle, rows, scenarios }: Intensities): ChartData {
  const bars = rows.flatMap((name, row) =>
    scenarios.map((scenario, order) => ({
      // Once a row: its other bars stand below with their scenario alone.
      name: order === 0 ? `${name}: ${scenario.name}` : scenario.name,
      order,
      value: scenario.values[row] ?? null
    }))
  );
  const told = bars.flatMap(({ value }) => (value === null ? [] : [value]));
  const empty = told.every((value) => value === 0)
    ? 'Nothing to draw: nothing of this is emitted. Fill in the case mix and the flow plans.'
    : null;
  return {
    title,
    summary:
      empty ??
      `From ${figureText(Math.min(...told), figures)} to ${figureText(Math.max(...told), figures)}; ${axisTitle}.`,
    empty,
    kind: 'rows',
    stacked: false,
    x: { title: axisTitle, scale: 'linear', figures, least: 0 },
    y: {
      title: `${rowTitle}, and scenario`,
      scale: 'names',
      figures,
      names: bars.map(({ name }) => name)
    },
    series: scenarios.map(({ name, place }, order) => ({
      label: name,
      drawn: 'bars',
      named: 'in-key',
      style: seriesStyle(place ?? todaysPlace),
      points: bars.flatMap((bar, y) =>
        bar.order === order && bar.value !== null ? [{ x: bar.value, y, from: 0 }] : []
      )
    })),
    marks: [],
    rowEnds: bars.map(({ value }) => (value === null ? 'none given' : figureText(value, figures))),
    table: {
      columns: [nameColumn(rowTitle), ...scenarios.map(({ name }) => numberColumn(`${name}, kg CO₂e`))],
      rows: rows.map((name, row) => ({
        cells: [
          nameCell(name),
          ...scenarios.map(({ values, pathOf }) => {
            const value = values[row] ?? null;
            return value === null ? numberCell(null) : numberCell(value, pathOf(row));
          })
        ]
      }))
    }
  };
}
