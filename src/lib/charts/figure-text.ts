/** Numbers in charts: as everywhere in the app, with the axis' unit. */
import { formatMoney, formatNumber } from '#lib/numbers/format-number.ts';
import { yearsInWords } from '#lib/numbers/years-in-words.ts';
import type { Figures } from './chart-data.ts';

/** A figure in a sentence, a label or a tooltip: with its unit. */
export function figureText(value: number, figures: Figures): string {
  if (figures.kind === 'money') return formatMoney(value, { currency: figures.currency });
  if (figures.kind === 'number' && figures.unit === 'years') return yearsInWords(value);
  const unit = figures.kind === 'percent' ? '%' : figures.unit;
  return formatNumber(value, unit === undefined ? {} : { unit });
}

/** A figure along an axis, whose title has the unit. Three figures would write the ticks 1,250 and 1,255 alike. */
export function tickText(value: number): string {
  return formatNumber(value, { figures: 6 });
}

/** `a`, `a and b`, `a, b and c`. */
export function listInWords(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
}
