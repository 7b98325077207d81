import { plainArithmetic } from '#lib/numbers/plain-arithmetic.ts';
import { readMoney } from '#lib/numbers/read-money.ts';
import { readNumber } from '#lib/numbers/read-number.ts';
import type { ChoiceOption, Field } from './field.ts';
import { allowed, quoted, refuse } from './field.ts';
import { workbookFields } from './fields.ts';
import { choiceMeant, numberMeant } from './trade-words.ts';
import type { Workbook } from './workbook.ts';

/** A text read as a field's value, or the sentence that says why it cannot be. */
export type ReadText =
  | {
      readonly value: unknown;
      /** The arithmetic that was typed in place of a number, where it was. */
      readonly computedFrom?: string;
    }
  | { readonly sentence: string };

/**
 * A currency by its code of ISO 4217, in capitals or not. The codes are those that the platform knows, old ones included;
 * a workbook's file may have another, made where more are known.
 */
function readCurrency(text: string): ReadText {
  const code = text.toUpperCase();
  return Intl.supportedValuesOf('currency').includes(code)
    ? { value: code }
    : {
        sentence: `Currency: ${quoted(text)} was given; allowed is a code of ISO 4217, three letters such as EUR, GBP or CHF.`
      };
}

/** What a choice offers in this workbook: fixed options, or the entries of one of its lists. */
export function optionsOf(field: Field, workbook: Workbook): readonly ChoiceOption[] {
  if (field.kind === 'flag')
    return [
      { id: 'yes', label: 'Yes' },
      { id: 'no', label: 'No' }
    ];
  if (field.kind !== 'choice') return [];
  if (typeof field.options !== 'string') return field.options;
  return workbook[field.options].map(({ id, name }) => ({ id, label: name }));
}

const folded = (text: string): string => text.trim().toLocaleLowerCase('en-GB').replace(/\s+/g, ' ');

const yes = new Set(['yes', 'y', 'true', '1', 'x', '✓']);
const no = new Set(['no', 'n', 'false', '0', '']);

/**
 * A cell's text as the value of its field, by the locale's rules. An empty text is “not given”: null where the field may
 * be empty, refused elsewhere. A choice takes an id, a label, the beginning of just one label, or a word of the trade;
 * a number takes plain arithmetic, computed once.
 */
export function readText(
  text: string,
  { field, workbook, locale }: { field: Field; workbook: Workbook; locale: string }
): ReadText {
  const trimmed = text.trim();
  const checked = (value: unknown): ReadText => {
    const sentence = refuse(field, value, locale);
    return sentence === null ? { value } : { sentence };
  };
  if (trimmed === '' && field.kind !== 'flag') return checked(field.kind === 'text' ? '' : null);
  switch (field.kind) {
    case 'number': {
      const wanted = { unit: field.unit, locale, integer: field.whole === true };
      const sum = plainArithmetic(trimmed, locale);
      if (sum !== null) return { ...checked(sum), computedFrom: trimmed };
      const meant = numberMeant(field, trimmed, (bare) => {
        const number = readNumber(bare, { unit: '', locale });
        return 'value' in number ? number.value : null;
      });
      if (typeof meant === 'number') return checked(meant);
      const read = readNumber(meant, wanted);
      return 'value' in read ? checked(read.value) : { sentence: `${field.title}: ${read.sentence}` };
    }
    case 'money': {
      const sum = plainArithmetic(trimmed, locale);
      if (sum !== null)
        return { ...checked(sum.toFixed(10).replace(/(\.\d\d\d*?)0+$/, '$1')), computedFrom: trimmed };
      const read = readMoney(trimmed, { currency: workbook.currency, locale });
      return 'amount' in read ? checked(read.amount) : { sentence: `${field.title}: ${read.sentence}` };
    }
    case 'text':
      return field === workbookFields.currency ? readCurrency(trimmed) : checked(trimmed);
    case 'flag': {
      const given = folded(text);
      if (yes.has(given)) return { value: true };
      if (no.has(given)) return { value: false };
      return { sentence: `${field.title}: ${quoted(trimmed)} was given; allowed is yes or no.` };
    }
    case 'list': {
      const parts = trimmed.split(/[\s,;+]+/).filter((part) => part !== '');
      const numbers = parts.map((part) => (/^\d+$/.test(part) ? Number(part) : NaN));
      return numbers.some(Number.isNaN)
        ? { sentence: `${field.title}: ${quoted(trimmed)} was given; allowed are ${allowed(field, locale)}.` }
        : checked(numbers);
    }
    case 'choice': {
      const options = optionsOf(field, workbook);
      const given = folded(text);
      const byId = options.filter((option) => option.id === trimmed);
      const exact =
        byId.length > 0
          ? byId
          : options.filter((option) => folded(option.id) === given || folded(option.label) === given);
      const found =
        exact.length > 0 ? exact : options.filter((option) => folded(option.label).startsWith(given));
      const only = found.length === 1 ? found[0] : undefined;
      if (only !== undefined) return checked(field.numeric ? Number(only.id) : only.id);
      const meant = choiceMeant(field, trimmed);
      if (meant !== undefined) return checked(meant);
      return {
        sentence: `${field.title}: ${quoted(trimmed)} was given; allowed is one of ${options.map((option) => option.label).join(', ')}.`
      };
    }
  }
}
