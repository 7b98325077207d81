import { describe, expect, it } from 'vitest';
import { NoExpressionError, parseExpression, type Expression } from '#lib/calc/working/expression.ts';

/** The tree with a bracket round every pair, so that what binds to what is seen. */
function bound(of: Expression): string {
  switch (of.kind) {
    case 'number':
      return of.text;
    case 'symbol':
      return of.symbol;
    case 'bracket':
      return bound(of.of);
    case 'negative':
      return `[-${bound(of.of)}]`;
    case 'pair':
      return `[${bound(of.left)} ${of.sign} ${bound(of.right)}]`;
    case 'choice':
      return `[${bound(of.condition)} ? ${bound(of.yes)} : ${bound(of.no)}]`;
    case 'call':
      return `${of.name}{${of.given.map(bound).join(', ')}}`;
  }
}

describe('the printed notation is read as algebra is', () => {
  it.each([
    ['a - b - c', '[[a - b] - c]'],
    ['a / b * c', '[[a / b] * c]'],
    ['a + b * c', '[a + [b * c]]'],
    ['(a + b) * c', '[[a + b] * c]'],
    ['a ^ b ^ 2', '[a ^ [b ^ 2]]'],
    ['-a ^ 2', '[-[a ^ 2]]'],
    ['a ^ -b * c', '[[a ^ [-b]] * c]'],
    ['2 - -a', '[2 - [-a]]'],
    ['a + 1 >= b ? c : d > 0 ? 1 : 2', '[[[a + 1] >= b] ? c : [[d > 0] ? 1 : 2]]'],
    ['max(0, a - sum(x)) / 1e-3', '[max{0, [a - sum{x}]} / 1e-3]'],
    ['a != b ? V_d : 1.5e+2', '[[a != b] ? V_d : 1.5e+2]']
  ])('%s', (expression, tree) => expect(bound(parseExpression(expression))).toBe(tree));

  it.each([
    ['', 'it ends too early'],
    ['a +', 'it ends too early'],
    ['(a', '“)” is missing before “the end”'],
    ['a b', '“b” is left over'],
    ['a ? b', '“:” is missing'],
    ['a & b', '“&” is left over'],
    ['* a', '“*” has no meaning there']
  ])('“%s” is refused: %s', (expression, why) => {
    expect(() => parseExpression(expression)).toThrow(NoExpressionError);
    expect(() => parseExpression(expression)).toThrow(why);
  });
});
