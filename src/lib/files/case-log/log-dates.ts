/** Dates of a log, as whole days since 1 January 1970. */
import { monthNamed } from './month-names.ts';

export type DateOrder = 'year-month-day' | 'day-month-year' | 'month-day-year';

const dayMs = 86_400_000;

/** A date with its month as a name, e.g. `01-MAR-25`, `1. März 2025`, `Mar 1, 2025`, `2025 Mar 1`. */
const withName =
  /^\s*(?:(\d{1,4})[-\s./]*(?:de\s+)?(\p{L}{3,}\.?)[-\s./]*(?:de\s+)?(\d{1,4})|(\p{L}{3,}\.?)\s*(\d{1,2}),?\s+(\d{4}))(?!\d)/u;

/** A day of a spreadsheet’s calendar, in which 1 January 1970 is day 25569, with the time as a fraction; 2000 to 2099. */
const spreadsheetDay = /^\s*(3[6-9]\d{3}|[4-6]\d{4}|7[0-2]\d{3})(?:[.,](\d+))?\s*$/;
const spreadsheetDayOf1970 = 25_569;

/** The day of a spreadsheet’s serial date, and the minutes since midnight; null for other texts. */
export function serialDate(text: string): { readonly day: number; readonly minute: number } | null {
  const found = spreadsheetDay.exec(text);
  if (found === null) return null;
  const seconds = Math.round(Number(`0.${found[2] ?? '0'}`) * 86_400);
  return { day: Number(found[1]) - spreadsheetDayOf1970, minute: seconds / 60 };
}

/** The day of a date text, its time of day left out; null where it is no date of the calendar. */
export function dayOf(text: string, order: DateOrder): number | null {
  const named = withName.exec(text);
  if (named !== null) {
    const [, first, name, last, nameFirst, day, year] = named;
    const month = monthNamed(name ?? nameFirst ?? '');
    if (month === null) return null;
    if (year !== undefined) return calendarDay(Number(year), month, Number(day));
    return first?.length === 4
      ? calendarDay(Number(first), month, Number(last))
      : calendarDay(Number(last), month, Number(first));
  }
  const serial = serialDate(text);
  if (serial !== null) return serial.day;
  const parts =
    /^\s*(\d{1,4})\D(\d{1,2})\D(\d{1,4})(?!\d)/.exec(text) ?? /^\s*(\d{4})(\d{2})(\d{2})(?!\d)/.exec(text);
  if (parts === null) return null;
  const [a, b, c] = parts.slice(1).map(Number) as [number, number, number];
  const yearFirst = parts[1]?.length === 4;
  const [year, month, day] = yearFirst ? [a, b, c] : order === 'month-day-year' ? [c, a, b] : [c, b, a];
  return calendarDay(year, month, day);
}

function calendarDay(year: number, month: number, day: number): number | null {
  const full = year < 100 ? 2000 + year : year;
  const ms = Date.UTC(full, month - 1, day);
  const date = new Date(ms);
  const exists =
    date.getUTCFullYear() === full && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  return exists && full >= 1950 && full < 2200 ? ms / dayMs : null;
}

/** A day as ISO text. */
export const isoDay = (day: number): string => new Date(day * dayMs).toISOString().slice(0, 10);

/** The order of day and month: by a date that can only be read one way, else the locale's. */
export function guessDateOrder(values: readonly string[], locale: string): DateOrder {
  for (const value of values) {
    const [, first = '', second = ''] = /^\s*(\d{1,4})\D(\d{1,2})\D/.exec(value) ?? [];
    if (first.length === 4) return 'year-month-day';
    if (Number(first) > 12) return 'day-month-year';
    if (Number(second) > 12) return 'month-day-year';
  }
  const parts = new Intl.DateTimeFormat(locale).formatToParts(0).map(({ type }) => type);
  if (parts.find((type) => ['year', 'month', 'day'].includes(type)) === 'year') return 'year-month-day';
  return parts.indexOf('month') < parts.indexOf('day') ? 'month-day-year' : 'day-month-year';
}
