/** Numbers that could be read in two ways, which only who typed them can tell apart: `1.200`, `39.000`. */
import { localeMarks } from './locale-marks.ts';
import { foldNumberText } from './read-decimal.ts';

/** The two readings of a number, as texts that read in one way alone. */
export interface UndecidedNumber {
  readonly thousands: string;
  readonly decimals: string;
}

/**
 * The two readings of a text whose only mark is the locale's decimal mark with three digits behind it and one to three
 * before it, the first not 0: by the locale a fraction, but in half the world thousands. null for any other: with the
 * locale's own mark of thousands, a number is what it looks like.
 */
export function undecidedNumber(text: string, locale: string): UndecidedNumber | null {
  const folded = foldNumberText(text, locale);
  const match = /^([^\d.,']*)([1-9]\d{0,2})([.,])(\d{3})(?![\d.,' ]*\d)(.*)$/.exec(folded);
  const { decimal } = localeMarks(locale);
  if (match === null || match[3] !== decimal) return null;
  const [, before = '', whole = '', , rest = '', after = ''] = match;
  return { thousands: `${before}${whole}${rest}${after}`, decimals: folded };
}
