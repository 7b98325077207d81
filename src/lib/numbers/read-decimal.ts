/**
 * A number as people write it, to plain decimal text, digit for digit: no binary fraction comes between.
 *
 * **Which mark is which.** Spaces and apostrophes group, and stand before threes of digits. Where both `.` and `,` occur,
 * the last is the decimal mark. A mark that occurs more than once groups. A single mark is the decimal mark, unless it
 * stands as in `1,234` (one to three digits before it, the first not 0, and just three after it): then the locale
 * decides, and where the mark is neither of that locale's, the text is refused with both readings. So `1,234` is 1234
 * in en-GB, 1.234 in de-DE, and refused in de-CH; `1,5`, `0,125` and `1,2345` read the same everywhere.
 */
import { decimalText, exactDecimal } from './decimal-text.ts';
import { localeMarks, plainMark } from './locale-marks.ts';

export type ReadDecimal = { readonly decimal: string } | { readonly problem: string };

const longestText = 60;

/** Folds what means the same: full-width and local digits, kinds of space, minus and apostrophe; drops direction marks. */
export function foldNumberText(text: string, locale: string): string {
  const { digits } = localeMarks(locale);
  let folded = text
    .replace(/[\uff01-\uff5e]/g, (wide) => String.fromCharCode(wide.charCodeAt(0) - 0xfee0))
    .replace(/[\u200e\u200f\u061c\u2066-\u2069]/g, '')
    .replace(/[\s\u00a0\u202f\u2009\u3000]+/g, ' ')
    .replace(/[\u2212\u2013\ufe63](?=\s*\p{Nd}|\s*\p{Sc})/gu, '-')
    .replace(/[\u066b\u066c\u2019\u02bc]/g, plainMark)
    .trim();
  digits.forEach((local, digit) => {
    if (local !== String(digit)) folded = folded.replaceAll(local, String(digit));
  });
  return folded;
}

/** The number at the start of folded text, and what follows it (a unit, or nothing). */
export function splitNumber(folded: string): { readonly number: string; readonly rest: string } | null {
  const match =
    /^(\(?\s*[+-]?\s*(?:\d[\d.,' ]*|[.,]\d[\d.,' ]*)(?:(?<=\d)e[+-]?\d{1,3}(?![\d.,]))?\)?)(.*)$/i.exec(
      folded
    );
  if (match === null) return null;
  return { number: (match[1] ?? '').trim(), rest: (match[2] ?? '').trim() };
}

/**
 * Reads a bare number (no unit, no currency) in the way that the locale writes it, see the rule above. Takes a sign, a
 * figure in brackets as negative, and `1.2E+05` as programs print it. Returns plain decimal text with the decimals that
 * were typed (`118.00`), or a clause that says what is wrong.
 */
export function readDecimal(text: string, locale: string): ReadDecimal {
  const folded = foldNumberText(text, locale);
  if (folded.length > longestText) return { problem: 'is too long for a number' };
  const bracketed = /^\((.*)\)$/.exec(folded);
  const match = /^([+-]?)\s*([\d.,' ]+?)(?:e([+-]?\d{1,3}))?$/i.exec((bracketed?.[1] ?? folded).trim());
  if (match === null) return { problem: 'is not a number' };
  const [, sign = '', body = '', exponent] = match;
  if (bracketed !== null && sign !== '') return { problem: 'is not a number' };
  const plain = plainDigits(body, locale);
  if ('problem' in plain) return plain;
  const negative = sign === '-' || bracketed !== null;
  const signed = (negative && /[1-9]/.test(plain.decimal) ? '-' : '') + plain.decimal;
  if (exponent === undefined) return { decimal: signed };
  return Math.abs(Number(exponent)) > 30
    ? { problem: 'is out of any range' }
    : { decimal: decimalText(exactDecimal(`${signed}e${exponent}`)) };
}

function plainDigits(body: string, locale: string): ReadDecimal {
  const marks = body.match(/[.,]/g) ?? [];
  const kinds = new Set(marks);
  const spaced = /[' ]/.test(body);
  let decimalMark: string | null = null;
  if (kinds.size === 2) {
    decimalMark = marks.at(-1) ?? null;
  } else if (marks.length === 1) {
    decimalMark = marks[0] ?? null;
    const thousandsLike = !spaced && /^[1-9]\d{0,2}[.,]\d{3}$/.test(body);
    if (thousandsLike) {
      const { decimal, group } = localeMarks(locale);
      const grouped = decimalMark === group;
      if (!grouped && decimalMark !== decimal) {
        const [whole = '', fraction = ''] = body.split(/[.,]/);
        return {
          problem: `could mean ${whole}${fraction} or ${whole}${decimal}${fraction}; write one of these`
        };
      }
      if (grouped) decimalMark = null;
    }
  }
  const cut = decimalMark === null ? -1 : body.lastIndexOf(decimalMark);
  const whole = cut < 0 ? body : body.slice(0, cut);
  const fraction = cut < 0 ? '' : body.slice(cut + 1);
  const wellGrouped = /^\d*$/.test(whole) || /^\d{1,3}(?:([.,' ])\d{2,3})(?:\1\d{2,3})*$/.test(whole);
  const lastGroupIsThree = /^\d*$/.test(whole) || /[^\d]\d{3}$/.test(whole);
  const decimalsAreDigits = cut < 0 || /^\d+$/.test(fraction);
  if (!wellGrouped || !lastGroupIsThree || !decimalsAreDigits || whole + fraction === '') {
    return { problem: 'is not a number' };
  }
  const integer = whole.replace(/\D/g, '').replace(/^0+(?=\d)/, '') || '0';
  return { decimal: fraction === '' ? integer : `${integer}.${fraction}` };
}
