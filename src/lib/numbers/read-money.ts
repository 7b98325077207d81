/** Reads an amount of money as typed or pasted, to decimal text: it never becomes a binary fraction. */
import { defaultLocale } from './locale-marks.ts';
import { foldNumberText, readDecimal } from './read-decimal.ts';

export type ReadMoney = { readonly amount: string } | { readonly sentence: string };

/** Ways to write a currency that the platform's tables do not give. Common practice, no source. */
const otherSigns: Readonly<Record<string, readonly string[]>> = {
  CHF: ['Fr.', 'Fr', 'SFr.', 'SFr'],
  SEK: ['kr', 'kr.', ':-'],
  NOK: ['kr', 'kr.', ',-'],
  DKK: ['kr', 'kr.'],
  EUR: ['Euro'],
  GBP: ['£']
};

/**
 * The amount in `text` as plain decimal text with the decimals that were typed (`118.50`), or a sentence that says what
 * is allowed. The sign or code of `currency` (ISO 4217) may stand before or after the number; another currency's is
 * refused, since nothing here knows a rate. Marks by locale as in `readNumber`; brackets mean negative; a whole amount
 * may end in `.–` or `,-`. An empty text is refused; no range is checked.
 */
export function readMoney(
  text: string,
  wanted: { readonly currency: string; readonly locale?: string }
): ReadMoney {
  const locale = wanted.locale ?? defaultLocale();
  const allowed = `Write an amount in ${wanted.currency}, such as ${example(locale)}.`;
  const folded = foldNumberText(text, locale);
  if (folded === '') return { sentence: `Nothing is given. ${allowed}` };
  const refuse = (problem: string): ReadMoney => ({
    sentence: `“${text.length > 40 ? `${text.slice(0, 39)}…` : text}” ${problem}. ${allowed}`
  });

  let bare = folded;
  for (const sign of signsOf(wanted.currency, locale)) {
    const at = bare.toLowerCase().indexOf(sign.toLowerCase());
    if (at < 0) continue;
    bare = `${bare.slice(0, at)} ${bare.slice(at + sign.length)}`.trim();
    break;
  }
  bare = bare
    .replace(/[.,][-–—]+$/, '')
    .replace(/^([+-])\s+/, '$1')
    .replace(/^\(\s*|\s*\)$/g, (bracket) => bracket.trim());
  if (/\p{Sc}|\p{L}{2,}/u.test(bare)) {
    return refuse(
      /^[^\p{L}\p{Sc}]*\d/u.test(bare) || /\p{Sc}/u.test(bare)
        ? 'names another currency or a unit'
        : 'is not an amount'
    );
  }
  const read = readDecimal(bare, locale);
  return 'problem' in read ? refuse(read.problem) : { amount: read.decimal };
}

const example = (locale: string): string =>
  new Intl.NumberFormat(locale, { minimumFractionDigits: 2 }).format(1234.5);

/** All ways to write the currency, the longest first, so that `US$` goes before `$`. */
function signsOf(currency: string, locale: string): readonly string[] {
  const signs = new Set<string>([currency, ...(otherSigns[currency] ?? [])]);
  for (const language of [locale, 'en-GB']) {
    for (const currencyDisplay of ['symbol', 'narrowSymbol'] as const) {
      const parts = new Intl.NumberFormat(language, {
        style: 'currency',
        currency,
        currencyDisplay
      }).formatToParts(1);
      const sign = parts.find((part) => part.type === 'currency')?.value;
      if (sign !== undefined) signs.add(foldNumberText(sign, locale));
    }
  }
  return [...signs].sort((a, b) => b.length - a.length);
}
