import { describe, expect, test } from 'vitest';
import type { Piece } from '#lib/sheets/working/typeset.ts';
import { typeset } from '#lib/sheets/working/typeset.ts';

/** The pieces as marked text: `V[d]` for a low letter, `{…}` for a high one. */
const marked = (pieces: readonly Piece[]): string =>
  pieces
    .map((piece) => {
      switch (piece.kind) {
        case 'symbol':
          return piece.low === '' ? piece.letter : `${piece.letter}[${piece.low}]`;
        case 'operator':
          return ` ${piece.text} `;
        case 'high':
          return `{${marked(piece.pieces)}}`;
        default:
          return piece.text;
      }
    })
    .join('');

describe('a formula as it is set', () => {
  test.each([
    ['1000 * V_d / v', '1000 · V[d] / v'],
    ['M * 10 ^ (a * (y - 40))', 'M · 10{a · (y − 40)}'],
    ['c * W ^ b', 'c · W{b}'],
    ['x ^ -2 + 1', 'x{−2} + 1'],
    ['max(0, m - x / 100 / N) * M', 'max(0, m − x / 100 / N) · M'],
    ['-(a - b)', '−(a − b)'],
    ['a >= 0 ? -b : c_1_2', 'if a ≥ 0 then −b else c[1,\u20092]'],
    ['(V + (r > 0 ? 0 : s)) / 2', '(V + (if r > 0 then 0 else s)) / 2'],
    ['1e-9 * T_0', '1e-9 · T[0]'],
    ['sum(x)', 'sum(x)']
  ])('%s', (expression, shown) => {
    expect(marked(typeset(expression))).toBe(shown);
  });
});
