/** Start and end of a case as logs write them, and the minutes between. Facts of notation, from memory, no source. */
import type { DateOrder } from './log-dates.ts';
import { dayOf, serialDate } from './log-dates.ts';

/** A moment by the clock on the wall: with its day where one is given. */
export interface LogTime {
  /** Days since 1 January 1970; null for a time of day alone. */
  readonly day: number | null;
  /** Minutes since midnight. */
  readonly minute: number;
  /** Minutes by which the clock is ahead of world time; null where that is not said. */
  readonly aheadMin: number | null;
}

const clock =
  /^T?(?:(\d{1,2})[:.h\u066b](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?\s*(?:h|uhr)?|(\d{1,2})(\d{2})h?)\s*([ap])?\.?(?:m\.?)?\s*(z|utc|[+-]\d{2}:?\d{2})?$/i;
/** A date, and after a space, a comma or a T the time; or fourteen digits in a row. */
const dated =
  /^(\d{1,4}\D\d{1,2}\D\d{1,4}|\d{8}|\d{1,4}[-\s./]*\p{L}{3,}\.?[-\s./]*\d{1,4}|\p{L}{3,}\.?\s*\d{1,2},?\s+\d{4})(?:\s*,\s*|\s+|T)(.+)$/iu;
const inARow = /^(\d{8})(\d{4})(\d{2})?$/;

/** A start or an end; null where the text is neither a time of day nor a date with one. */
export function timeOf(text: string, order: DateOrder): LogTime | null {
  const given = text.trim();
  const serial = /[.,]/.test(given) ? serialDate(given) : null;
  if (serial !== null) return { ...serial, aheadMin: null };
  const row = inARow.exec(given);
  const parts = row === null ? dated.exec(given) : [given, row[1] ?? '', row[2] ?? ''];
  const day = parts === null ? null : dayOf(parts[1] ?? '', order);
  if (parts !== null && day === null) return null;
  const time = minuteOf(parts === null ? given : (parts[2] ?? ''));
  return time === null ? null : { day, ...time };
}

function minuteOf(text: string): { minute: number; aheadMin: number | null } | null {
  const found = clock.exec(text.trim());
  if (found === null) return null;
  const half = found[6]?.toLowerCase();
  const hour = Number(found[1] ?? found[4]);
  const minute = Number(found[2] ?? found[5]);
  const second = Number(found[3] ?? 0);
  if (minute > 59 || second > 59) return null;
  if (half !== undefined && (hour < 1 || hour > 12)) return null;
  // 24:00 is the end of a day.
  if (hour > 24 || (hour === 24 && minute + second > 0)) return null;
  const hours = half === undefined ? hour : (hour % 12) + (half === 'p' ? 12 : 0);
  return { minute: hours * 60 + minute + second / 60, aheadMin: aheadOf(found[7]) };
}

function aheadOf(zone: string | undefined): number | null {
  if (zone === undefined) return null;
  const [, sign, hours, minutes] = /^([+-])(\d{2}):?(\d{2})$/.exec(zone) ?? [];
  return sign === undefined ? 0 : (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes));
}

const dayMin = 1440;
/** Where only times of day are given, the longest case that may run over midnight: beyond, start and end may be mixed up. */
export const longestOverMidnightMin = 720;

/** Minutes from start to end; or why they cannot be told. */
export function minutesBetween(start: LogTime, end: LogTime): number | 'backwards' | 'ambiguous' {
  const ahead = start.aheadMin === null || end.aheadMin === null ? 0 : end.aheadMin - start.aheadMin;
  const withinDay = end.minute - start.minute - ahead;
  if (start.day !== null && end.day !== null) {
    const minutes = (end.day - start.day) * dayMin + withinDay;
    return minutes < 0 ? 'backwards' : minutes;
  }
  if (withinDay === 0) return 'ambiguous';
  if (withinDay > 0) return withinDay;
  const overMidnight = withinDay + dayMin;
  return overMidnight <= longestOverMidnightMin ? overMidnight : 'ambiguous';
}
