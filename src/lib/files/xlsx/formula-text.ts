/**
 * The formulas of the core in a spreadsheet's notation: symbols become cells, functions get a spreadsheet's names, and
 * what the two notations read differently is bracketed.
 */
import { NoExpressionError, parseExpression } from '#lib/calc/working/expression.ts';
import type { Expression, Sign } from '#lib/calc/working/expression.ts';

/** What stands in for a symbol: one cell or number, or the cells of a list as a function takes them (`A1:A9,C2`). */
export type SymbolCells = ReadonlyMap<string, string>;

/** Thrown for a formula that has no counterpart in a spreadsheet: a programmer's mistake, met by a test. */
export class NoSpreadsheetFormulaError extends Error {
  constructor(expression: string, why: string) {
    super(`The formula “${expression}” cannot be written for a spreadsheet: ${why}.`);
    this.name = 'NoSpreadsheetFormulaError';
  }
}

const functions: Readonly<Record<string, string>> = {
  min: 'MIN',
  max: 'MAX',
  abs: 'ABS',
  sum: 'SUM',
  exp: 'EXP',
  sqrt: 'SQRT',
  log10: 'LOG10',
  dot: 'SUMPRODUCT'
};
const signs: Readonly<Partial<Record<Sign, string>>> = { '==': '=', '!=': '<>' };

/** The expression with cells for its symbols, without an equals sign. */
export function spreadsheetFormula(expression: string, cells: SymbolCells): string {
  const fail = (why: string) => new NoSpreadsheetFormulaError(expression, why);

  function written(of: Expression): string {
    switch (of.kind) {
      case 'number':
        return of.text;
      case 'symbol': {
        const cell = cells.get(of.symbol);
        if (cell === undefined) throw fail(`nothing stands for “${of.symbol}”`);
        return cell;
      }
      case 'bracket':
        return `(${written(of.of)})`;
      case 'negative':
        // A spreadsheet reads −a^2 as (−a)^2, algebra as −(a^2).
        return `(-(${written(of.of)}))`;
      case 'pair': {
        const [left, right] = [written(of.left), written(of.right)];
        // A spreadsheet reads a^b^c from the left, algebra from the right.
        return of.sign === '^' ? `${left}^(${right})` : `${left}${signs[of.sign] ?? of.sign}${right}`;
      }
      case 'choice':
        return `IF(${written(of.condition)},${written(of.yes)},${written(of.no)})`;
      case 'call': {
        const name = functions[of.name];
        if (name === undefined) throw fail(`there is no function “${of.name}”`);
        // A list may be empty, and a spreadsheet’s function may not.
        const filled = of.given.map(written).filter((each) => each !== '');
        return filled.length === 0 ? '0' : `${name}(${filled.join(',')})`;
      }
    }
  }

  try {
    return written(parseExpression(expression));
  } catch (error) {
    throw error instanceof NoExpressionError ? fail(error.message) : error;
  }
}
