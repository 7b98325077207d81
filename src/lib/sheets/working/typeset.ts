/** Formulas as written for the code, `1000 * V_d / v`, as they are set for the eye: 1000 · V with a low d / v. */
import { parseExpression } from '#lib/calc/working/expression.ts';
import type { Expression, Sign } from '#lib/calc/working/expression.ts';

export type Piece =
  /** `V_d`: what stands before the first underscore, and what hangs low behind it. */
  | { readonly kind: 'symbol'; readonly symbol: string; readonly letter: string; readonly low: string }
  | { readonly kind: 'number'; readonly text: string }
  /** An operator between two things, to be set with space about it. */
  | { readonly kind: 'operator'; readonly text: string }
  /** A bracket, a comma, the name of a function: set as it is. */
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'high'; readonly pieces: readonly Piece[] };

const signs: Readonly<Partial<Record<Sign, string>>> = {
  '*': '·',
  '-': '−',
  '<=': '≤',
  '>=': '≥',
  '==': '=',
  '!=': '≠'
};
const text = (of: string): Piece => ({ kind: 'text', text: of });
const operator = (of: string): Piece => ({ kind: 'operator', text: of });

/**
 * The pieces of an expression, in order.
 * @throws NoExpressionError where the text is no formula.
 */
export const typeset = (expression: string): readonly Piece[] => piecesOf(parseExpression(expression));

function piecesOf(of: Expression): readonly Piece[] {
  switch (of.kind) {
    case 'number':
      return [of];
    case 'symbol': {
      const [letter = '', ...low] = of.symbol.split('_');
      return [{ kind: 'symbol', symbol: of.symbol, letter, low: low.join(',\u2009') }];
    }
    case 'bracket':
      return [text('('), ...piecesOf(of.of), text(')')];
    case 'negative':
      return [text('−'), ...piecesOf(of.of)];
    case 'pair': {
      // What is set high needs no bracket.
      const high = of.right.kind === 'bracket' ? of.right.of : of.right;
      return of.sign === '^'
        ? [...piecesOf(of.left), { kind: 'high', pieces: piecesOf(high) }]
        : [...piecesOf(of.left), operator(signs[of.sign] ?? of.sign), ...piecesOf(of.right)];
    }
    case 'choice':
      return [
        text('if '),
        ...piecesOf(of.condition),
        operator('then'),
        ...piecesOf(of.yes),
        operator('else'),
        ...piecesOf(of.no)
      ];
    case 'call':
      return [
        text(`${of.name}(`),
        ...of.given.flatMap((each, at) => [...(at === 0 ? [] : [text(', ')]), ...piecesOf(each)]),
        text(')')
      ];
  }
}
