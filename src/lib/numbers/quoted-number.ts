import { formatForEditing } from './format-number.ts';
import { localeMarks } from './locale-marks.ts';

/**
 * A number as a sentence quotes it: with all its digits and no grouping, so that it can be typed as it stands. Written
 * as `locale` (a language tag) writes it or, where there is no one to read it by a locale, as a program prints it.
 */
export function quotedNumber(value: number, locale?: string): string {
  const printed = String(value);
  if (locale === undefined) return printed;
  // Written out, what a program prints with an exponent may run to hundreds of digits.
  return /e/.test(printed)
    ? printed.replace('.', localeMarks(locale).decimal)
    : formatForEditing(value, { locale });
}
