/** A yearly total by line and scenario: one bar a scenario, one part a line; in the table one row a line, and the total. */
import type { ChartData, Figures, SeriesStyle, TableRow } from './chart-data.ts';
import { cellsThatAddUp, nameCell, nameColumn, numberColumn } from './chart-table.ts';
import { figureText } from './figure-text.ts';

export interface LinesByScenario {
  readonly title: string;
  readonly summary: string;
  readonly empty: string;
  readonly figures: Figures;
  readonly axisTitle: string;
  /** The unit in the table's headings. */
  readonly unit: string;
  /** In the order of the stack. */
  readonly lines: readonly { readonly label: string; readonly style: SeriesStyle }[];
  readonly scenarios: readonly {
    readonly name: string;
    /** One for each line; numbers or plain decimal text. */
    readonly parts: readonly (number | string)[];
    /** Paths in the estimate, one for each line, then the total's. */
    readonly paths: readonly string[];
  }[];
}

export function linesByScenario(given: LinesByScenario): ChartData {
  const { lines, scenarios, figures } = given;
  const columns = scenarios.map(({ parts, paths }) =>
    cellsThatAddUp(parts, { money: figures.kind === 'money', paths })
  );
  const amounts = scenarios.map(({ parts }) => parts.map(Number));
  const nothing = amounts.every((parts) => parts.every((part) => part === 0));

  const lineRows = lines.map(({ label }, line): TableRow => ({
    cells: [nameCell(label), ...columns.map(({ parts }) => parts[line] ?? nameCell(''))]
  }));
  const totalRow: TableRow = {
    cells: [nameCell('Total'), ...columns.map(({ total }) => total)],
    total: true
  };

  return {
    title: given.title,
    summary: nothing ? given.empty : given.summary,
    empty: nothing ? given.empty : null,
    kind: 'rows',
    stacked: true,
    x: { title: given.axisTitle, scale: 'linear', figures, least: 0 },
    y: { title: 'Scenario', scale: 'names', figures, names: scenarios.map(({ name }) => name) },
    // A line that is nothing everywhere would only fill the key; the table keeps it.
    series: lines
      .map(({ label, style }, line) => ({
        label,
        drawn: 'bars' as const,
        named: 'in-key' as const,
        style,
        points: amounts.map((parts, place) => {
          const x = parts[line] ?? 0;
          return { x, y: place, label: figureText(x, figures) };
        })
      }))
      .filter(({ points }) => points.some(({ x }) => x !== 0)),
    marks: [],
    rowEnds: columns.map(({ total }) => figureText(Number(total.value), figures)),
    table: {
      columns: [nameColumn('Line'), ...scenarios.map(({ name }) => numberColumn(`${name}, ${given.unit}`))],
      rows: [...lineRows, totalRow]
    }
  };
}
