/**
 * Plain arithmetic typed in place of a number, as `=30*2` or `90+30`: computed once. Numbers, + − × ÷ and brackets, and
 * nothing else: no names, no functions, nothing that runs.
 */
import { foldNumberText, readDecimal } from './read-decimal.ts';

const longest = 200;

/**
 * What the arithmetic in a text comes to, to twelve figures; null where the text is none, or has no result.
 *
 * With `=` before it all four operations are taken. Without, only sums and products: `60-95` may be a range and `1/2` a
 * date. Numbers are read by the locale.
 */
export function plainArithmetic(text: string, locale: string): number | null {
  const folded = foldNumberText(text, locale).replace(/[×·]/g, '*').replace(/÷/g, '/');
  const isFormula = folded.startsWith('=');
  const body = isFormula ? folded.slice(1) : folded;
  if (body.length > longest || !/^[\d.,' +\-*/()]+$/.test(body)) return null;
  if (!isFormula && !/^[^-/()]*\d[^-/()]*[+*][^-/()]*\d/.test(body)) return null;
  if (!isFormula && /[-/()]/.test(body)) return null;
  const tokens = body.match(/\d[\d.,']*|[.,]\d+|[+\-*/()]/g) ?? [];
  if (tokens.join('') !== body.replaceAll(' ', '')) return null;
  let at = 0;

  const factor = (): number | null => {
    const token = tokens[at++];
    if (token === '-' || token === '+') {
      const value = factor();
      return value === null ? null : token === '-' ? -value : value;
    }
    if (token === '(') {
      const value = sum();
      return tokens[at++] === ')' ? value : null;
    }
    if (token === undefined || !/\d/.test(token)) return null;
    const read = readDecimal(token, locale);
    return 'decimal' in read ? Number(read.decimal) : null;
  };
  const chain = (operand: () => number | null, signs: string): number | null => {
    let value = operand();
    while (value !== null && at < tokens.length && signs.includes(tokens[at] as string)) {
      const sign = tokens[at++];
      const other = operand();
      if (other === null) return null;
      if (sign === '+') value += other;
      else if (sign === '-') value -= other;
      else if (sign === '*') value *= other;
      else value /= other;
    }
    return value;
  };
  const product = (): number | null => chain(factor, '*/');
  const sum = (): number | null => chain(product, '+-');

  const value = sum();
  return value === null || at < tokens.length || !Number.isFinite(value)
    ? null
    : Number(value.toPrecision(12));
}
