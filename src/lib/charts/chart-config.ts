/**
 * Chart data as settings for the chart library, in the app's own look: hairline grid, no animation, no frame. Plain
 * objects; the one component that knows the library checks them against its types.
 */
import { labelsFitBeside, letterPx, namesOnAxis, narrowPx } from './axis-names.ts';
import { barPattern } from './bar-pattern.ts';
import type { Axis, ChartData, Marker, Series } from './chart-data.ts';
import { colourIn, type ChartLook } from './chart-look.ts';
import { evenTicks } from './even-ticks.ts';
import { dashPx, drawOver, drawUnder, fontOf, type Plot, type Scene } from './draw-over-chart.ts';
import { figureText, tickText } from './figure-text.ts';
import type { Box } from './place-label.ts';

/** Height that suits the chart: bars get room for each row, a plot its proportion, and either its key. */
export function chartHeightPx(data: ChartData, widthPx: number): number {
  const keyPx = 24 * keyLines(data, widthPx);
  if (data.isSquare === true) return squarePx(widthPx) + keyPx + squareFrame.height;
  if (data.kind !== 'rows') return Math.round(Math.min(380, Math.max(290, widthPx * 0.5))) + keyPx;
  const names = namesOnAxis(data, widthPx);
  const lines = Math.max(1, ...names.map(({ length }) => length));
  return Math.max(1, names.length) * Math.max(data.stacked ? 48 : 34, lines * 17 + 10) + 96 + keyPx;
}

const paddingPx = { top: 4, bottom: 2 } as const;
/** What stands about a square plot, px: the y axis at its left, title and x axis above and below it. */
const squareFrame = { left: 52, axisHeight: 46, height: 80 } as const;
const squarePx = (widthPx: number): number => Math.max(160, Math.min(420, widthPx - squareFrame.left - 16));

interface FittedScale {
  width: number;
  height: number;
  readonly chart: {
    readonly height: number;
    readonly legend?: { readonly height: number };
    readonly titleBlock?: { readonly height: number };
  };
}

/** What key and title leave of a chart's height, its padding taken off. */
const roomBelow = ({ chart: { height, legend, titleBlock } }: FittedScale): number =>
  height - paddingPx.top - paddingPx.bottom - (legend?.height ?? 0) - (titleBlock?.height ?? 0);

/** Whether the names of lines leave the plot most of the width. */
function namesFitBeside({ series }: ChartData, widthPx: number): boolean {
  const letters = series.map(({ named, label }) => (named === 'at-end' ? label.length : 0));
  return widthPx >= narrowPx && Math.max(0, ...letters) * letterPx <= 0.36 * widthPx;
}

/** Lines that the key takes. */
function keyLines(data: ChartData, widthPx: number): number {
  let [lines, used] = [0, Infinity];
  for (const { label } of keyed(data, widthPx)) {
    const needs = 50 + letterPx * label.length;
    if (used + needs > widthPx) [lines, used] = [lines + 1, 0];
    used += needs;
  }
  return lines;
}

/** The series that the key names. Bands share one name; it stands there once. */
function keyed(data: ChartData, widthPx: number): Series[] {
  return data.series.filter(
    ({ named, label }, index) =>
      (named === 'in-key' || (named === 'at-end' && !namesFitBeside(data, widthPx))) &&
      index === data.series.findIndex((series) => series.label === label)
  );
}

const markers: Readonly<Record<Marker, 'circle' | 'rect' | 'triangle' | 'rectRot' | 'crossRot' | 'star'>> = {
  circle: 'circle',
  square: 'rect',
  triangle: 'triangle',
  diamond: 'rectRot',
  cross: 'crossRot',
  star: 'star'
};

/** What is to be drawn, and which of its words go beside the data: those that have room there. */
export function chartScene(data: ChartData, look: ChartLook, widthPx: number): Scene {
  return {
    data,
    look,
    namesAtEnds: data.kind === 'plot' && namesFitBeside(data, widthPx),
    labelsBeside: labelsFitBeside(data, widthPx)
  };
}

