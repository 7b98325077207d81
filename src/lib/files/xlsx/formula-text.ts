/**
 * The formulas of the core in a spreadsheet's notation. They are kept as text in plain algebra (`V * P / (R * T)`); here
 * symbols become cells, functions get a spreadsheet's names, and what the two notations read differently is bracketed.
 */

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

/** The expression with cells for its symbols, without an equals sign. */
export function spreadsheetFormula(expression: string, cells: SymbolCells): string {
  const tokens = expression.match(/\d+(?:\.\d+)?(?:e[+-]?\d+)?|[A-Za-z_]\w*|<=|>=|==|\S/gi) ?? [];
  let at = 0;
  const peek = () => tokens[at];
  const take = (token: string): boolean => (peek() === token ? (at++, true) : false);
  const fail = (why: string) => new NoSpreadsheetFormulaError(expression, why);
  const expect = (token: string) => {
    if (!take(token)) throw fail(`“${token}” is missing before “${peek() ?? 'the end'}”`);
  };

  function choice(): string {
    const condition = comparison();
    if (!take('?')) return condition;
    const yes = choice();
    expect(':');
    return `IF(${condition},${yes},${choice()})`;
  }
  function comparison(): string {
    const left = sum();
    for (const sign of ['<=', '>=', '<', '>']) if (take(sign)) return `${left}${sign}${sum()}`;
    return take('==') ? `${left}=${sum()}` : left;
  }
  function sum(): string {
    let text = product();
    for (;;) {
      if (take('+')) text += `+${product()}`;
      else if (take('-')) text += `-${product()}`;
      else return text;
    }
  }
  function product(): string {
    let text = signed();
    for (;;) {
      if (take('*')) text += `*${signed()}`;
      else if (take('/')) text += `/${signed()}`;
      else return text;
    }
  }
  function signed(): string {
    // A spreadsheet reads −a^2 as (−a)^2, algebra as −(a^2).
    return take('-') ? `(-(${signed()}))` : power();
  }
  function power(): string {
    const base = primary();
    // A spreadsheet reads a^b^c from the left, algebra from the right.
    return take('^') ? `${base}^(${signed()})` : base;
  }
  function primary(): string {
    const token = peek();
    if (token === undefined) throw fail('it ends too early');
    at++;
    if (token === '(') {
      const inner = choice();
      expect(')');
      return `(${inner})`;
    }
    if (/^\d/.test(token)) return token;
    if (!/^[A-Za-z_]/.test(token)) throw fail(`“${token}” has no meaning there`);
    if (take('(')) {
      const name = functions[token];
      if (name === undefined) throw fail(`there is no function “${token}”`);
      const given = [choice()];
      while (take(',')) given.push(choice());
      expect(')');
      // A list may be empty, and a spreadsheet’s function may not.
      const filled = given.filter((each) => each !== '');
      return filled.length === 0 ? '0' : `${name}(${filled.join(',')})`;
    }
    const cell = cells.get(token);
    if (cell === undefined) throw fail(`nothing stands for “${token}”`);
    return cell;
  }

  const text = choice();
  if (at < tokens.length) throw fail(`“${peek()}” is left over`);
  return text;
}
