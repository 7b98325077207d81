/** A length of time as a reader says it: weeks below two months, months below two years, then years. */
import { formatDecimals, formatNumber } from './format-number.ts';
import { defaultLocale } from './locale-marks.ts';

const weeksAYear = 365.25 / 7;

/**
 * `years` (0 or more) to no more digits than an appraisal earns: 0.095 is `5 weeks`, 0.867 `10 months`, 5.137 `5.1 years`.
 * A whole number of years stays as it was entered: `1 year`, `10 years`.
 */
export function yearsInWords(years: number, locale = defaultLocale()): string {
  if (Number.isInteger(years)) return counted(years, 'year', formatNumber(years, { locale }));
  const weeks = Math.round(years * weeksAYear);
  if (weeks === 0) return 'less than a week';
  if (years < 2 / 12) return counted(weeks, 'week', String(weeks));
  const months = Math.round(years * 12);
  if (months < 24) return counted(months, 'month', String(months));
  return counted(years, 'year', formatDecimals(years, { locale, decimals: 1 }));
}

const counted = (count: number, what: string, text: string): string =>
  `${text}\u00a0${count === 1 ? what : `${what}s`}`;