export function chartConfig(
  scene: Scene,
  { widthPx, responsive }: { readonly widthPx: number; readonly responsive: boolean }
) {
  const { data, look } = scene;
  const font = { family: look.fontFamily, size: look.fontPx };
  const inKey = keyed(data, widthPx);

  return {
    type: data.kind === 'plot' ? ('line' as const) : ('bar' as const),
    data: {
      labels: namesOnAxis(data, widthPx),
      datasets: data.series.map((series) => dataset(series, data, look))
    },
    options: {
      responsive,
      maintainAspectRatio: false,
      animation: false as const,
      devicePixelRatio: look.pixelRatio,
      indexAxis: data.kind === 'rows' ? ('y' as const) : ('x' as const),
      normalized: false,
      font,
      color: look.ink,
      layout: {
        padding: {
          top: paddingPx.top,
          right:
            data.isSquare === true ? widthPx - squarePx(widthPx) - squareFrame.left - 2 : roomAtRight(scene),
          bottom: paddingPx.bottom,
          left: 2
        }
      },
      interaction:
        data.kind === 'plot'
          ? {
              mode: 'nearest' as const,
              axis: data.series.some(({ drawn }) => drawn === 'line') ? ('x' as const) : ('xy' as const),
              intersect: false
            }
          : {
              mode: 'index' as const,
              axis: data.kind === 'rows' ? ('y' as const) : ('x' as const),
              intersect: false
            },
      scales: { x: axis(data.x, scene, 'x', widthPx), y: axis(data.y, scene, 'y', widthPx) },
      plugins: {
        title: {
          // The y axis' title: upright, above the plot, where it is read first. Over rows it keeps room for a mark's label.
          display: data.kind !== 'rows' || data.marks.some(({ label }) => label !== ''),
          text: data.kind === 'rows' ? '' : data.y.title,
          align: 'start' as const,
          color: look.inkSoft,
          font: { ...font, weight: 400 as const },
          padding: { top: 0, bottom: 8 },
          // Nearer to the plot than the key is.
          weight: 500
        },
        legend: {
          display: inKey.length > 0,
          position: 'top' as const,
          align: 'start' as const,
          // Nothing hides by a click: what is left out of the sum would still be in the labels.
          onClick: () => undefined,
          labels: {
            usePointStyle: true,
            // A marker keeps its shape; a line and a pattern need length.
            pointStyleWidth: inKey.some(({ drawn }) => drawn === 'points') ? 11 : 24,
            boxHeight: inKey.some(({ drawn }) => drawn === 'points') ? 8 : 11,
            padding: 12,
            color: look.ink,
            font,
            generateLabels: () =>
              data.series.flatMap((series, datasetIndex) =>
                inKey.includes(series) ? [keyItem(series, datasetIndex, look)] : []
              )
          }
        },
        tooltip: {
          backgroundColor: look.raised,
          borderColor: look.axis,
          borderWidth: 1,
          cornerRadius: 3,
          padding: 10,
          caretSize: 0,
          boxPadding: 6,
          titleColor: look.ink,
          bodyColor: look.ink,
          titleFont: { ...font, weight: 600 as const },
          bodyFont: font,
          displayColors: true,
          usePointStyle: true,
          filter: ({ datasetIndex }: { datasetIndex: number }) => data.series[datasetIndex]?.drawn !== 'band',
          callbacks: {
            title: (items: readonly TooltipItem[]) => tooltipTitle(data, items[0]),
            label: (item: TooltipItem) => tooltipLine(data, item)
          }
        }
      }
    }
  };
}

/** The drawings around the data, as a plug-in of one chart; `scene` gives what holds at the time of drawing. */
export function aroundTheData(scene: () => Scene) {
  return {
    id: 'around-the-data',
    beforeDatasetsDraw: (chart: DrawnChart) => drawUnder(plotOf(chart, scene().data), scene()),
    afterDatasetsDraw: (chart: DrawnChart) => drawOver(plotOf(chart, scene().data), scene())
  };
}

