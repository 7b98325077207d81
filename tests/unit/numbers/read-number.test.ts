import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatForEditing, formatFull } from '#lib/numbers/format-number.ts';
import { readNumber, type NumberWanted } from '#lib/numbers/read-number.ts';

const value = (text: string, wanted: NumberWanted): number => {
  const read = readNumber(text, wanted);
  if ('sentence' in read) throw new Error(read.sentence);
  return read.value;
};
const sentence = (text: string, wanted: NumberWanted): string => {
  const read = readNumber(text, wanted);
  return 'sentence' in read ? read.sentence : `read as ${read.value}`;
};
const locales = ['en-GB', 'de-DE', 'fr-FR', 'de-CH', 'sv-SE'];

describe('marks that leave no doubt read the same in every locale', () => {
  it.each(locales)('%s', (locale) => {
    const pure = { unit: '', locale };
    for (const [text, number] of [
      ['1 234,5', 1234.5],
      ['1\u00a0234,5', 1234.5],
      ['1\u202f234.5', 1234.5],
      ['1,234.5', 1234.5],
      ['1.234,5', 1234.5],
      ["1'234.5", 1234.5],
      ['1’234,5', 1234.5],
      ['1,234,567', 1234567],
      ['1.234.567', 1234567],
      ['12,34,567.5', 1234567.5],
      ['1 234', 1234],
      ['0,5', 0.5],
      ['.5', 0.5],
      ['0.125', 0.125],
      ['0,125', 0.125],
      ['1234,567', 1234.567],
      ['1,2345', 1.2345],
      ['-3', -3],
      ['−3,5', -3.5],
      ['(12.5)', -12.5],
      ['+7', 7],
      ['007', 7],
      ['1.2E+05', 120000],
      ['２５', 25],
      ['  75  ', 75]
    ] as const) {
      expect(value(text, pure), text).toBe(number);
    }
  });
});

describe('a single mark before three digits goes by the locale', () => {
  it('groups where the locale groups with it', () => {
    expect(value('1,234', { unit: '', locale: 'en-GB' })).toBe(1234);
    expect(value('1.234', { unit: '', locale: 'de-DE' })).toBe(1234);
  });
  it('is the decimal mark where the locale has it so', () => {
    expect(value('1.234', { unit: '', locale: 'en-GB' })).toBe(1.234);
    expect(value('1,234', { unit: '', locale: 'de-DE' })).toBe(1.234);
    expect(value('1,234', { unit: '', locale: 'sv-SE' })).toBe(1.234);
    expect(value('1.234', { unit: '', locale: 'de-CH' })).toBe(1.234);
  });
  it('is refused, with both readings, where it is neither', () => {
    expect(sentence('1.234', { unit: '', locale: 'sv-SE' })).toContain('could mean 1234 or 1,234');
    expect(sentence('1,234', { unit: '', locale: 'de-CH' })).toContain('could mean 1234 or 1.234');
  });
  it('goes by en-GB outside a browser', () => {
    expect(value('1,234', { unit: '' })).toBe(1234);
  });
});

describe('units typed with the number are converted to the one wanted', () => {
  it.each([
    ['75 min', 'min', 75],
    ['75min', 'min', 75],
    ['75 Min.', 'min', 75],
    ['1.25 h', 'min', 75],
    ['1,25h', 'min', 75],
    ['0.7 h', 'min', 42],
    ['90 s', 'min', 1.5],
    ['1h15', 'min', 75],
    ['1 h 15 min', 'min', 75],
    ['1:15', 'min', 75],
    ['01:15:30', 'min', 75.5],
    ['1:30', 'h', 1.5],
    ['90 min', 'h', 1.5],
    ['0,5 L/min', 'L/min', 0.5],
    ['500 mL/min', 'L/min', 0.5],
    ['500 ml per min', 'L/min', 0.5],
    ['0.25 l / min', 'mL/min', 250],
    ['250 mL', 'mL', 250],
    ['0.25 L', 'mL', 250],
    ['2 m3', 'm³', 2],
    ['2 m³', 'L', 2000],
    ['1 200 L', 'm3', 1.2],
    ['800 g', 'kg', 0.8],
    ['1 t', 'kg', 1000],
    ['176 lb', 'kg', 79.83225712],
    ['0.5 %', '%', 0.5],
    ['0.5%', '%', 0.5],
    ['5 ‰', '%', 0.5],
    ['40 percent', '%', 40],
    ['1013.25 hPa', 'kPa', 101.325],
    ['760 mmHg', 'kPa', 101.32472],
    ['68 °F', '°C', 20],
    ['293.15 K', '°C', 20],
    ['20 ℃', '°C', 20],
    ['0.097 kW', 'W', 97],
    ['36 MJ', 'kWh', 10],
    ['18 months', 'years', 1.5],
    ['10 yr', 'years', 10],
    ['1.1 MAC', 'MAC', 1.1],
    ['420 cases', 'cases/year', 420],
    ['420 cases / year', 'cases/year', 420]
  ])('%s where %s is wanted', (text, unit, number) => {
    expect(value(text, { unit, locale: 'en-GB' })).toBeCloseTo(number, 12);
  });

  it('a number without a unit is taken as it is', () => {
    expect(value('75', { unit: 'min' })).toBe(75);
  });
});

