/** How one substance builds up in the air of a theatre during a case, and clears after it: a line a scenario and machine. */
import type { ChartData } from './chart-data.ts';
import { nameCell, nameColumn, numberCell, numberColumn } from './chart-table.ts';
import { figureText, listInWords } from './figure-text.ts';
import { seriesStyle } from './series-style.ts';

export interface TheatreAirCourse {
  /** e.g. `Sevoflurane, Main theatres`. */
  readonly of: string;
  readonly lines: readonly {
    /** The scenario, with its machine where that tells lines apart. */
    readonly name: string;
    readonly caseName: string;
    readonly course: readonly { readonly minute: number; readonly ppm: number; readonly path: string }[];
  }[];
}

const minutes = { kind: 'number', unit: 'min' } as const;
const concentration = { kind: 'number', unit: 'ppm' } as const;

export function theatreAirCourse({ of, lines }: TheatreAirCourse): ChartData {
  const drawn = lines.filter(({ course }) => course.length > 0);
  const empty =
    drawn.length === 0
      ? `Nothing to draw for ${of}: the room volume, the air changes or the scavenging of these theatres is not given. That is not 0.`
      : null;
  const times = [...new Set(drawn.flatMap(({ course }) => course.map(({ minute }) => minute)))].sort(
    (a, b) => a - b
  );
  return {
    title: `Build-up and clearance: ${of}`,
    summary:
      empty ??
      `${listInWords(
        drawn.map(({ name, caseName, course }) => {
          const most = Math.max(...course.map(({ ppm }) => ppm));
          return `${name} rises to ${figureText(most, concentration)} (${caseName})`;
        })
      )}. From clean air, at the mean rate of a case; estimated, not measured.`,
    empty,
    kind: 'plot',
    stacked: false,
    x: { title: 'Time from the start of the case, min', scale: 'linear', figures: minutes, least: 0 },
    y: { title: 'Concentration in the room, ppm', scale: 'linear', figures: concentration, least: 0 },
    series: drawn.map(({ name, course }, index) => ({
      label: name,
      drawn: 'line',
      named: 'in-key',
      style: seriesStyle(index),
      points: [{ x: 0, y: 0 }, ...course.map(({ minute, ppm }) => ({ x: minute, y: ppm }))]
    })),
    marks: [],
    table: {
      columns: [nameColumn('Time, min'), ...drawn.map(({ name }) => numberColumn(`${name}, ppm`))],
      rows: times.map((time) => ({
        cells: [
          nameCell(figureText(time, { kind: 'number' })),
          ...drawn.map(({ course }) => {
            const at = course.find(({ minute }) => minute === time);
            return at === undefined ? numberCell(null) : numberCell(at.ppm, at.path);
          })
        ]
      }))
    }
  };
}
