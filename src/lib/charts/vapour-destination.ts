/** Where the vapour went: taken up by the patient, spilled, left in circuit and lung. */
import type { ChartData, ChartPoint, Series } from './chart-data.ts';
import { cellsThatAddUp, nameCell, nameColumn, numberColumn } from './chart-table.ts';
import { figureText, listInWords } from './figure-text.ts';
import { seriesStyle } from './series-style.ts';

export interface VapourDestination {
  /** What a row stands for, e.g. `one case of Laparoscopic cholecystectomy` or `a year`. */
  readonly of: string;
  /** The heading of the rows: `Scenario`, `Case`. */
  readonly rowsAre: string;
  readonly rows: readonly {
    readonly name: string;
    readonly takenUpMl: number;
    readonly spilledMl: number;
    readonly leftMl: number;
    /** Path in the estimate below which the parts lie, and the name of their total there. */
    readonly path?: string;
    /** `liquidMl` where left out. */
    readonly total?: string;
  }[];
}

const parts = [
  { key: 'takenUpMl', label: 'Taken up by the patient', style: seriesStyle(4) },
  { key: 'spilledMl', label: 'Spilled', style: seriesStyle(1) },
  { key: 'leftMl', label: 'Left in circuit and lung', style: seriesStyle(6) }
] as const;

type Row = VapourDestination['rows'][number];
const total = (row: Row): number => row.takenUpMl + row.spilledMl + row.leftMl;

/** Shown in litres where the largest row is a litre or more, as a year is. */
export function vapourDestination({ of, rowsAre, rows }: VapourDestination): ChartData {
  const inLitres = Math.max(0, ...rows.map(total)) >= 1000;
  const unit = inLitres ? 'L' : 'mL';
  const figures = { kind: 'number', unit } as const;
  const amount = (ml: number): number => (inLitres ? ml / 1000 : ml);
  const share = (ml: number, row: Row): string =>
    figureText(total(row) > 0 ? Math.round((100 * ml) / total(row)) : 0, { kind: 'percent' });

  const series: Series[] = parts.map(({ key, label, style }) => ({
    label,
    drawn: 'bars',
    named: 'in-key',
    style,
    points: rows.map((row, place): ChartPoint => {
      const point = { x: amount(row[key]), y: place };
      return total(row) > 0 ? { ...point, label: share(row[key], row) } : point;
    })
  }));
  const empty = rows.every((row) => total(row) <= 0)
    ? 'Nothing to draw: no vapour is used. Give a case an inhaled agent and a flow plan.'
    : null;
  const spills = rows
    .filter((row) => total(row) > 0)
    .map((row) => `${share(row.spilledMl, row)} with ${row.name}`);

  return {
    title: `Where the vapour went: ${of}`,
    summary: empty ?? `Of the agent used, ${listInWords(spills)} is spilled without reaching the patient.`,
    empty,
    kind: 'rows',
    stacked: true,
    x: { title: `Liquid agent, ${unit}`, scale: 'linear', figures, least: 0 },
    y: { title: rowsAre, scale: 'names', figures, names: rows.map((row) => row.name) },
    series,
    marks: [],
    rowEnds: rows.map((row) => figureText(amount(total(row)), figures)),
    table: {
      columns: [
        nameColumn(rowsAre),
        ...parts.map(({ label }) => numberColumn(`${label}, ${unit}`)),
        numberColumn(`Together, ${unit}`)
      ],
      rows: rows.map((row) => {
        const cells = cellsThatAddUp(
          parts.map(({ key }) => amount(row[key])),
          {
            money: false,
            paths:
              row.path === undefined
                ? []
                : [...parts.map(({ key }) => `${row.path}.${key}`), `${row.path}.${row.total ?? 'liquidMl'}`]
          }
        );
        return { cells: [nameCell(row.name), ...cells.parts, cells.total] };
      })
    }
  };
}