describe('what cannot be read is refused with a sentence that says what is allowed', () => {
  it.each([
    [
      'about an hour',
      'min',
      '“about an hour” is not a number. Write a number in min, or one followed by s or h, or 1h15.'
    ],
    ['75 mL', 'min', 'something other than min after its number'],
    ['1h75', 'min', 'more than 59 minutes after its hours'],
    ['1:15', 'kg', 'something other than kg'],
    ['12 34', 'min', 'is not a number'],
    ['1.2.3', 'min', 'is not a number'],
    ['1,23,4', 'min', 'is not a number'],
    ['--3', 'min', 'is not a number'],
    ['5,', 'min', 'is not a number'],
    ['10²', 'min', 'something other than min'],
    ['1½', 'min', 'something other than min'],
    ['5 €', 'min', 'something other than min'],
    ['5 apples', '', 'something after its number'],
    ['1e999', 'min', 'out of any range'],
    ['1'.repeat(61), 'min', 'too long'],
    ['', 'min', 'Nothing is given.']
  ])('%s', (text, unit, words) => {
    expect(sentence(text, { unit, locale: 'en-GB' })).toContain(words);
  });

  it('a broken number where only whole ones fit', () => {
    expect(sentence('2.5', { unit: '', integer: true })).toBe(
      '“2.5” is not a whole number. Write a whole number.'
    );
    expect(value('2.0', { unit: '', integer: true })).toBe(2);
  });

  it('never throws, whatever is typed', () => {
    const numberish = fc.string({
      unit: fc.constantFrom(..."0123456789.,' ’\u202f−-+()eEhm:%²½٫١１\u200f\ud800")
    });
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'grapheme' }), numberish),
        fc.constantFrom(...locales),
        (text, locale) => {
          const read = readNumber(text, { unit: 'min', locale });
          expect('value' in read ? Number.isFinite(read.value) : read.sentence.endsWith('.')).toBe(true);
        }
      )
    );
  });
});

describe('what is written reads back to the same number', () => {
  const finite = fc
    .double({ noNaN: true, noDefaultInfinity: true, min: -1e15, max: 1e15 })
    .filter((x) => x === 0 || Math.abs(x) > 1e-9);
  const plain = (x: number): number => (x === 0 ? 0 : x);

  it.each([...locales, 'en-US', 'en-IN', 'pl-PL', 'pt-PT', 'ar-EG', 'hi-IN-u-nu-deva'])('%s', (locale) => {
    fc.assert(
      fc.property(
        fc.oneof(
          finite,
          fc.integer(),
          fc.integer({ min: -9999999, max: 9999999 }).map((x) => x / 1000)
        ),
        (x) => {
          expect(value(formatForEditing(x, { locale }), { unit: '', locale })).toBe(plain(x));
          const grouped = readNumber(formatFull(x, { locale }), { unit: '', locale });
          expect(grouped).toEqual({ value: plain(x) });
          expect(value(formatFull(x, { locale, unit: 'L/min' }), { unit: 'L/min', locale })).toBe(plain(x));
        }
      )
    );
  });
});
