/** Dates of a log, as whole days since 1 January 1970. */
export type DateOrder = 'year-month-day' | 'day-month-year' | 'month-day-year';

const dayMs = 86_400_000;

/** The day of a date text, its time of day left out; null where it is no date of the calendar. */
export function dayOf(text: string, order: DateOrder): number | null {
  const parts =
    /^\s*(\d{1,4})\D(\d{1,2})\D(\d{1,4})(?!\d)/.exec(text) ?? /^\s*(\d{4})(\d{2})(\d{2})(?!\d)/.exec(text);
  if (parts === null) return null;
  const [a, b, c] = parts.slice(1).map(Number) as [number, number, number];
  const yearFirst = parts[1]?.length === 4;
  const [year, month, day] = yearFirst ? [a, b, c] : order === 'month-day-year' ? [c, a, b] : [c, b, a];
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
