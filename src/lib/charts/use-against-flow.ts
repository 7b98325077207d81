/** Agent used by one case against its fresh gas flow: the plans marked on it, and the floor that no flow goes below. */
import type { ChartData, ChartPoint, Series, TableRow } from './chart-data.ts';
import { nameCell, nameColumn, numberCell, numberColumn } from './chart-table.ts';
import { figureText, listInWords } from './figure-text.ts';
import { styleBesideAgents } from './agent-style.ts';

export interface UseAtFlow {
  readonly flowLPerMin: number;
  readonly liquidMl: number;
  /** Names by which the flow and the liquid can be asked where they come from. */
  readonly paths?: { readonly flow: string; readonly liquid: string };
}

export interface UseAgainstFlow {
  readonly caseName: string;
  /** As written in a sentence, e.g. `sevoflurane`. */
  readonly agent: string;
  /** Use by the circle-system balance at steady flows, any order. */
  readonly curve: readonly UseAtFlow[];
  /** Use by the published formula (fresh gas flow times dial); empty: not drawn. */
  readonly constantDial: readonly UseAtFlow[];
  /** Liquid that would be used if nothing spilled; null: not known. */
  readonly floorMl: number | null;
  /** Name by which the floor can be asked where it comes from. */
  readonly floorPath?: string;
  /** The plans at their mean flow. */
  readonly plans: readonly (UseAtFlow & { readonly name: string })[];
}

const flow = { kind: 'number', unit: 'L/min' } as const;
const liquid = { kind: 'number', unit: 'mL' } as const;

export function useAgainstFlow({
  caseName,
  agent,
  curve,
  constantDial,
  floorMl,
  floorPath,
  plans
}: UseAgainstFlow): ChartData {
  const byFlow = <T extends UseAtFlow>(uses: readonly T[]): T[] =>
    [...uses].sort((a, b) => a.flowLPerMin - b.flowLPerMin);
  const points = (uses: readonly UseAtFlow[]): ChartPoint[] =>
    byFlow(uses).map(({ flowLPerMin, liquidMl }) => ({ x: flowLPerMin, y: liquidMl }));
  const marked = byFlow(plans);

  const series: Series[] = [];
  if (constantDial.length > 0) {
    const style = { ...styleBesideAgents(1), dash: 'dashed' as const };
    series.push({
      label: 'Published formula',
      drawn: 'line',
      named: 'at-end',
      style,
      points: points(constantDial)
    });
  }
  if (curve.length > 0) {
    const style = { ...styleBesideAgents(0), dash: 'solid' as const };
    series.push({
      label: 'Circle-system balance',
      drawn: 'line',
      named: 'at-end',
      style,
      points: points(curve)
    });
  }
  if (marked.length > 0) {
    series.push({
      label: 'Flow plans',
      drawn: 'points',
      named: 'by-labels',
      style: { ...styleBesideAgents(2), marker: 'diamond' },
      points: marked.map((plan) => ({ x: plan.flowLPerMin, y: plan.liquidMl, label: plan.name }))
    });
  }

  const uses = marked.map(
    ({ name, flowLPerMin, liquidMl }) =>
      `${figureText(liquidMl, liquid)} with ${name} (${figureText(flowLPerMin, flow)} on average)`
  );
  const floor =
    floorMl === null
      ? ''
      : ` No flow goes below ${figureText(floorMl, liquid)}, what patient, circuit and lung take up.`;
  const empty =
    curve.length === 0 && marked.length === 0
      ? `Nothing to draw for ${caseName}: it has no vapour. Choose a case with an inhaled agent.`
      : null;

  return {
    title: `Use against fresh gas flow: ${caseName}`,
    summary:
      empty ??
      (uses.length === 0
        ? `Use of ${agent} by one case against its fresh gas flow.${floor}`
        : `One case uses ${listInWords(uses)} of ${agent}.${floor}`),
    empty,
    kind: 'plot',
    stacked: false,
    x: { title: 'Fresh gas flow, L/min', scale: 'linear', figures: flow, least: 0 },
    y: { title: `Liquid ${agent} for one case, mL`, scale: 'linear', figures: liquid, least: 0 },
    series,
    marks:
      floorMl === null
        ? []
        : [{ kind: 'level', axis: 'y', at: floorMl, label: 'Floor: if nothing spilled', tone: 'floor' }],
    table: {
      columns: [
        nameColumn('What'),
        numberColumn('Fresh gas flow, L/min'),
        numberColumn(`Liquid ${agent}, mL`)
      ],
      rows: [
        ...marked.map((plan) => useRow(plan.name, plan)),
        ...(floorMl === null
          ? []
          : [
              {
                cells: [
                  nameCell('Floor: if nothing spilled'),
                  numberCell(null),
                  numberCell(floorMl, floorPath)
                ]
              }
            ]),
        ...byFlow(curve).map((use) => useRow('Circle-system balance', use)),
        ...byFlow(constantDial).map((use) => useRow('Published formula', use))
      ]
    }
  };
}

const useRow = (name: string, { flowLPerMin, liquidMl, paths }: UseAtFlow): TableRow => ({
  cells: [nameCell(name), numberCell(flowLPerMin, paths?.flow), numberCell(liquidMl, paths?.liquid)]
});
