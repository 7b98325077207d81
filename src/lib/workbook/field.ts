/**
 * A field of the workbook: what it is called, its unit and what it may hold. Schema, grid columns, file headers and the
 * sentences on bad input are all made from these records, so that a limit stands in one place.
 */
import { formatForEditing } from '#lib/numbers/format-number.ts';
import { quotedNumber } from '#lib/numbers/quoted-number.ts';

interface FieldBase {
  /** Heading of the column. */
  readonly title: string;
  /** One sentence: what it is, and what it is for. */
  readonly words: string;
  /** True where what stands beside the answer alone rests on it, as theatre air does: it is offered no range. */
  readonly besideTheAnswer?: true;
}

export interface NumberField extends FieldBase {
  readonly kind: 'number';
  /** `''` for a pure number. */
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  /** True where `min` itself is not allowed. */
  readonly aboveMin?: true;
  /** True where `max` itself is not allowed. */
  readonly belowMax?: true;
  readonly whole?: true;
  /** True where the cell may be left empty; what then acts is said in `empty`. */
  readonly optional?: true;
  /** What an empty cell means, e.g. `the rest of the case`. */
  readonly empty?: string;
}

/** Money: a decimal number as text. */
export interface MoneyField extends FieldBase {
  readonly kind: 'money';
  /** What the price is for, e.g. `per kg`; '' where that is plain. */
  readonly per: string;
  /** True where a negative amount has a meaning (a credit). */
  readonly signed?: true;
}

export interface TextField extends FieldBase {
  readonly kind: 'text';
  readonly maxLength: number;
}

export interface ChoiceField extends FieldBase {
  readonly kind: 'choice';
  /** Fixed options (id and label), or the list of the workbook whose entries may be chosen. */
  readonly options:
    readonly ChoiceOption[] | 'machines' | 'flowPlans' | 'absorbents' | 'theatreGroups' | 'caseMix';
  /** True where the workbook stores the option’s id as a number. */
  readonly numeric?: true;
  readonly optional?: true;
  readonly empty?: string;
}

export interface ChoiceOption {
  readonly id: string;
  readonly label: string;
}

export interface FlagField extends FieldBase {
  readonly kind: 'flag';
}

/** A few whole numbers in one cell, such as units bought in this year and the next ones. */
export interface ListField extends FieldBase {
  readonly kind: 'list';
  readonly max: number;
  readonly maxLength: number;
  readonly empty: string;
}

export type Field = NumberField | MoneyField | TextField | ChoiceField | FlagField | ListField;

/**
 * The least amount that a number other than 0 may have. In the units of the cells (minutes, litres a minute, per cent,
 * kilograms) a millionth is less than anybody can measure, and from some 1e-150 on squares and ratios leave the range of
 * binary numbers, so that figures would be none.
 */
export const leastNumber = 1e-6;

export const isTooNearZero = (value: unknown): boolean =>
  typeof value === 'number' && value !== 0 && Math.abs(value) < leastNumber;

/** What is said of a number too near to 0. */
export const nearZeroSentence = (locale?: string): string =>
  `A number other than 0 has to be at least ${quotedNumber(leastNumber, locale)} away from it.`;

const decimalText = /^-?\d{1,15}(\.\d{1,10})?$/;

/** How a value that was given is quoted in a sentence; a number by `locale`, or as a program prints it without one. */
export function quoted(value: unknown, locale?: string): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'an empty value';
  if (typeof value === 'string') return `“${value.length > 60 ? `${value.slice(0, 57)}…` : value}”`;
  if (typeof value === 'number') return quotedNumber(value, locale);
  if (typeof value === 'boolean') return String(value);
  return Array.isArray(value) ? 'a list' : 'an object';
}

/** What a field takes, as the end of a sentence: `a number from 0 to 100 %`; its numbers as in `quoted`. */
export function allowed(field: Field, locale?: string): string {
  const written = (limit: number): string => quotedNumber(limit, locale);
  switch (field.kind) {
    case 'number': {
      const noun = field.whole ? 'a whole number' : 'a number';
      const from = field.aboveMin ? `above ${written(field.min)}` : `from ${written(field.min)}`;
      const to = field.belowMax ? `to below ${written(field.max)}` : `to ${written(field.max)}`;
      const unit = field.unit === '' ? '' : ` ${field.unit}`;
      return `${noun} ${from} ${to}${unit}${field.optional ? ', or an empty cell' : ''}`;
    }
    case 'money':
      return field.signed ? 'an amount of money' : 'an amount of money of 0 or more';
    case 'text':
      return `a text of 1 to ${written(field.maxLength)} characters`;
    case 'choice':
      return Array.isArray(field.options)
        ? `one of ${(field.options as readonly ChoiceOption[]).map((option) => option.id).join(', ')}${field.optional ? ', or an empty cell' : ''}`
        : `the id of an entry in ${field.options}`;
    case 'flag':
      return 'yes or no';
    case 'list':
      return `whole numbers from 0 to ${written(field.max)}, at most ${written(field.maxLength)} of them, or an empty cell`;
  }
}

const fits = (field: Field, value: unknown): boolean => {
  if (value === null)
    return (
      field.kind === 'list' ||
      ((field.kind === 'number' || field.kind === 'choice') && field.optional === true)
    );
  switch (field.kind) {
    case 'number':
      return (
        typeof value === 'number' &&
        Number.isFinite(value) &&
        !isTooNearZero(value) &&
        (field.aboveMin ? value > field.min : value >= field.min) &&
        (field.belowMax ? value < field.max : value <= field.max) &&
        (!field.whole || Number.isInteger(value))
      );
    case 'money':
      return (
        typeof value === 'string' &&
        decimalText.test(value) &&
        (field.signed === true || !value.startsWith('-'))
      );
    case 'text':
      return typeof value === 'string' && value.trim() !== '' && value.length <= field.maxLength;
    case 'choice':
      return (
        typeof value === (field.numeric ? 'number' : 'string') &&
        (typeof field.options === 'string' || field.options.some((option) => option.id === String(value)))
      );
    case 'flag':
      return typeof value === 'boolean';
    case 'list':
      return (
        Array.isArray(value) &&
        value.length > 0 &&
        value.length <= field.maxLength &&
        value.every((each) => Number.isInteger(each) && each >= 0 && each <= field.max)
      );
  }
};

/**
 * Why a value does not fit a field, as a sentence with the value and what is allowed; null where it fits.
 * @param locale of whoever typed the value: numbers are written as they are typed there. Left out for a value that a
 * program wrote, such as one in a workbook's file; its numbers are printed plainly.
 */
export function refuse(field: Field, value: unknown, locale?: string): string | null {
  if (fits(field, value)) return null;
  const isAmount = field.kind === 'money' && typeof value === 'string' && decimalText.test(value);
  const given =
    isAmount && locale !== undefined ? `“${formatForEditing(value, { locale })}”` : quoted(value, locale);
  const nearZero = field.kind === 'number' && isTooNearZero(value) ? ` ${nearZeroSentence(locale)}` : '';
  return `${field.title}: ${given} was given; allowed is ${allowed(field, locale)}.${nearZero}`;
}