/** A value at its place, a bar from one value to another, a point, or nothing there. */
export type Datum = number | [number, number] | { x: number; y: number } | null;

interface TooltipItem {
  readonly datasetIndex: number;
  readonly dataIndex: number;
  readonly parsed: { readonly x: number | null; readonly y: number | null };
}

/** The parts of a drawn chart that the drawings around the data read. */
interface DrawnChart {
  readonly ctx: CanvasRenderingContext2D;
  readonly chartArea: Plot['area'];
  readonly scales: Readonly<
    Record<
      string,
      { getPixelForValue(value: number): number; getValueForPixel(pixel: number): number | undefined }
    >
  >;
  getDatasetMeta(index: number): { readonly data: readonly object[] };
}

function plotOf(chart: DrawnChart, data: ChartData): Plot {
  const { x, y } = chart.scales;
  return {
    ctx: chart.ctx,
    area: chart.chartArea,
    x: (value) => x?.getPixelForValue(value) ?? NaN,
    y: (value) => y?.getPixelForValue(value) ?? NaN,
    valueAtX: (pixel) => x?.getValueForPixel(pixel) ?? NaN,
    bar: (series, place) => {
      const element = chart.getDatasetMeta(series).data[place] as
        { x: number; y: number; base: number; width: number; height: number } | undefined;
      if (element === undefined || Number.isNaN(element.x) || Number.isNaN(element.y)) return null;
      return barBox(element, data);
    }
  };
}

function barBox(
  { x, y, base, width, height }: { x: number; y: number; base: number; width: number; height: number },
  { kind }: ChartData
): Box {
  return kind === 'rows'
    ? { left: Math.min(x, base), top: y - height / 2, width: Math.abs(x - base), height }
    : { left: x - width / 2, top: Math.min(y, base), width, height: Math.abs(y - base) };
}

/** The edge of a point: of a hollow one it is all that is seen; an agent's colour may be as pale as the paper. */
const edgeOf = ({ style }: Series, look: ChartLook): string =>
  style.isHollow === true
    ? colourIn(look, style.colour)
    : typeof style.colour === 'string'
      ? look.ink
      : look.paper;
const lineWidthPx = ({ style }: Series): number => style.widthPx ?? 2.25;

function dataset(series: Series, data: ChartData, look: ChartLook) {
  const colour = colourIn(look, series.style.colour);
  if (data.kind !== 'plot') {
    const places = (data.kind === 'rows' ? data.y.names : data.x.names)?.length ?? 0;
    const bars = new Array<Datum>(places).fill(null);
    for (const { x, y, from } of series.points) {
      const [place, value] = data.kind === 'rows' ? [y, x] : [x, y];
      bars[place] = from === undefined ? value : [from, value];
    }
    return {
      label: series.label,
      data: bars,
      backgroundColor: barPattern(series.style.colour, look),
      // Parts of a bar are parted by paper, not by an outline.
      borderColor: data.stacked ? look.paper : colour,
      borderWidth: 1,
      borderSkipped: false as const,
      grouped: false,
      maxBarThickness: data.kind === 'rows' ? 28 : 40,
      categoryPercentage: 0.8,
      barPercentage: 0.9
    };
  }
  const line = series.drawn === 'line';
  const points = series.drawn === 'points';
  const values: Datum[] = line || points ? series.points.map(({ x, y }) => ({ x, y })) : extent(series);
  return {
    label: series.label,
    data: values,
    showLine: line,
    borderColor: colour,
    backgroundColor: points && series.style.isHollow !== true ? colour : look.paper,
    borderWidth: line ? lineWidthPx(series) : points ? (series.style.isHollow === true ? 2.5 : 1.5) : 0,
    borderDash: [...dashPx[series.style.dash]],
    borderJoinStyle: 'round' as const,
    pointStyle: line ? ('circle' as const) : markers[series.style.marker],
    pointBorderColor: points ? edgeOf(series, look) : colour,
    // A cross and a star are strokes only: paper would erase them.
    ...(points && ['cross', 'star'].includes(series.style.marker) ? { pointBorderColor: colour } : {}),
    pointRadius: points ? (series.style.isLarge === true ? 7.5 : 5.5) : 0,
    pointHoverRadius: points ? 7 : line ? 4 : 0,
    pointHitRadius: points || line ? 8 : 0,
    order: points ? 0 : 1
  };
}

