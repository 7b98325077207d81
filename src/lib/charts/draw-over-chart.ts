/**
 * What the chart library does not draw: bands, the lines to read against, and names beside what they name
 * instead of in a key.
 */
import type { ChartData, Dash, Mark, Series } from './chart-data.ts';
import { colourIn, type ChartLook } from './chart-look.ts';
import { placeLabel, placesAround, type Box, type Spot } from './place-label.ts';
import { spreadApart } from './spread-apart.ts';

/** The drawn chart, as far as these drawings need it. */
export interface Plot {
  readonly ctx: CanvasRenderingContext2D;
  readonly area: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  /** Pixels of a value along either axis. */
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  /** The value at a pixel along the x axis. */
  readonly valueAtX: (pixel: number) => number;
  /** The bar of a series at a place; null where it has none. */
  readonly bar: (series: number, place: number) => Box | null;
}

export interface Scene {
  readonly data: ChartData;
  readonly look: ChartLook;
  /** Names stand at the ends of lines where there is room beside the plot; elsewhere a key has them. */
  readonly namesAtEnds: boolean;
  /** What a range goes from and to stands beside its bar where there is room; elsewhere under its name. */
  readonly labelsBeside: boolean;
}

export const dashPx: Readonly<Record<Dash, readonly number[]>> = {
  solid: [],
  dashed: [8, 4],
  dotted: [2, 3],
  'dash-dot': [10, 3, 2, 3]
};

const gap = 6;
const lineHeight = (look: ChartLook): number => Math.round(look.fontPx * 1.3);
const colourOf = ({ style }: Series, look: ChartLook): string => colourIn(look, style.colour);

export function fontOf(look: ChartLook, weight = 400): string {
  return `${weight} ${look.fontPx}px ${look.fontFamily}`;
}

/** Under the data. */
export function drawUnder(plot: Plot, { data, look }: Scene): void {
  clipped(plot, () => {
    for (const series of data.series) {
      if (series.drawn === 'band') drawBand(plot, series, look);
    }
    for (const mark of data.marks) drawMark(plot, mark, look);
  });
}

/** Over the data: words. */
export function drawOver(plot: Plot, scene: Scene): void {
  const { data, look, namesAtEnds } = scene;
  plot.ctx.save();
  plot.ctx.font = fontOf(look);
  plot.ctx.textBaseline = 'middle';
  plot.ctx.textAlign = 'left';
  if (data.kind === 'plot') {
    if (namesAtEnds) nameLines(plot, scene);
    labelPoints(plot, scene);
  } else {
    labelBars(plot, scene);
  }
  plot.ctx.restore();
}

function clipped({ ctx, area }: Plot, draw: () => void): void {
  ctx.save();
  ctx.beginPath();
  ctx.rect(area.left, area.top, area.right - area.left, area.bottom - area.top);
  ctx.clip();
  draw();
  ctx.restore();
}

function drawBand({ ctx, x, y }: Plot, series: Series, look: ChartLook): void {
  const { points } = series;
  ctx.beginPath();
  for (const point of points) ctx.lineTo(x(point.x), y(point.y));
  for (const point of points.toReversed()) ctx.lineTo(x(point.x), y(point.from ?? point.y));
  ctx.closePath();
  ctx.globalAlpha = 0.14;
  ctx.fillStyle = colourOf(series, look);
  ctx.fill();
  // An outline, as two bands may overlap and a printer may lose a pale wash.
  ctx.globalAlpha = 0.5;
  ctx.strokeStyle = colourOf(series, look);
  ctx.lineWidth = 1;
  ctx.setLineDash([...dashPx[series.style.dash]]);
  ctx.stroke();
  ctx.setLineDash([]);
  ctx.globalAlpha = 1;
}

