/** A change from the baseline, signed and named, so that neither colour nor a bare sign carries the meaning. */
import { formatMass, formatMoney, notGiven } from './format-number.ts';
import { defaultLocale } from './locale-marks.ts';

export interface ChangeInWords {
  /** Less than the baseline, the same, or more. */
  readonly direction: 'less' | 'same' | 'more' | 'not-given';
  /** `saves`, `costs more`, `no change`; or `avoids`, `adds`, `no change`. */
  readonly word: string;
  /** The change of cost or mass itself: `−€12,300`, `+€450`. */
  readonly signed: string;
  /** Both in one: `saves €12,300`, `costs €450 more`. */
  readonly text: string;
}

const unknown: ChangeInWords = {
  direction: 'not-given',
  word: 'not given',
  signed: notGiven,
  text: notGiven
};
const minus = '\u2212';

/** A saving of money (positive: cheaper than the baseline), decimal text or number. */
export function savingInWords(
  saving: string | number | null,
  look: { readonly currency: string; readonly locale?: string; readonly cents?: boolean }
): ChangeInWords {
  if (saving === null) return unknown;
  const size = Number(saving);
  const amount = formatMoney(typeof saving === 'string' ? saving.replace(/^-/, '') : Math.abs(size), look);
  if (size === 0) return { direction: 'same', word: 'no change', signed: amount, text: 'no change' };
  return size > 0
    ? { direction: 'less', word: 'saves', signed: minus + amount, text: `saves ${amount}` }
    : { direction: 'more', word: 'costs more', signed: `+${amount}`, text: `costs ${amount} more` };
}

/** A mass kept out of the air (positive: less than the baseline), kg. */
export function avoidedInWords(
  avoidedKg: number | null,
  { of, locale = defaultLocale() }: { readonly of?: string; readonly locale?: string } = {}
): ChangeInWords {
  if (avoidedKg === null) return unknown;
  const amount = formatMass(Math.abs(avoidedKg), { locale, ...(of === undefined ? {} : { of }) });
  if (avoidedKg === 0) return { direction: 'same', word: 'no change', signed: amount, text: 'no change' };
  return avoidedKg > 0
    ? { direction: 'less', word: 'avoids', signed: minus + amount, text: `avoids ${amount}` }
    : { direction: 'more', word: 'adds', signed: `+${amount}`, text: `adds ${amount}` };
}