/** Invisible points that make the axes reach round what is drawn beside the library. */
function extent({ points }: Series): Datum[] {
  return [...points.map(({ x, y }) => ({ x, y })), ...points.map(({ x, y, from }) => ({ x, y: from ?? y }))];
}

function keyItem(series: Series, datasetIndex: number, look: ChartLook) {
  const colour = colourIn(look, series.style.colour);
  const item = { text: series.label, fontColor: look.ink, datasetIndex, hidden: false };
  if (series.drawn === 'line') {
    const lineDash = [...dashPx[series.style.dash]];
    return {
      ...item,
      pointStyle: 'line' as const,
      strokeStyle: colour,
      lineWidth: lineWidthPx(series),
      lineDash
    };
  }
  if (series.drawn === 'points') {
    return {
      ...item,
      pointStyle: markers[series.style.marker],
      fillStyle: colour,
      strokeStyle: typeof series.style.colour === 'string' ? look.ink : colour,
      lineWidth: 1.5
    };
  }
  const fillStyle = series.drawn === 'band' ? look.grid : barPattern(series.style.colour, look);
  return { ...item, pointStyle: 'rect' as const, fillStyle, strokeStyle: colour, lineWidth: 1 };
}

/** Room beside the plot for the names of lines and for what each row comes to. */
function roomAtRight({ data, look, namesAtEnds: ends }: Scene): number {
  const texts = ends
    ? data.series.filter(({ named }) => named === 'at-end').map(({ label }) => label)
    : data.kind === 'rows'
      ? (data.rowEnds ?? [])
      : [];
  return texts.length === 0 ? 12 : widestPx(texts, look) + (ends ? 26 : 14);
}

function axis(given: Axis, scene: Scene, which: 'x' | 'y', widthPx: number) {
  const { data, look } = scene;
  const names = given.scale === 'names';
  const font = { family: look.fontFamily, size: look.fontPx };
  const shared = {
    stacked: data.stacked,
    grid: {
      // One direction of lines is enough to read values by.
      display: !names && (which === 'y' || data.kind === 'rows'),
      // The line at 0 stands out; the border of the axis asks without a tick.
      color: ({ tick }: { tick?: { value: number } }) => (tick?.value === 0 ? look.axis : look.grid),
      drawTicks: false
    },
    border: { display: which === 'x' && data.kind === 'plot', color: look.axis },
    title: {
      display: which === 'x',
      text: given.title,
      align: 'center' as const,
      color: look.inkSoft,
      font: { ...font, weight: 400 as const },
      padding: { top: 0 }
    }
  };
  const ticks = { color: look.inkSoft, font, padding: 6, maxRotation: 0 };
  if (names) {
    // An axis up the side counts from the top, as a table does.
    return {
      ...shared,
      type: 'category' as const,
      ticks: { ...ticks, autoSkip: which === 'x', color: look.ink }
    };
  }
  const isSquare = data.isSquare === true;
  const range = {
    ...(given.least === undefined ? {} : { [isSquare ? 'min' : 'suggestedMin']: given.least }),
    ...(given.most === undefined ? {} : { [isSquare ? 'max' : 'suggestedMax']: given.most }),
    // One frame whatever the figures along the axes, so that the plot is a square.
    ...(isSquare
      ? {
          afterFit: (scale: FittedScale) => {
            if (which === 'y') scale.width = squareFrame.left;
            // The key may take fewer lines than were kept for it: what is over goes below.
            else scale.height = Math.max(squareFrame.axisHeight, roomBelow(scale) - squarePx(widthPx));
          }
        }
      : {})
  };
  if (given.scale === 'log') {
    return {
      ...shared,
      ...range,
      type: 'logarithmic' as const,
      ticks: {
        ...ticks,
        // 1, 2 and 5 of each decade: more would run into each other.
        callback: (value: number | string) =>
          /^[125]e/.test(Number(value).toExponential()) ? tickText(Number(value)) : null
      }
    };
  }
  const swings = data.kind === 'rows' && !data.stacked;
  const wholeWidth = isSquare || (which === 'x' && data.series.some(({ drawn }) => drawn !== 'points'));
  const most = isSquare ? 6 : which === 'y' ? 9 : Math.max(5, Math.round(widthPx / 100));
  return {
    ...shared,
    ...range,
    ...(swings ? { beginAtZero: false, ...roomForLabels(scene, widthPx) } : {}),
    // The width is used whole: bars say beyond the plot what they come to, and lines end where the data do.
    ...(wholeWidth
      ? {
          bounds: 'data' as const,
          afterBuildTicks: (scale: { min: number; max: number; ticks: { value: number }[] }) => {
            scale.ticks = evenTicks({ low: scale.min, high: scale.max, most }).map((value) => ({ value }));
          }
        }
      : {}),
    type: 'linear' as const,
    ticks: {
      ...ticks,
      maxTicksLimit: most,
      callback: (value: number | string) => tickText(Number(value))
    }
  };
}

