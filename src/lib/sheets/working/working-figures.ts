/** Figures in the working panel: in full, with their unit as a reader writes it. */
import type { Working } from '#lib/calc/working/working.ts';
import { formatFull, formatNumber } from '#lib/numbers/format-number.ts';

/** A unit as the core names it, as it is read: `m^3` → `m³`, `currency/kWh` → `EUR/kWh`. */
export function unitInWords(unit: string, currency: string): string {
  if (unit === '1') return '';
  return unit
    .replaceAll('currency', currency)
    .replaceAll('CO2e', 'CO₂e')
    .replace(/\bm\^?2\b/g, 'm²')
    .replace(/\bm\^?3\b/g, 'm³')
    .replaceAll('kg^0.75', 'kg⁰·⁷⁵')
    .replace(/^years?$|^y$/, 'years');
}

/** A value of any kind, in full: numbers and decimals with separators, lists by their length, nothing as “none”. */
export function figureInFull(
  value: unknown,
  { unit, currency, locale }: { unit: string; currency: string; locale: string }
): string {
  const words = unitInWords(unit, currency);
  if (value === null || value === undefined) return 'none';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (Array.isArray(value)) return `${value.length} values`;
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) return String(value);
    return formatFull(value, { locale, ...(words === '' ? {} : { unit: words }) });
  }
  // Money comes as a decimal of up to 28 figures: ten decimals are more than any reader checks by hand.
  const text = String(value);
  const [whole = '', decimals = ''] = text.split('.');
  const shown = decimals === '' || /e/i.test(text) ? text : `${whole}.${decimals.slice(0, 10)}`;
  return /^-?\d+(\.\d+)?$/.test(shown)
    ? formatFull(shown, { locale, ...(words === '' ? {} : { unit: words }) })
    : shown;
}

/** Figures of a number in a working, in its formula and in the list below it alike: what is put in gives what comes out. */
const figures = 6;

/** A value in a list: numbers to a few figures, everything else in full. */
export function figureInList(
  value: unknown,
  { unit, currency, locale }: { unit: string; currency: string; locale: string }
): string {
  const number = value === null || value === undefined || Array.isArray(value) ? NaN : Number(String(value));
  if (!Number.isFinite(number) || Number.isInteger(number))
    return figureInFull(value, { unit, currency, locale });
  return formatNumber(number, { locale, unit: unitInWords(unit, currency), figures });
}

/** A value as it stands inside a formula: to a few figures, its unit apart, a negative one in brackets. */
export function figureInBrief(
  value: unknown,
  unit: string,
  { currency, locale }: { currency: string; locale: string }
): { readonly text: string; readonly unit: string } {
  const number = value === null || value === undefined ? NaN : Number(String(value));
  if (!Number.isFinite(number))
    return { text: figureInFull(value, { unit: '1', currency, locale }), unit: '' };
  // Whole numbers and amounts of a few digits stand as they are.
  const text =
    Number.isInteger(number) && Math.abs(number) < 1e6
      ? formatFull(number, { locale })
      : formatNumber(number, { locale, figures });
  return { text: number < 0 ? `(${text})` : text, unit: unitInWords(unit, currency) };
}

/** What kind of thing a number is, in a word or two. */
export const kindWords: Readonly<Record<Working['kind'], string>> = {
  step: 'computed',
  method: 'solved step by step',
  cell: 'cell, typed by somebody',
  constant: 'published',
  default: 'published default of an empty cell',
  assumption: 'assumption'
};