function drawMark(plot: Plot, mark: Mark, look: ChartLook): void {
  const { ctx, area, x, y } = plot;
  ctx.beginPath();
  if (mark.kind === 'ratio') {
    ctx.strokeStyle = look.inkFaint;
    ctx.lineWidth = 1;
    ctx.setLineDash(mark.yOverX === 1 ? [] : [3, 3]);
    // Straight on equal scales, linear or logarithmic; beyond the area the clip cuts it.
    for (const at of ratioEnds(plot, mark.yOverX)) ctx.lineTo(at.x, at.y);
  } else {
    ctx.strokeStyle = mark.tone === 'zero' ? look.axis : look.ink;
    ctx.lineWidth = mark.tone === 'zero' ? 1 : 1.25;
    ctx.setLineDash(mark.tone === 'zero' ? [] : mark.tone === 'limit' ? [5, 4] : [0.1, 4]);
    if (mark.tone === 'floor') ctx.lineCap = 'round';
    // Half a pixel off, so that a thin line falls on one row of pixels.
    const at = Math.round(mark.axis === 'x' ? x(mark.at) : y(mark.at)) + 0.5;
    ctx.moveTo(mark.axis === 'x' ? at : area.left, mark.axis === 'x' ? area.top : at);
    ctx.lineTo(mark.axis === 'x' ? at : area.right, mark.axis === 'x' ? area.bottom : at);
    if (mark.tone === 'floor') {
      ctx.save();
      ctx.globalAlpha = 0.06;
      ctx.fillStyle = look.ink;
      ctx.fillRect(area.left, at, area.right - area.left, area.bottom - at);
      ctx.restore();
      ctx.lineWidth = 2;
    }
  }
  ctx.stroke();
  ctx.setLineDash([]);
  ctx.lineCap = 'butt';
}

/** Where the line y = ratio · x meets the left and the right edge of the plot. */
function ratioEnds({ area, y, valueAtX }: Plot, yOverX: number): [Spot, Spot] {
  const end = (pixel: number): Spot => ({ x: pixel, y: y(yOverX * valueAtX(pixel)) });
  return [end(area.left), end(area.right)];
}

/** A text that stays readable over lines and fills: on a halo of paper. */
function write({ ctx }: Plot, text: string, box: Box, look: ChartLook, colour: string): void {
  ctx.lineJoin = 'round';
  ctx.lineWidth = 4;
  ctx.strokeStyle = look.paper;
  ctx.strokeText(text, box.left, box.top + box.height / 2);
  ctx.fillStyle = colour;
  ctx.fillText(text, box.left, box.top + box.height / 2);
}

function nameLines(plot: Plot, { data, look }: Scene): void {
  const lines = data.series.filter(({ named, points }) => named === 'at-end' && points.length > 0);
  const ends = lines.map(({ points }) => points.reduce((last, point) => (point.x >= last.x ? point : last)));
  const middles = spreadApart({
    wanted: ends.map((end) => plot.y(end.y)),
    size: lineHeight(look),
    from: plot.area.top - lineHeight(look) / 2,
    to: plot.area.bottom + lineHeight(look) / 2
  });
  lines.forEach((series, index) => {
    const end = ends[index];
    const middle = middles[index];
    if (end === undefined || middle === undefined) return;
    const { ctx } = plot;
    const left = plot.area.right + 3 * gap;
    // A fine leader, as the name may have been moved off its line, and the line may end before the plot does.
    ctx.strokeStyle = colourOf(series, look);
    ctx.lineWidth = 1;
    ctx.beginPath();
    ctx.moveTo(plot.x(end.x) + 1, plot.y(end.y));
    ctx.lineTo(plot.area.right + gap, plot.y(end.y));
    ctx.lineTo(left - 3, middle);
    ctx.stroke();
    const box = { left, top: middle - lineHeight(look) / 2, width: 0, height: lineHeight(look) };
    write(plot, series.label, box, look, look.ink);
  });
}