/**
 * Limits that leave room for each label beyond the end of its range: ranges lie about their base and not about 0. Labels
 * need pixels and limits set what a pixel is, so the limits are approached; they settle within a few rounds.
 */
function roomForLabels({ data, look, labelsBeside }: Scene, widthPx: number): { min: number; max: number } {
  const points = data.series.flatMap((each) => each.points);
  const plotPx = Math.max(100, widthPx - widestPx(namesOnAxis(data, widthPx).flat(), look) - 30);
  const labels = points.map(({ x, from, label }) => ({
    x,
    px: widestPx([(labelsBeside && label) || ''], look) + 12,
    leftwards: x < (from ?? 0)
  }));
  const ends = points.flatMap(({ x, from }) => [x, from ?? x]);
  let [min, max] = [Math.min(...ends), Math.max(...ends)];
  const [low, high] = [min, max];
  for (let round = 0; round < 12; round++) {
    const ofPixel = (max - min) / plotPx;
    min = Math.min(low, ...labels.flatMap(({ x, px, leftwards }) => (leftwards ? [x - px * ofPixel] : [])));
    max = Math.max(high, ...labels.flatMap(({ x, px, leftwards }) => (leftwards ? [] : [x + px * ofPixel])));
  }
  return { min, max };
}

function widestPx(texts: readonly string[], look: ChartLook): number {
  const ctx = document.createElement('canvas').getContext('2d');
  if (ctx === null) return 0;
  ctx.font = fontOf(look, 600);
  return Math.ceil(Math.max(0, ...texts.map((text) => ctx.measureText(text).width)));
}

function tooltipTitle(data: ChartData, item: TooltipItem | undefined): string {
  if (item === undefined) return '';
  if (data.kind !== 'plot')
    return (data.kind === 'rows' ? data.y.names : data.x.names)?.[item.dataIndex] ?? '';
  return `${data.x.title.split(',')[0] ?? ''}: ${figureText(item.parsed.x ?? 0, data.x.figures)}`;
}

function tooltipLine(data: ChartData, item: TooltipItem): string {
  const series = data.series[item.datasetIndex];
  if (data.kind === 'plot') {
    const point = series?.points[item.dataIndex];
    const name = point?.name ?? point?.label ?? series?.label ?? '';
    return `${name}: ${figureText(item.parsed.y ?? 0, data.y.figures)}`;
  }
  // The library knows a bar from one value to another by the larger of the two.
  const [place, value, figures] =
    data.kind === 'rows' ? (['y', 'x', data.x.figures] as const) : (['x', 'y', data.y.figures] as const);
  const point = series?.points.find((each) => each[place] === item.dataIndex);
  return point?.name ?? `${series?.label ?? ''}: ${figureText(point?.[value] ?? 0, figures)}`;
}
