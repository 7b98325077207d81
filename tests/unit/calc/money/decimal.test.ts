import { expect, test } from 'vitest';
import { Decimal, NotAnAmountError, amount, text } from '#lib/calc/money/decimal.ts';

test('amounts add up as on paper', () => {
  expect(text(amount('0.10').plus(amount('0.20')))).toBe('0.3');
  expect(text(new Decimal(0.1).plus(0.2))).toBe('0.3');
  expect(text(amount('118.00').times(1234567))).toBe('145678906');
});

test('an amount leaves as plain text, however large or small', () => {
  expect(text(amount('1e21'))).toBe('1000000000000000000000');
  expect(text(amount('1e-9'))).toBe('0.000000001');
  expect(text(amount('0').minus(amount('0').times(-1)))).toBe('0');
});

test.each(['', ' ', 'NaN', 'Infinity', '1,50', '12 EUR', '0x10', '1.', '.5', '--1'])(
  '“%s” is no amount',
  (given) => {
    expect(() => amount(given)).toThrow(NotAnAmountError);
    expect(() => amount(given)).toThrow(`“${given}” is no amount`);
  }
);
