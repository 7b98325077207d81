/** Figures in the working panel: in full, with their unit as a reader writes it. */
import { formatFull } from '#lib/numbers/format-number.ts';

/** A unit as the core names it, as it is read: `m^3` → `m³`, `currency/kWh` → `EUR/kWh`. */
export function unitInWords(unit: string, currency: string): string {
  if (unit === '1') return '';
  return unit
    .replaceAll('currency', currency)
    .replaceAll('CO2e', 'CO₂e')
    .replace(/\bm\^?3\b/g, 'm³')
    .replaceAll('kg^0.75', 'kg⁰·⁷⁵');
}

/** A value of any kind, in full: numbers and decimals with separators, lists by their length, nothing as “none”. */
export function figureInFull(
  value: unknown,
  { unit, currency, locale }: { unit: string; currency: string; locale: string }
): string {
  const words = unitInWords(unit, currency);
  if (value === null || value === undefined) return 'none';
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
