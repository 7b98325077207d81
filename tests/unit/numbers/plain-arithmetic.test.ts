import { expect, test } from 'vitest';
import { plainArithmetic } from '#lib/numbers/plain-arithmetic.ts';

test.each([
  ['=30*2', 60],
  ['90+30', 120],
  ['90 + 30 + 5', 125],
  ['2*45', 90],
  ['=1/2', 0.5],
  ['=2+3*4', 14],
  ['=(2+3)*4', 20],
  ['=-5+8', 3],
  ['=0.1+0.2', 0.3],
  ['=1,200/2', 600],
  ['= 7 ÷ 2', 3.5],
  ['3 × 20', 60]
])('%s comes to %d', (text, value) => {
  expect(plainArithmetic(text, 'en-GB')).toBe(value);
});

test('numbers are read by the locale', () => {
  expect(plainArithmetic('=1,5*2', 'de-DE')).toBe(3);
});

test.each([
  ['60-95', 'may be a range'],
  ['1/2', 'may be a date'],
  ['01/02/2025', 'is a date'],
  ['+49', 'is a number'],
  ['(118)', 'is a number'],
  ['75', 'is a number'],
  ['1e5', 'is a number'],
  ['=1/0', 'has no result'],
  ['=1+', 'is cut short'],
  ['=(1+2', 'is cut short'],
  ['=2 3', 'has two numbers side by side'],
  ['=SUM(1,2)', 'calls a function'],
  ["=1+cmd|'/C calc'!A0", 'would run something'],
  ['=A1*2', 'names a cell'],
  ['', 'is empty'],
  [`=${'1+'.repeat(5000)}1`, 'is endless']
])('%s %s, so nothing is computed', (text) => {
  expect(plainArithmetic(text, 'en-GB')).toBeNull();
});
