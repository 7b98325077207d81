/** Figures as a reader says them: lengths of time, a true minus, the same decimals in a row, whole phrases. */
import { describe, expect, it } from 'vitest';
import { figureText } from '#lib/charts/figure-text.ts';
import { formatFull, formatMass, formatMoney, formatNumber } from '#lib/numbers/format-number.ts';
import { readNumber } from '#lib/numbers/read-number.ts';
import { formatAlike, sameDecimals } from '#lib/numbers/same-decimals.ts';
import { yearsInWords } from '#lib/numbers/years-in-words.ts';
import { drawnFigureInWords, errorInWords, spanInWords } from '#lib/sheets/parts/uncertainty-words.ts';

const locale = 'en-GB';
const look = { currency: 'EUR', locale, appraisalYears: 10 };

it.each([
  [0.003, 'less than a week'],
  [0.02, '1\u00a0week'],
  [0.0951, '5\u00a0weeks'],
  [0.1666, '9\u00a0weeks'],
  [0.17, '2\u00a0months'],
  [0.867, '10\u00a0months'],
  [1, '1\u00a0year'],
  [1.5, '18\u00a0months'],
  [1.97, '2.0\u00a0years'],
  [5.1366, '5.1\u00a0years'],
  [10, '10\u00a0years']
])('%f years are %s', (years, words) => {
  expect(yearsInWords(years, locale)).toBe(words);
  expect(figureText(years, { kind: 'number', unit: 'years' })).toBe(words);
});

it('a draw’s payback and its error are said the same way', () => {
  expect(drawnFigureInWords('paybackYears', 0.749, look)).toBe('9\u00a0months');
  expect(errorInWords('paybackYears', { value: 0.7, standardError: 0.00079 }, look)).toBe(
    '± less than a week'
  );
});

describe('two ends of a span', () => {
  it.each([
    [Infinity, Infinity, 'not within 10\u00a0years'],
    [4.06, Infinity, '4.1\u00a0years to more than 10\u00a0years'],
    [4.06, 6, '4.1\u00a0years to 6\u00a0years'],
    [4.06, 4.07, '4.1\u00a0years']
  ])('%f and %f years', (low, high, words) => {
    expect(spanInWords('paybackYears', { low, high }, look)).toBe(words);
  });
});

it('what is less than nothing has a true minus, that can be typed back', () => {
  const texts = [
    formatNumber(-1234.5, { locale }),
    formatFull(-0.5, { locale }),
    formatFull('-12.50', { locale }),
    formatMoney(-93.35, { currency: 'EUR', locale }),
    formatMoney('-1234', { currency: 'EUR', locale: 'de-DE' }),
    formatMass(-12, { locale })
  ];
  for (const text of texts) {
    expect(text).toContain('\u2212');
    expect(text).not.toContain('-');
  }
  expect(readNumber(formatFull(-0.5, { locale }), { unit: '', locale })).toMatchObject({ value: -0.5 });
});

describe('numbers of one row', () => {
  it.each([
    [
      [26, 24.7, 9.8, 7.61],
      ['26.0', '24.7', '9.8', '7.6']
    ],
    [
      [353, 0.0243, null],
      ['353', '0', '–']
    ],
    [
      [0.03, 0.0224],
      ['0.0300', '0.0224']
    ],
    [
      [4, 12, 0],
      ['4', '12', '0']
    ],
    [
      [-1.5, 99.97],
      ['\u22122', '100']
    ]
  ])('%j', (values, texts) => {
    expect(formatAlike(values, { locale })).toEqual(texts);
  });

  it('nothing but zeros has no decimals', () => {
    expect(sameDecimals([0, 0, null])).toBe(0);
  });
});

it('a unit that is a phrase is no place to write a number in', () => {
  const refused = readNumber('lots', { unit: 'a year', locale });
  expect(JSON.stringify(refused)).toContain('Write a number: how many a year.');
  expect(JSON.stringify(refused)).not.toContain('in a year');
});
