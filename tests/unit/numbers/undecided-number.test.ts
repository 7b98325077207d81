import { expect, test } from 'vitest';
import { undecidedNumber } from '#lib/numbers/undecided-number.ts';

test.each([
  ['1.200', 'en-GB', '1200'],
  ['39.000', 'en-GB', '39000'],
  ['€39.000', 'en-GB', '€39000'],
  ['1.200 mL', 'en-GB', '1200 mL'],
  ['1,200', 'de-DE', '1200']
])('%s in %s could be %s as well', (text, locale, thousands) => {
  expect(undecidedNumber(text, locale)).toEqual({ thousands, decimals: text });
});

test.each([
  ['1,200', 'en-GB'],
  ['1.200', 'de-DE'],
  ['0.125', 'en-GB'],
  ['1.25', 'en-GB'],
  ['1.2345', 'en-GB'],
  ['1234.500', 'en-GB'],
  ['1,234.500', 'en-GB'],
  ['1.200.000', 'en-GB'],
  ['75', 'en-GB'],
  ['1 h 15', 'en-GB'],
  ['many', 'en-GB']
])('%s in %s reads in one way', (text, locale) => {
  expect(undecidedNumber(text, locale)).toBeNull();
});
