/** Formulas as written for the code, `1000 * V_d / v`, taken apart for display: 1000 · V with a low d / v. */

export type Piece =
  /** `V_d`: what stands before the first underscore, and what hangs low behind it. */
  | { readonly kind: 'symbol'; readonly symbol: string; readonly letter: string; readonly low: string }
  | { readonly kind: 'number'; readonly text: string }
  /** An operator between two things, to be set with space about it. */
  | { readonly kind: 'operator'; readonly text: string }
  /** A bracket, a comma, the name of a function: set as it is. */
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'high'; readonly pieces: readonly Piece[] };

const written: Readonly<Record<string, string>> = {
  '*': '·',
  '-': '−',
  '<=': '≤',
  '>=': '≥',
  '==': '=',
  '!=': '≠',
  ':': 'else'
};

const token = /\s*(\d+(?:\.\d+)?(?:e[+-]?\d+)?|[A-Za-z][A-Za-z0-9_]*|<=|>=|==|!=|[^\s])/y;

/** The pieces of an expression, in order. */
export function typeset(expression: string): readonly Piece[] {
  const tokens: string[] = [];
  token.lastIndex = 0;
  for (let found = token.exec(expression); found !== null; found = token.exec(expression))
    tokens.push(found[1] as string);
  return take(tokens, tokens.length);
}

function take(tokens: string[], count: number): Piece[] {
  const pieces: Piece[] = [];
  const end = tokens.length - count;
  while (tokens.length > end) {
    const next = tokens.shift() as string;
    if (next === '^') pieces.push({ kind: 'high', pieces: exponent(tokens) });
    else if (next === '?') {
      pieces.splice(clauseStart(pieces), 0, { kind: 'text', text: 'if ' });
      pieces.push({ kind: 'operator', text: 'then' });
    } else pieces.push(pieceOf(next, pieces.at(-1), tokens[0]));
  }
  return pieces;
}

/** Where the clause that ends the pieces begins: behind the bracket that is still open, or at the front. */
function clauseStart(pieces: readonly Piece[]): number {
  let depth = 0;
  for (let at = pieces.length - 1; at >= 0; at--) {
    const piece = pieces[at] as Piece;
    if (piece.kind !== 'text') continue;
    depth += piece.text === ')' ? 1 : piece.text === '(' ? -1 : 0;
    if (depth < 0) return at + 1;
  }
  return 0;
}

/** What stands after `^`: one thing, a sign with one, or all that a bracket holds, without the bracket. */
function exponent(tokens: string[]): Piece[] {
  if (tokens[0] === '-') return take(tokens, 2);
  if (tokens[0] !== '(') return take(tokens, 1);
  let depth = 0;
  const close = tokens.findIndex((each) => (depth += each === '(' ? 1 : each === ')' ? -1 : 0) === 0);
  tokens.shift();
  const inside = take(tokens, close - 1);
  tokens.shift();
  return inside;
}

function pieceOf(text: string, before: Piece | undefined, after: string | undefined): Piece {
  if (/^\d/.test(text)) return { kind: 'number', text };
  if (/^[A-Za-z]/.test(text)) {
    if (after === '(') return { kind: 'text', text };
    const [letter = '', ...low] = text.split('_');
    return { kind: 'symbol', symbol: text, letter, low: low.join(',\u2009') };
  }
  if (text === ',') return { kind: 'text', text: ', ' };
  if (/^[()]$/.test(text)) return { kind: 'text', text };
  const isSign =
    text === '-' &&
    (before === undefined || before.kind === 'operator' || /^[(,]/.test('text' in before ? before.text : ''));
  return isSign ? { kind: 'text', text: '−' } : { kind: 'operator', text: written[text] ?? text };
}