/** Spots along all lines and at all points, close enough that no label slips between two of them. */
function inkSpots(plot: Plot, { series, marks }: ChartData): Spot[] {
  const spots: Spot[] = [];
  const trace = (from: Spot, to: Spot): void => {
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 6));
    for (let step = 0; step <= steps; step++) {
      const share = step / steps;
      spots.push({ x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) });
    }
  };
  for (const { drawn, points } of series) {
    const at = points.map((point): Spot => ({ x: plot.x(point.x), y: plot.y(point.y) }));
    if (drawn === 'points') spots.push(...at);
    if (drawn === 'line') at.slice(1).forEach((to, before) => trace(at[before] ?? to, to));
  }
  const { left, right, top, bottom } = plot.area;
  for (const mark of marks) {
    if (mark.kind === 'ratio') trace(...ratioEnds(plot, mark.yOverX));
    else if (mark.axis === 'x') trace({ x: plot.x(mark.at), y: top }, { x: plot.x(mark.at), y: bottom });
    else trace({ x: left, y: plot.y(mark.at) }, { x: right, y: plot.y(mark.at) });
  }
  return spots;
}

/** What the markers of all points cover. */
function markerBoxes(plot: Plot, { series }: ChartData): Box[] {
  const half = gap;
  return series
    .filter(({ drawn }) => drawn === 'points')
    .flatMap(({ points }) =>
      points.map(({ x, y }) => ({
        left: plot.x(x) - half,
        top: plot.y(y) - half,
        width: 2 * half,
        height: 2 * half
      }))
    );
}

function labelPoints(plot: Plot, { data, look }: Scene): void {
  const { area: edges } = plot;
  const area = {
    left: edges.left,
    top: edges.top,
    width: edges.right - edges.left,
    height: edges.bottom - edges.top
  };
  const ink = inkSpots(plot, data);
  // The number of a point must not lie over another point: it could be taken for that one's.
  const taken: Box[] = data.isSquare === true ? markerBoxes(plot, data) : [];
  const place = (candidates: Box[]): Box | null => {
    const box = placeLabel(candidates, { area, taken, ink });
    if (box !== null) taken.push(box);
    return box;
  };
  const sizeOf = (text: string): { width: number; height: number } => ({
    width: Math.ceil(plot.ctx.measureText(text).width),
    height: lineHeight(look)
  });

  // What was marked by name comes first: a line's own label finds room elsewhere along the line.
  for (const { drawn, points } of data.series) {
    if (drawn === 'line' || drawn === 'band') continue;
    for (const point of points) {
      if (point.label === undefined) continue;
      const spot = { x: plot.x(point.x), y: plot.y(point.y) };
      const around = (distance: number): Box[] =>
        placesAround(spot, { ...sizeOf(point.label ?? ''), gap: distance, area });
      const box = place(
        [gap + 3, 4 * gap, ...(data.isSquare === true ? [7 * gap, 10 * gap] : [])].flatMap(around)
      );
      if (box === null) continue;
      drawLeader(plot, spot, box, look);
      write(plot, point.label, box, look, look.ink);
    }
  }
  for (const mark of data.marks) {
    const box = mark.label === '' ? null : place(placesAlong(plot, mark, sizeOf(mark.label), area));
    if (box !== null) write(plot, mark.label, box, look, look.inkSoft);
  }
}

/** A fine line from a spot to a label that had to stand off. */
function drawLeader({ ctx }: Plot, spot: Spot, box: Box, look: ChartLook): void {
  const nearest = {
    x: Math.max(box.left, Math.min(box.left + box.width, spot.x)),
    y: Math.max(box.top, Math.min(box.top + box.height, spot.y))
  };
  const distance = Math.hypot(nearest.x - spot.x, nearest.y - spot.y);
  if (distance < 3 * gap) return;
  const share = gap / distance;
  ctx.strokeStyle = look.inkFaint;
  ctx.lineWidth = 1;
  ctx.beginPath();
  ctx.moveTo(spot.x + share * (nearest.x - spot.x), spot.y + share * (nearest.y - spot.y));
  ctx.lineTo(nearest.x, nearest.y);
  ctx.stroke();
}

