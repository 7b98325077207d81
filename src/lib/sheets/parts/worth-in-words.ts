/** What it would be worth to know more before an option is chosen, in sentences. */
import type { WorthOfKnowing } from '#lib/calc/what-if/draws.ts';
import type { InputWorth } from '#lib/calc/uncertainty/value-of-information.ts';
import { formatMoney } from '#lib/numbers/format-number.ts';
import { yearsInWords } from '#lib/numbers/years-in-words.ts';

/** Whether it is more than what a column of shuffled values would give. */
export const isToldApart = ({ worth, noise }: InputWorth): boolean => worth > noise;

/** The option that is best on average, what it would be worth to know everything, and which figure most of that hangs on. */
export function worthInWords(
  { options, best, worthOfAll, inputs }: WorthOfKnowing,
  {
    optionName,
    nameOf,
    look: { currency, locale, appraisalYears }
  }: {
    readonly optionName: (id: string) => string;
    readonly nameOf: (paths: readonly string[]) => string;
    readonly look: { readonly currency: string; readonly locale: string; readonly appraisalYears: number };
  }
): string {
  const money = (amount: number): string => formatMoney(amount, { currency, locale });
  const name = optionName(best);
  if (worthOfAll === 0)
    return `By net present value ${name} is the best of ${options.length} options in every draw: no figure with a range has to be known better before the choice.`;
  const all = `By net present value ${name} is the best of ${options.length} options on average, but not in every draw. To know every figure with a range before choosing would be worth ${money(worthOfAll)} over ${yearsInWords(appraisalYears, locale)}: more than that is not to be paid for measurements.`;
  const [most] = inputs.filter(isToldApart).toSorted((a, b) => b.worth - a.worth);
  return most === undefined
    ? `${all} No single figure by itself is told apart from worth nothing.`
    : `${all} Of single figures, ${nameOf(most.paths)} deserves a measurement first: to know it alone is worth ${money(most.worth)}.`;
}
