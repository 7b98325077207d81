/**
 * What a chart shows, free of any chart library: numbers, words and the order of things. Each chart of the app is a pure
 * function from plain figures to this, and its table holds the same figures as the picture.
 */

/** How the numbers along an axis are written. */
export type Figures =
  | { readonly kind: 'number'; readonly unit?: string }
  | { readonly kind: 'percent' }
  | { readonly kind: 'money'; readonly currency: string };

export interface Axis {
  /** In words, with the unit: `Fresh gas flow, L/min`. */
  readonly title: string;
  readonly scale: 'linear' | 'log' | 'names';
  readonly figures: Figures;
  /** With `names`: one for each place along the axis, 0 first. */
  readonly names?: readonly string[];
  /** What the axis must at least reach, beside the data. */
  readonly least?: number;
  readonly most?: number;
}

/** Agents with a colour of their own, which stands for nothing else. */
export const agentColours = ['sevoflurane', 'isoflurane', 'desflurane', 'halothane', 'enflurane'] as const;
export type AgentColour = (typeof agentColours)[number];

/** Numbers 1 to 8 of the palette, which is also the number of the pattern that fills a bar; or an agent. */
export type SeriesColour = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | AgentColour;
export type Dash = 'solid' | 'dashed' | 'dotted' | 'dash-dot';
export type Marker = 'circle' | 'square' | 'triangle' | 'diamond' | 'cross' | 'star';

/** Told apart by more than colour: lines by dash, points by marker, bars by pattern. */
export interface SeriesStyle {
  readonly colour: SeriesColour;
  readonly dash: Dash;
  readonly marker: Marker;
  /** Of a line; 2.25 where left out. A second way to tell lines apart where the dash already means something. */
  readonly widthPx?: number;
  /** Of points: only the edge is drawn. */
  readonly isHollow?: boolean;
  /** Of points: the one that is spoken of. */
  readonly isLarge?: boolean;
}

export interface ChartPoint {
  readonly x: number;
  readonly y: number;
  /** Where a bar or a band begins, along its value axis; 0, or the end of the bar below it, where left out. */
  readonly from?: number;
  /** Written at the point, or inside the bar where it fits. */
  readonly label?: string;
  /** What the point is, told to whoever points at it; its label or its series' name where left out. */
  readonly name?: string;
}

/**
 * `line`: joined points. `points`: each with its marker. `band`: the area from `from` to `y`.
 * `bars`: one for each point, at the place of its name.
 */
export interface Series {
  readonly label: string;
  readonly drawn: 'line' | 'points' | 'band' | 'bars';
  /**
   * How a reader learns its name: beside the end of its line (where there is no room, from the key), from the key, or
   * from the labels of its points.
   */
  readonly named: 'at-end' | 'in-key' | 'by-labels';
  readonly style: SeriesStyle;
  readonly points: readonly ChartPoint[];
}

/** A line to read the data against. */
export type Mark =
  | {
      /** Straight across, where the value along `axis` is `at`. */
      readonly kind: 'level';
      readonly axis: 'x' | 'y';
      readonly at: number;
      readonly label: string;
      readonly tone: 'zero' | 'limit' | 'floor';
    }
  | { readonly kind: 'ratio'; readonly yOverX: number; readonly label: string };

export interface TableColumn {
  /** With the unit, if any: cells carry none. */
  readonly title: string;
  readonly numeric: boolean;
}

export interface TableCell {
  readonly text: string;
  /** In full, for a file; null where there is nothing. */
  readonly value: number | string | null;
  /** The figure's path in the estimate, or another name by which to ask where it comes from. */
  readonly path?: string;
  /** A sentence where the figure was rounded otherwise than by itself, so that parts add up to their total. */
  readonly rounding?: string;
}

/** A cell of a table that can be asked where it comes from. */
export type AskedCell = TableCell & { readonly path: string };

export interface TableRow {
  /** One for each column; the first names the row. */
  readonly cells: readonly TableCell[];
  readonly total?: boolean;
}

export interface ChartTable {
  readonly columns: readonly TableColumn[];
  readonly rows: readonly TableRow[];
}

export interface ChartData {
  readonly title: string;
  /** What the chart says, in a sentence or two; also what a screen reader is told. */
  readonly summary: string;
  /** Said in place of the chart where there is nothing to draw, with what to do about it. */
  readonly empty: string | null;
  /** `plot`: numbers both ways. `rows`: bars from the left, names down the side. `columns`: bars upwards. */
  readonly kind: 'plot' | 'rows' | 'columns';
  /** Bars of one name follow upon each other; otherwise they lie over each other. */
  readonly stacked: boolean;
  /** With `plot`: as high as it is wide, both axes from their `least` to their `most`; no label covers a point. */
  readonly isSquare?: boolean;
  readonly x: Axis;
  readonly y: Axis;
  /** Bottom or left first. */
  readonly series: readonly Series[];
  readonly marks: readonly Mark[];
  /** With `rows`: written at the end of each row's bars. */
  readonly rowEnds?: readonly string[];
  readonly table: ChartTable;
}
