import { expect, test } from 'vitest';
import { formatMoneyAlike } from '#lib/numbers/same-decimals.ts';

const look = { currency: 'EUR', locale: 'en-GB' };

test('amounts of a row are in whole units where one of them is a thousand or more', () => {
  expect(formatMoneyAlike(['344.00', '-694.88', '1053.4', '0'], look)).toEqual([
    '€344',
    '−€695',
    '€1,053',
    '€0'
  ]);
  expect(formatMoneyAlike(['999.996', '1.5'], look)).toEqual(['€1,000', '€2']);
});

test('and to the cent, zeros too, where none is', () => {
  expect(formatMoneyAlike(['344', '-694.885', '0'], look)).toEqual(['€344.00', '−€694.89', '€0.00']);
});

test('nothing but zeros has no cents', () => {
  expect(formatMoneyAlike(['0', '0'], look)).toEqual(['€0', '€0']);
});
