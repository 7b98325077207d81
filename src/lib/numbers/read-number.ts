/** Reads a physical number as typed or pasted: by locale, with or without its unit. */
import { defaultLocale } from './locale-marks.ts';
import { foldNumberText, readDecimal, splitNumber } from './read-decimal.ts';
import { convert, familyOf, foldUnit, unitIn } from './unit-families.ts';

export type ReadNumber = { readonly value: number } | { readonly sentence: string };

export interface NumberWanted {
  /** The unit in which the value is stored, such as `min` or `L/min`; empty for a pure number. */
  readonly unit: string;
  /** A language tag; the browser's own, or `en-GB` outside a browser, where left out. */
  readonly locale?: string;
  /** Only whole numbers (cases, theatres, units). */
  readonly integer?: boolean;
}

/**
 * The number in `text`, in the wanted unit, or a sentence that says what is allowed.
 *
 * Takes 1 234,5 and 1,234.5 and 1'234.5; an undecided `1,234` goes by the locale (the rule stands in `read-decimal.ts`).
 * A unit typed with the number is converted (“1.25 h” is 75 where min are wanted, “500 mL/min” is 0.5 where L/min are);
 * hours with minutes may be typed as 1h15, 1 h 15 min or 1:15. A unit that measures something else is refused. No range
 * is checked here. An empty text is refused: whether a cell may be empty is the caller's to know.
 */
export function readNumber(text: string, wanted: NumberWanted): ReadNumber {
  const locale = wanted.locale ?? defaultLocale();
  const folded = foldNumberText(text, locale);
  const refuse = (problem: string): ReadNumber => ({
    sentence: `“${shorten(text)}” ${problem}. ${allowed(wanted)}`
  });
  if (folded === '') return { sentence: `Nothing is given. ${allowed(wanted)}` };

  const family = familyOf(wanted.unit);
  const target = unitIn(family, wanted.unit);

  const minutesUnit = unitIn(family, 'min');
  const minutes = minutesUnit === null ? null : clockMinutes(folded);
  if (minutes !== null && minutesUnit !== null && target !== null) {
    if (Number.isNaN(minutes)) return refuse('has more than 59 minutes after its hours');
    return whole(convert(minutes, { from: minutesUnit, to: target }), wanted, refuse);
  }

  const split = splitNumber(folded);
  if (split === null) return refuse('is not a number');
  const read = readDecimal(split.number, locale);
  if ('problem' in read) return refuse(read.problem);
  const value = Number(read.decimal);
  if (split.rest === '') return whole(value, wanted, refuse);
  if (target === null) {
    const own = foldUnit(wanted.unit);
    const typed = foldUnit(split.rest);
    const same = own !== '' && (typed === own || typed === own.split('/')[0]);
    return same
      ? whole(value, wanted, refuse)
      : refuse('has something after its number that does not belong here');
  }
  const from = unitIn(family, split.rest);
  if (from === null) return refuse(`has something other than ${target.symbol} after its number`);
  return whole(convert(value, { from, to: target }), wanted, refuse);
}

function whole(value: number, wanted: NumberWanted, refuse: (problem: string) => ReadNumber): ReadNumber {
  return wanted.integer === true && !Number.isInteger(value) ? refuse('is not a whole number') : { value };
}

/** Minutes of 1h15, 1 h 15 min, 1:15 or 1:15:30; null where the text is not of that form; NaN where the parts overflow. */
function clockMinutes(folded: string): number | null {
  const match =
    /^(\d{1,4})\s*(?:h|hrs?|hours?)\s*(\d{1,3})\s*(?:m|mins?|minutes?)?\.?$/i.exec(folded) ??
    /^(\d{1,4}):(\d{1,2})(?::(\d{2}))?$/.exec(folded);
  if (match === null) return null;
  const [hours = 0, minutes = 0, seconds = 0] = match.slice(1).map((part) => Number(part ?? 0));
  return minutes > 59 || seconds > 59 ? Number.NaN : hours * 60 + minutes + seconds / 60;
}

function allowed({ unit, integer }: NumberWanted): string {
  const number = integer === true ? 'a whole number' : 'a number';
  const family = familyOf(unit);
  const target = unitIn(family, unit);
  // A count that is no unit of its own, as “a year”.
  if (unit.startsWith('a ')) return `Write ${number}: how many ${unit}.`;
  if (target === null) return unit === '' ? `Write ${number}.` : `Write ${number} in ${unit}.`;
  const others = family.filter((each) => each !== target).map((each) => each.symbol);
  const clock = unitIn(family, 'min') === null ? '' : ', or 1h15';
  return `Write ${number} in ${target.symbol}, or one followed by ${others.join(', ').replace(/, ([^,]*)$/, ' or $1')}${clock}.`;
}

const shorten = (text: string): string => (text.length > 40 ? `${text.slice(0, 39)}…` : text);
