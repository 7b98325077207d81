/** What each agent takes at each flow, of an hour, of a MAC-hour or of a bottle: one bar an agent and flow. */
import { agentStyle } from './agent-style.ts';
import type { ChartData, Figures, TableCell } from './chart-data.ts';
import { nameCell, nameColumn, numberCell, numberColumn } from './chart-table.ts';
import { figureText } from './figure-text.ts';

/** Which of its figures is drawn. */
export interface DrawnFigure {
  readonly key: string;
  /** `Emissions of a MAC-hour`. */
  readonly title: string;
  readonly axisTitle: string;
  readonly figures: Figures;
}

export interface AgentsAtFlows {
  readonly caseName: string;
  readonly drawn: DrawnFigure;
  /** In the order of the table. */
  readonly columns: readonly { readonly key: string; readonly title: string }[];
  /** Agents in their order, the flows of one in rising order. */
  readonly rows: readonly {
    /** As written in a list, e.g. `Sevoflurane`. */
    readonly agent: string;
    readonly flowLPerMin: number;
    readonly figures: Readonly<Record<string, number>>;
    /** Name by which a figure can be asked where it comes from. */
    readonly pathOf: (key: string) => string;
  }[];
}

const flow = { kind: 'number', unit: 'L/min' } as const;

export function agentsAtFlows({ caseName, drawn, columns, rows }: AgentsAtFlows): ChartData {
  const { key, figures } = drawn;
  const valueOf = (row: AgentsAtFlows['rows'][number], name: string): number => row.figures[name] ?? NaN;
  const nameOf = ({ agent, flowLPerMin }: AgentsAtFlows['rows'][number]): string =>
    `${agent}, ${figureText(flowLPerMin, flow)}`;
  const empty =
    rows.length === 0
      ? `Nothing to compare for ${caseName}: it has no vapour, or no agent has a price.`
      : null;
  const sorted = [...rows].sort((a, b) => valueOf(a, key) - valueOf(b, key));
  const [least] = sorted;
  const most = sorted.at(-1);
  return {
    title: `${drawn.title}: ${caseName}`,
    summary:
      empty ??
      (least === undefined || most === undefined
        ? ''
        : `From ${figureText(valueOf(least, key), figures)} (${nameOf(least)}) to ${figureText(valueOf(most, key), figures)} (${nameOf(most)}).`),
    empty,
    kind: 'rows',
    stacked: false,
    x: { title: drawn.axisTitle, scale: 'linear', figures, least: 0 },
    y: { title: 'Agent and fresh gas flow', scale: 'names', figures, names: rows.map(nameOf) },
    series: [...new Set(rows.map(({ agent }) => agent))].map((agent) => ({
      label: agent,
      drawn: 'bars',
      named: 'in-key',
      style: agentStyle(agent),
      points: rows.flatMap((row, y) => (row.agent === agent ? [{ x: valueOf(row, key), y, from: 0 }] : []))
    })),
    marks: [],
    rowEnds: rows.map((row) => figureText(valueOf(row, key), figures)),
    table: {
      columns: [nameColumn('Agent and flow'), ...columns.map(({ title }) => numberColumn(title))],
      rows: rows.map((row) => ({
        cells: [
          nameCell(nameOf(row)),
          ...columns.map(({ key: name }): TableCell => numberCell(valueOf(row, name), row.pathOf(name)))
        ]
      }))
    }
  };
}
