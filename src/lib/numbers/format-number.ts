/**
 * Numbers on screen: three significant figures, the locale's separators, a true minus, the unit always; the full value on
 * request.
 */
import { defaultLocale } from './locale-marks.ts';

/** Stands wherever a value is not given. */
export const notGiven = '–';

const noBreakSpace = '\u00a0';
const formatters = new Map<string, Intl.NumberFormat>();

/** Building a formatter costs more than using it a hundred times; a grid asks for thousands. */
function formatter(locale: string, options: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = locale + JSON.stringify(options);
  let found = formatters.get(key);
  if (found === undefined) {
    found = new Intl.NumberFormat(locale, options);
    formatters.set(key, found);
  }
  return found;
}

export interface NumberLook {
  /** Stands after the number, with a space that does not break. */
  readonly unit?: string;
  /** A language tag; the browser's own, or `en-GB` outside a browser, where left out. */
  readonly locale?: string;
}

/** A hyphen is no minus sign. Some locales have one of their own; it stays. */
const trueMinus = (text: string): string => text.replaceAll('-', '\u2212');

function withUnit(text: string, unit: string | undefined): string {
  return unit === undefined || unit === '' ? text : text + noBreakSpace + unit;
}

/**
 * `value` to three significant figures (or as many as asked for), trailing zeros left out: 1234.5 is `1,230`, 0.50149
 * is `0.501`. null is `–`.
 */
export function formatNumber(
  value: number | null,
  { unit, locale = defaultLocale(), figures = 3 }: NumberLook & { readonly figures?: number } = {}
): string {
  if (value === null) return notGiven;
  const format = formatter(locale, { maximumSignificantDigits: figures, signDisplay: 'negative' });
  return withUnit(trueMinus(format.format(value)), unit);
}

/** `value` with as many decimals as asked for, trailing zeros kept: for what stands in one row or column. */
export function formatDecimals(
  value: number,
  { unit, locale = defaultLocale(), decimals }: NumberLook & { readonly decimals: number }
): string {
  const format = formatter(locale, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
    signDisplay: 'negative'
  });
  return withUnit(trueMinus(format.format(value)), unit);
}

/** `value` with all its digits, grouped: for the eye, on request. null is `–`. Reads back to the same number. */
export function formatFull(
  value: number | string | null,
  { unit, locale = defaultLocale() }: NumberLook = {}
): string {
  return value === null ? notGiven : withUnit(trueMinus(exactly(value, locale, true)), unit);
}

/**
 * `value` with all its digits, ungrouped and without unit: for a cell under edit and for the clipboard. null is empty.
 * Reads back to the same number in the same locale.
 */
export function formatForEditing(
  value: number | string | null,
  { locale = defaultLocale() }: { readonly locale?: string } = {}
): string {
  return value === null ? '' : exactly(value, locale, false);
}

function exactly(value: number | string, locale: string, useGrouping: boolean): string {
  const text = String(value);
  // Decimal text keeps the decimals that it came with (`118.00`), 20 at most; a number's shortest text has up to 17 figures.
  const decimals = Math.min(20, /\.(\d+)$/.exec(text)?.[1]?.length ?? 0);
  const digits =
    typeof value === 'string'
      ? { minimumFractionDigits: decimals, maximumFractionDigits: decimals }
      : { maximumSignificantDigits: 21 };
  const format = formatter(locale, { useGrouping, signDisplay: 'negative', ...digits });
  // The formatter takes decimal text and keeps all its digits, where a number would lose some.
  return format.format(text as Intl.StringNumericLiteral);
}

export interface MoneyLook {
  readonly currency: string;
  readonly locale?: string;
}

/**
 * An amount in `currency` (ISO 4217): in whole units from a thousand up and for nothing, to the cent between, or to the
 * cent throughout with `cents`, or in whole units throughout with `whole`. `amount` is plain decimal text (kept exact) or
 * a number. null is `–`.
 */
export function formatMoney(
  amount: string | number | null,
  {
    currency,
    locale = defaultLocale(),
    cents = false,
    whole = false
  }: MoneyLook & { readonly cents?: boolean; readonly whole?: boolean }
): string {
  if (amount === null) return notGiven;
  // 999.995 shows as 1,000 once rounded, so it counts as a thousand.
  const size = Math.abs(Number(amount));
  const inWholeUnits = whole || (!cents && (size >= 999.995 || size === 0));
  const format = formatter(locale, {
    style: 'currency',
    currency,
    signDisplay: 'negative',
    ...(inWholeUnits ? { minimumFractionDigits: 0, maximumFractionDigits: 0 } : {})
  });
  return trueMinus(format.format(String(amount) as Intl.StringNumericLiteral));
}

export type MassUnit = 't' | 'kg' | 'g';

/** The unit in which the largest of these masses reads best: t from 1 000 kg, kg from 1 kg, g below; kg for nothing. */
export function chooseMassUnit(massesKg: readonly number[]): MassUnit {
  const largestKg = Number(Math.max(0, ...massesKg.map(Math.abs)).toPrecision(3));
  if (largestKg >= 1000) return 't';
  return largestKg >= 1 || largestKg === 0 ? 'kg' : 'g';
}

/** A mass in the unit asked for, or in the one that reads best, to three significant figures. null is `–`. */
export function formatMass(
  massKg: number | null,
  {
    in: unit,
    of,
    locale = defaultLocale()
  }: { readonly in?: MassUnit; readonly of?: string; readonly locale?: string } = {}
): string {
  if (massKg === null) return notGiven;
  const chosen = unit ?? chooseMassUnit([massKg]);
  const amount = chosen === 't' ? massKg / 1000 : chosen === 'g' ? massKg * 1000 : massKg;
  return formatNumber(amount, { unit: of === undefined ? chosen : `${chosen}${noBreakSpace}${of}`, locale });
}
