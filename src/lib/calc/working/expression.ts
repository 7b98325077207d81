/**
 * The one reader of the notation in which formulas are printed (`Formula.expression`): `1000 * V_d / v`. Screen,
 * spreadsheet and tests take the tree from here and write it each in its own way.
 */

/** The signs that stand between two sides. */
export type Sign = '+' | '-' | '*' | '/' | '^' | '<' | '<=' | '>' | '>=' | '==' | '!=';

export type Expression =
  /** As written: `1e-3`. */
  | { readonly kind: 'number'; readonly text: string }
  | { readonly kind: 'symbol'; readonly symbol: string }
  /** `-of`; a power binds tighter, so `-a ^ 2` is `-(a ^ 2)`. */
  | { readonly kind: 'negative'; readonly of: Expression }
  /** Powers are read from the right, all else from the left. */
  | { readonly kind: 'pair'; readonly sign: Sign; readonly left: Expression; readonly right: Expression }
  /** `condition ? yes : no` */
  | {
      readonly kind: 'choice';
      readonly condition: Expression;
      readonly yes: Expression;
      readonly no: Expression;
    }
  | { readonly kind: 'call'; readonly name: string; readonly given: readonly Expression[] }
  /** Brackets stay where they were written. */
  | { readonly kind: 'bracket'; readonly of: Expression };

/** Thrown for a text that is no formula: a programmer's mistake, met by a test. */
export class NoExpressionError extends Error {
  constructor(expression: string, why: string) {
    super(`The formula “${expression}” cannot be read: ${why}.`);
    this.name = 'NoExpressionError';
  }
}

const comparisons = ['<=', '>=', '==', '!=', '<', '>'] as const;

/** @throws NoExpressionError where the text is no formula, with what is wrong in it. */
export function parseExpression(expression: string): Expression {
  const tokens = expression.match(/\d+(?:\.\d+)?(?:e[+-]?\d+)?|[A-Za-z_]\w*|<=|>=|==|!=|\S/gi) ?? [];
  let at = 0;
  const fail = (why: string) => new NoExpressionError(expression, why);
  const peek = (): string | undefined => tokens[at];
  const take = (token: string): boolean => (peek() === token ? (at++, true) : false);
  const expect = (token: string): void => {
    if (!take(token)) throw fail(`“${token}” is missing before “${peek() ?? 'the end'}”`);
  };
  const pair = (sign: Sign, left: Expression, right: Expression): Expression => ({
    kind: 'pair',
    sign,
    left,
    right
  });

  function choice(): Expression {
    const condition = comparison();
    if (!take('?')) return condition;
    const yes = choice();
    expect(':');
    return { kind: 'choice', condition, yes, no: choice() };
  }
  function comparison(): Expression {
    const left = fromTheLeft(['+', '-'], product);
    const sign = comparisons.find(take);
    return sign === undefined ? left : pair(sign, left, fromTheLeft(['+', '-'], product));
  }
  const product = (): Expression => fromTheLeft(['*', '/'], signed);
  function fromTheLeft(signs: readonly Sign[], part: () => Expression): Expression {
    let whole = part();
    for (let sign = signs.find(take); sign !== undefined; sign = signs.find(take))
      whole = pair(sign, whole, part());
    return whole;
  }
  function signed(): Expression {
    return take('-') ? { kind: 'negative', of: signed() } : power();
  }
  function power(): Expression {
    const base = primary();
    return take('^') ? pair('^', base, signed()) : base;
  }
  function primary(): Expression {
    const token = peek();
    if (token === undefined) throw fail('it ends too early');
    at++;
    if (token === '(') {
      const of = choice();
      expect(')');
      return { kind: 'bracket', of };
    }
    if (/^\d/.test(token)) return { kind: 'number', text: token };
    if (!/^[A-Za-z_]/.test(token)) throw fail(`“${token}” has no meaning there`);
    if (!take('(')) return { kind: 'symbol', symbol: token };
    const given = [choice()];
    while (take(',')) given.push(choice());
    expect(')');
    return { kind: 'call', name: token, given };
  }

  const whole = choice();
  if (at < tokens.length) throw fail(`“${peek()}” is left over`);
  return whole;
}
