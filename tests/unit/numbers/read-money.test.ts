import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatForEditing, formatFull, formatMoney } from '#lib/numbers/format-number.ts';
import { readMoney } from '#lib/numbers/read-money.ts';

const locales = ['en-GB', 'de-DE', 'fr-FR', 'de-CH', 'sv-SE'];

describe('an amount keeps the digits that were typed', () => {
  it.each([
    ['118.00', 'EUR', 'en-GB', '118.00'],
    ['€118.50', 'EUR', 'en-GB', '118.50'],
    ['118,50 €', 'EUR', 'de-DE', '118.50'],
    ['EUR 1.234,50', 'EUR', 'de-DE', '1234.50'],
    ['1 234,50 eur', 'EUR', 'fr-FR', '1234.50'],
    ["CHF 1'234.50", 'CHF', 'de-CH', '1234.50'],
    ['Fr. 118.–', 'CHF', 'de-CH', '118'],
    ['1 234 kr', 'SEK', 'sv-SE', '1234'],
    ['118:-', 'SEK', 'sv-SE', '118'],
    ['US$48,000', 'USD', 'en-GB', '48000'],
    ['$48,000', 'USD', 'en-GB', '48000'],
    ['-£5', 'GBP', 'en-GB', '-5'],
    ['£-5', 'GBP', 'en-GB', '-5'],
    ['(€1,200.00)', 'EUR', 'en-GB', '-1200.00'],
    ['0.2534', 'EUR', 'en-GB', '0.2534'],
    ['12345678901234567890.123456789', 'EUR', 'en-GB', '12345678901234567890.123456789'],
    ['-0.00', 'EUR', 'en-GB', '0.00']
  ])('%s in %s, %s', (text, currency, locale, amount) => {
    expect(readMoney(text, { currency, locale })).toEqual({ amount });
  });
});

describe('what is no amount in that currency is refused with a sentence', () => {
  it.each([
    ['$118', 'names another currency or a unit'],
    ['118 USD', 'names another currency or a unit'],
    ['118 per kg', 'names another currency or a unit'],
    ['expensive', 'is not an amount'],
    ['1.2.3', 'is not a number'],
    ['€', 'is not a number'],
    ['', 'Nothing is given.']
  ])('%s', (text, words) => {
    const read = readMoney(text, { currency: 'EUR', locale: 'en-GB' });
    expect('sentence' in read && read.sentence).toContain(words);
    expect('sentence' in read && read.sentence).toContain('Write an amount in EUR, such as 1,234.50.');
  });
});

it.each(locales)('an amount as displayed or as edited reads back to the same text, %s', (locale) => {
  const amounts = fc
    .tuple(fc.bigInt({ min: -(10n ** 18n), max: 10n ** 18n }), fc.integer({ min: 0, max: 99 }))
    .map(([whole, cents]) => `${whole}.${String(cents).padStart(2, '0')}`);
  fc.assert(
    fc.property(
      amounts,
      fc.constantFrom('EUR', 'GBP', 'CHF', 'SEK', 'USD', 'NOK', 'PLN'),
      (amount, currency) => {
        for (const text of [
          formatForEditing(amount, { locale }),
          formatFull(amount, { locale }),
          formatMoney(amount, { currency, locale, cents: true })
        ]) {
          expect(readMoney(text, { currency, locale }), text).toEqual({ amount });
        }
      }
    )
  );
});
