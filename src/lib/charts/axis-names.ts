/** The names along an axis, broken into lines, and whether ranges say beside their bars what they stand for. */
import type { ChartData } from './chart-data.ts';
import { wrapWords } from './wrap-words.ts';

/** Below this width names go into a key above the plot, and the labels of an axis are broken sooner. */
export const narrowPx = 560;

/** The usual width of a letter: near enough to lay out by. */
export const letterPx = 6.5;

const nameLength = (widthPx: number): number => (widthPx < narrowPx ? 14 : 24);

/** Bars of ranges lie about a base: their labels stand to both sides of it, and take their room from the bars. */
const isOfRanges = ({ kind, stacked }: ChartData): boolean => kind === 'rows' && !stacked;

const most = (lengths: readonly number[]): number => Math.max(0, ...lengths);

/** Whether the labels of ranges leave the bars about half of the plot; else they go under the names. */
export function labelsFitBeside(data: ChartData, widthPx: number): boolean {
  if (!isOfRanges(data)) return true;
  const names = (data.y.names ?? []).flatMap((name) => wrapWords(name, nameLength(widthPx)));
  const plotPx = widthPx - letterPx * most(names.map(({ length }) => length)) - 30;
  const points = data.series.flatMap((series) => series.points);
  const widestPx = (leftwards: boolean): number =>
    12 +
    letterPx *
      most(points.map(({ x, from, label = '' }) => (x < (from ?? 0) === leftwards ? label.length : 0)));
  return widestPx(true) + widestPx(false) <= 0.5 * plotPx;
}

/** The names along the axis that has names, line by line; under each what its range goes from and to, where that has no room beside it. */
export function namesOnAxis(data: ChartData, widthPx: number): string[][] {
  const length = nameLength(widthPx);
  const names = (data.kind === 'rows' ? data.y.names : data.x.names) ?? [];
  const told = !labelsFitBeside(data, widthPx);
  return names.map((name, place) => {
    const ends = data.series.flatMap(({ points }) => points.find(({ y }) => y === place)?.label ?? []);
    const lines = wrapWords(name, length);
    return told && ends.length > 0 ? [...lines, ...wrapWords(ends.join(' to '), length)] : lines;
  });
}
