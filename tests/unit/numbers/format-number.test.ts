import { describe, expect, it } from 'vitest';
import { avoidedInWords, savingInWords } from '#lib/numbers/change-in-words.ts';
import {
  chooseMassUnit,
  formatForEditing,
  formatFull,
  formatMass,
  formatMoney,
  formatNumber
} from '#lib/numbers/format-number.ts';

const locale = 'en-GB';
const currency = 'EUR';

describe('numbers', () => {
  it('show three significant figures', () => {
    expect(formatNumber(1234.5, { locale })).toBe('1,230');
    expect(formatNumber(0.50149, { locale })).toBe('0.501');
    expect(formatNumber(2, { locale })).toBe('2');
    expect(formatNumber(12345, { locale, figures: 4 })).toBe('12,350');
  });
  it('carry their unit', () => {
    expect(formatNumber(75, { locale, unit: 'min' })).toBe('75\u00a0min');
    expect(formatNumber(0.5, { locale: 'de-DE', unit: '%' })).toBe('0,5\u00a0%');
  });
  it('show a dash for what is not given, and never a minus nought', () => {
    expect(formatNumber(null)).toBe('–');
    expect(formatFull(null)).toBe('–');
    expect(formatForEditing(null)).toBe('');
    expect(formatMoney(null, { currency })).toBe('–');
    expect(formatMass(null)).toBe('–');
    expect(formatNumber(-0, { locale })).toBe('0');
  });
  it('show every digit on request', () => {
    expect(formatFull(1234.56789, { locale })).toBe('1,234.56789');
    expect(formatFull('9007199254740993.10', { locale })).toBe('9,007,199,254,740,993.10');
    expect(formatForEditing(1234.5, { locale: 'fr-FR' })).toBe('1234,5');
    expect(formatForEditing(1e-7, { locale })).toBe('0.0000001');
  });
});

describe('money', () => {
  it('is in whole units from a thousand up, to the cent below or on request', () => {
    expect(formatMoney('1234.56', { currency, locale })).toBe('€1,235');
    expect(formatMoney('999.99', { currency, locale })).toBe('€999.99');
    expect(formatMoney('999.995', { currency, locale })).toBe('€1,000');
    expect(formatMoney('118.5', { currency, locale })).toBe('€118.50');
    expect(formatMoney('1234.56', { currency, locale, cents: true })).toBe('€1,234.56');
    expect(formatMoney('-1234.5', { currency, locale: 'de-DE' })).toBe('\u22121.235\u00a0€');
  });
  it('that is nothing has no cents, and lines up with thousands', () => {
    expect(formatMoney('0.00', { currency, locale })).toBe('€0');
    expect(formatMoney('0', { currency, locale, cents: true })).toBe('€0.00');
  });
  it('is exact where a binary fraction would not be', () => {
    expect(formatMoney('9007199254740993.01', { currency, locale, cents: true })).toBe(
      '€9,007,199,254,740,993.01'
    );
    expect(formatMoney('1.005', { currency, locale })).toBe('€1.01');
  });
  it('knows currencies without cents', () => {
    expect(formatMoney('118.4', { currency: 'JPY', locale })).toBe('JP¥118');
  });
});

describe('masses', () => {
  it('take the unit that reads best', () => {
    expect(formatMass(12345, { locale })).toBe('12.3\u00a0t');
    expect(formatMass(999.9, { locale })).toBe('1\u00a0t');
    expect(formatMass(12.345, { locale })).toBe('12.3\u00a0kg');
    expect(formatMass(0.5, { locale, of: 'CO2e' })).toBe('500\u00a0g\u00a0CO2e');
    expect(formatMass(0, { locale })).toBe('0\u00a0kg');
  });
  it('share one unit in a column', () => {
    const unit = chooseMassUnit([12, 3400, -20000]);
    expect(formatMass(12, { in: unit, locale })).toBe('0.012\u00a0t');
  });
});

describe('a change from the baseline', () => {
  it('is signed and named', () => {
    expect(savingInWords('12345.00', { currency, locale })).toEqual({
      direction: 'less',
      word: 'saves',
      signed: '−€12,345',
      text: 'saves €12,345'
    });
    expect(savingInWords('-450', { currency, locale })).toMatchObject({
      direction: 'more',
      signed: '+€450.00',
      text: 'costs €450.00 more'
    });
    expect(savingInWords('0.00', { currency, locale }).text).toBe('no change');
    expect(savingInWords(null, { currency, locale }).text).toBe('–');
    expect(avoidedInWords(12000, { locale, of: 'CO2e' }).text).toBe('avoids 12\u00a0t\u00a0CO2e');
    expect(avoidedInWords(-0.5, { locale }).signed).toBe('+500\u00a0g');
  });
});
