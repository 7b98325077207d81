/** Fills for bars: each colour of the palette has a pattern of its own, so that a grey print tells them apart. */
import type { SeriesColour } from './chart-data.ts';
import { colourIn, type ChartLook } from './chart-look.ts';

const tilePx = 8;

/** What each pattern scratches out of its colour, on a tile of 8 by 8; the first is plain. */
const scratches: Readonly<Record<SeriesColour & number, (ctx: CanvasRenderingContext2D) => void>> = {
  1: () => undefined,
  2: (ctx) => strokes(ctx, [-2, 6, 6, -2], [2, 10, 10, 2]),
  3: (ctx) => dots(ctx, 1.1, [2, 2], [6, 6]),
  4: (ctx) => strokes(ctx, [-2, 2, 6, 10], [2, -2, 10, 6]),
  5: (ctx) => strokes(ctx, [0, 4, 8, 4]),
  6: (ctx) => strokes(ctx, [-2, 6, 6, -2], [2, 10, 10, 2], [-2, 2, 6, 10], [2, -2, 10, 6]),
  7: (ctx) => strokes(ctx, [4, 0, 4, 8]),
  8: (ctx) => dots(ctx, 1.6, [4, 4])
};

function strokes(ctx: CanvasRenderingContext2D, ...lines: [number, number, number, number][]): void {
  ctx.beginPath();
  for (const [x1, y1, x2, y2] of lines) {
    ctx.moveTo(x1, y1);
    ctx.lineTo(x2, y2);
  }
  ctx.stroke();
}

function dots(ctx: CanvasRenderingContext2D, radius: number, ...middles: [number, number][]): void {
  for (const [x, y] of middles) {
    ctx.beginPath();
    ctx.arc(x, y, radius, 0, 2 * Math.PI);
    ctx.fill();
  }
}

/** The fill of a colour of the palette, drawn at the look's resolution. Falls back to the plain colour. */
export function barPattern(colour: SeriesColour, look: ChartLook): CanvasPattern | string {
  const plain = colourIn(look, colour);
  const tile = document.createElement('canvas');
  tile.width = tile.height = Math.round(tilePx * look.pixelRatio);
  const ctx = tile.getContext('2d');
  if (ctx === null || colour === 1 || typeof colour === 'string') return plain;
  const scale = tile.width / tilePx;
  ctx.scale(scale, scale);
  ctx.fillStyle = plain;
  ctx.fillRect(0, 0, tilePx, tilePx);
  ctx.globalAlpha = 0.6;
  ctx.strokeStyle = ctx.fillStyle = look.paper;
  ctx.lineWidth = 1.1;
  scratches[colour](ctx);
  const pattern = ctx.createPattern(tile, 'repeat');
  // The chart's canvas is scaled by its own pixel ratio; the tile has that many pixels already.
  pattern?.setTransform(new DOMMatrix().scale(1 / scale));
  return pattern ?? plain;
}
