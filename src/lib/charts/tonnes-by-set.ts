/** Emissions of a year by way to count warming: one bar a way and scenario. */
import type { ChartData } from './chart-data.ts';
import { nameCell, nameColumn, numberCell, numberColumn } from './chart-table.ts';
import { figureText } from './figure-text.ts';
import { seriesStyle, todaysPlace } from './series-style.ts';

export interface TonnesBySet {
  /** In the order of the rows, e.g. `IPCC AR6 (2021), 100 years`. */
  readonly sets: readonly { readonly name: string; readonly isInForce: boolean }[];
  /** Of each scenario the tonnes by set; null: not told. */
  readonly scenarios: readonly {
    readonly name: string;
    /** 0 for the first scenario that is not today, null for today; it sets the colour, as in the other charts. */
    readonly place: number | null;
    readonly tonnes: readonly (number | null)[];
    readonly pathOf: (set: number) => string;
  }[];
}

const figures = { kind: 'number', unit: 't' } as const;

export function tonnesBySet({ sets, scenarios }: TonnesBySet): ChartData {
  const rows = sets.flatMap(({ name, isInForce }, set) =>
    scenarios.map((scenario, order) => ({
      // Once a way: its other bars stand below with their scenario alone.
      name: order === 0 ? `${name}${isInForce ? ', in force' : ''}: ${scenario.name}` : scenario.name,
      order,
      tonnes: scenario.tonnes[set] ?? null,
      path: scenario.pathOf(set)
    }))
  );
  const told = rows.flatMap(({ tonnes }) => (tonnes === null ? [] : [tonnes]));
  const empty =
    told.length === 0 || told.every((tonnes) => tonnes === 0)
      ? 'Nothing to draw: nothing is emitted yet. Fill in the case mix and the flow plans.'
      : null;
  return {
    title: 'Emissions a year by way to count warming, 20 and 100 years',
    summary:
      empty ??
      `The same year: from ${figureText(Math.min(...told), figures)} to ${figureText(Math.max(...told), figures)} CO₂e. Litres and money are the same in all.`,
    empty,
    kind: 'rows',
    stacked: false,
    x: { title: 'CO₂e a year, t', scale: 'linear', figures, least: 0 },
    y: {
      title: 'Way to count warming, and scenario',
      scale: 'names',
      figures,
      names: rows.map(({ name }) => name)
    },
    series: scenarios.map(({ name, place }, order) => ({
      label: name,
      drawn: 'bars',
      named: 'in-key',
      style: seriesStyle(place ?? todaysPlace),
      points: rows.flatMap((row, y) =>
        row.order === order && row.tonnes !== null ? [{ x: row.tonnes, y, from: 0 }] : []
      )
    })),
    marks: [],
    rowEnds: rows.map(({ tonnes }) => (tonnes === null ? 'missing' : figureText(tonnes, figures))),
    table: {
      columns: [
        nameColumn('Way to count warming'),
        ...scenarios.map(({ name }) => numberColumn(`${name}, t CO₂e`))
      ],
      rows: sets.map(({ name }, set) => ({
        cells: [
          nameCell(name),
          ...scenarios.map(({ tonnes, pathOf }) => {
            const value = tonnes[set] ?? null;
            return value === null ? numberCell(null) : numberCell(value, pathOf(set));
          })
        ]
      }))
    }
  };
}