/** Places beside a line across the plot, its ends first. */
function placesAlong(
  plot: Plot,
  mark: Mark,
  size: { readonly width: number; readonly height: number },
  within: Box
): Box[] {
  const { area, x, y } = plot;
  const shares = [0, 1, 0.25, 0.5, 0.75];
  if (mark.kind === 'ratio') {
    const [start, end] = ratioEnds(plot, mark.yOverX);
    // Where the line leaves the plot: at its right edge or at its top.
    const leaves =
      end.y >= area.top
        ? end
        : {
            x: start.x + ((end.x - start.x) * (start.y - area.top)) / (start.y - end.y),
            y: area.top
          };
    return [0.02, 0.1, 0.2, 0.35].flatMap((share) => {
      const at = {
        x: leaves.x + (start.x - leaves.x) * share,
        y: leaves.y + (start.y - leaves.y) * share
      };
      return placesAround(at, { ...size, gap: 4, area: within });
    });
  }
  const room = { x: area.right - area.left - size.width - 2 * gap, y: area.bottom - area.top - size.height };
  return shares.flatMap((share) =>
    mark.axis === 'y'
      ? [y(mark.at) - size.height - 2, y(mark.at) + 3].map((top) => ({
          left: area.left + gap + share * room.x,
          top,
          ...size
        }))
      : [x(mark.at) + gap, x(mark.at) - gap - size.width].map((left) => ({
          left,
          top: area.top + share * room.y,
          ...size
        }))
  );
}

/** Values inside the bars that have room for them, or beyond their ends; and what each row comes to. */
function labelBars(plot: Plot, { data, look, labelsBeside }: Scene): void {
  const { ctx, area } = plot;
  const height = lineHeight(look);
  const ends = new Map<number, Box>();

  data.series.forEach(({ points }, index) => {
    for (const point of points) {
      const place = data.kind === 'rows' ? point.y : point.x;
      const bar = plot.bar(index, place);
      if (bar === null) continue;
      const furthest = ends.get(place);
      if (furthest === undefined || bar.left + bar.width > furthest.left + furthest.width)
        ends.set(place, bar);
      if (point.label === undefined) continue;
      const width = ctx.measureText(point.label).width;
      const top = bar.top + (bar.height - height) / 2;
      if (data.stacked) {
        if (bar.width < width + 4 * gap || bar.height < height) continue;
        const box = { left: bar.left + (bar.width - width) / 2, top, width, height };
        writeOnPlate(plot, point.label, box, look);
      } else if (labelsBeside && bar.width >= 1) {
        const left = point.x < (point.from ?? 0) ? bar.left - gap - width : bar.left + bar.width + gap;
        write(plot, point.label, { left, top, width, height }, look, look.inkSoft);
      }
    }
  });

  ctx.font = fontOf(look, 600);
  data.rowEnds?.forEach((text, row) => {
    const end = ends.get(row);
    if (end === undefined) return;
    const box = { left: end.left + end.width + gap + 2, top: end.top, width: 0, height: end.height };
    write(plot, text, box, look, look.ink);
  });
  ctx.font = fontOf(look);

  for (const mark of data.marks) {
    if (mark.kind !== 'level' || mark.label === '' || mark.axis !== 'x') continue;
    const width = ctx.measureText(mark.label).width;
    const left = Math.max(area.left, Math.min(area.right - width, plot.x(mark.at) - width / 2));
    write(plot, mark.label, { left, top: area.top - height, width, height }, look, look.inkSoft);
  }
}

/** On a plate of paper: no text can be read over a pattern. */
function writeOnPlate({ ctx }: Plot, text: string, box: Box, look: ChartLook): void {
  ctx.fillStyle = look.paper;
  ctx.beginPath();
  ctx.roundRect(box.left - 4, box.top, box.width + 8, box.height, 2);
  ctx.fill();
  ctx.fillStyle = look.ink;
  ctx.fillText(text, box.left, box.top + box.height / 2 + 0.5);
}
