import { describe, expect, test } from 'vitest';
import { quotedNumber } from '#lib/numbers/quoted-number.ts';
import { readNumber } from '#lib/numbers/read-number.ts';

describe('a number in a sentence', () => {
  test('has all its digits and no grouping, in the marks and digits of the locale', () => {
    expect(quotedNumber(0.123456789, 'de-DE')).toBe('0,123456789');
    expect(quotedNumber(1234567.5, 'de-DE')).toBe('1234567,5');
    expect(quotedNumber(1234567.5, 'en-GB')).toBe('1234567.5');
    expect(quotedNumber(20.5, 'ar-EG')).toBe('٢٠٫٥');
  });

  test('is printed as by a program where there is no locale', () => {
    for (const value of [0.1, -1440, 1.5e-7, 1e300]) expect(quotedNumber(value)).toBe(String(value));
  });

  test('reads back as it stands, very large and very small ones included', () => {
    for (const locale of ['en-GB', 'de-DE', 'de-CH', 'fr-FR', 'sv-SE', 'ar-EG'])
      for (const value of [0, 0.1, -12.5, 1440, 1234.567, 1.234e-9, 1.234e25, Number.MAX_SAFE_INTEGER])
        expect(
          readNumber(quotedNumber(value, locale), { unit: '', locale }),
          `${value} in ${locale}`
        ).toEqual({
          value
        });
  });
});
