import { expect, test } from 'vitest';
import { NoSpreadsheetFormulaError, spreadsheetFormula } from '#lib/files/xlsx/formula-text.ts';

const cells = new Map([
  ['a', 'A1'],
  ['b', 'B1'],
  ['x', 'C1:C9,D4'],
  ['none', '']
]);

test.each([
  ['a * b / 1000', 'A1*B1/1000'],
  ['a - (b + 2.5) * 3', 'A1-(B1+2.5)*3'],
  // Algebra takes the power before the sign; a spreadsheet does not.
  ['-a ^ 2', '(-(A1^(2)))'],
  ['2 - -a', '2-(-(A1))'],
  // Algebra reads powers from the right; a spreadsheet from the left.
  ['a ^ b ^ 2', 'A1^(B1^(2))'],
  ['a ^ -b', 'A1^((-(B1)))'],
  ['max(0, a - sum(x))', 'MAX(0,A1-SUM(C1:C9,D4))'],
  ['sum(none) + 1', '0+1'],
  ['b > 0 ? min(1, sum(x) / b) : 1', 'IF(B1>0,MIN(1,SUM(C1:C9,D4)/B1),1)'],
  ['log10(a) + exp(b)', 'LOG10(A1)+EXP(B1)'],
  ['1e-3 * a', '1e-3*A1']
])('%s becomes %s', (expression, formula) => {
  expect(spreadsheetFormula(expression, cells)).toBe(formula);
});

test.each(['a +', '(a', 'a b', 'c * 2', 'sin(a)', 'a ? b', 'a & b', 'SUM(x)'])(
  '%s has no counterpart and is refused',
  (expression) => {
    expect(() => spreadsheetFormula(expression, cells)).toThrow(NoSpreadsheetFormulaError);
  }
);
