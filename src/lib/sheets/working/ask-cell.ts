import type { AskedCell } from '#lib/charts/chart-data.ts';
import type { Asked } from '#lib/state/desk.svelte.ts';
import { desk } from '#lib/state/app.ts';

/** Asks where a figure of a chart's table comes from. */
export function askCell(
  { path, text, rounding }: AskedCell,
  more: Pick<Asked, 'whose' | 'working'> = {}
): void {
  desk.ask(path, { shown: text, ...(rounding === undefined ? {} : { rounding }), ...more });
}
