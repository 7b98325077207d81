/** Alternatives by outlay: which step from the one to the next, dearer one pays. */
import type { Decimal } from '../money/decimal.ts';
import { addUp } from '../money/sum-of-amounts.ts';
import type { YearFactors } from '../money/time-factors.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Alternative } from './alternatives.ts';
import { distinctBy } from './alternatives.ts';
import { Step } from './step.ts';

export const presentValueOfOutlay = formula<
  { outlays: readonly Decimal[]; discounts: readonly Decimal[] },
  Decimal
>({
  id: 'attribution.present-value-of-outlay',
  yields: 'Present value of the outlay',
  words: 'The outlays beyond today’s practice, each times the discount factor of its year, added up.',
  expression: 'dot(I, d)',
  inputs: {
    outlays: { symbol: 'I', unit: 'currency', words: 'outlays, year by year' },
    discounts: { symbol: 'd', unit: '1', words: 'discount factors, year by year' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ outlays, discounts }) =>
    addUp(outlays.flatMap((outlay, year) => (outlay.isZero() ? [] : [outlay.times(discounts[year] ?? 0)])))
});

export interface MoneyRow {
  readonly id: string;
  readonly sameAs: readonly string[];
  readonly presentValueOfOutlay: Quantity<Decimal>;
  /** null: today, from which the list starts. */
  readonly step: {
    readonly against: string;
    readonly figures: Step;
    readonly npvIsEnough: boolean;
    readonly paybackIsWithinLimit: boolean;
    readonly isTaken: boolean;
  } | null;
}

/**
 * Exclusive alternatives in the order of their outlay's present value (of equal ones, the higher net present value
 * first), each compared with the last one taken. A step is taken where its net present value is at least 0 and its
 * payback within the limit; a step that changes no cash flow has no payback.
 *
 * The method of engineering economics for exclusive alternatives: each is judged by its increment over the next best,
 * never by its own rate of return or payback.
 * @param alternatives today first.
 */
export function moneyIncrements(
  r: Reckoner,
  alternatives: readonly Alternative[],
  { factors, paybackLimitYears }: { factors: readonly YearFactors[]; paybackLimitYears: number }
): MoneyRow[] {
  const outlays = new Map(
    alternatives.map(({ id, run }) => [
      id,
      r.apply(presentValueOfOutlay, {
        outlays: run.years.map(({ investment }) => investment),
        discounts: factors.map(({ discount }) => discount)
      })
    ])
  );
  const outlayOf = ({ id }: Alternative) => outlays.get(id) as Quantity<Decimal>;
  const [today, ...others] = distinctBy(alternatives, (alternative) => [
    r.value(outlayOf(alternative)).toNumber(),
    r.value(alternative.run.npv).toNumber(),
    r.value(alternative.run.co2eAvoidedOverAppraisalKg)
  ]);
  if (today === undefined) return [];
  others.sort(
    ({ alternative: a }, { alternative: b }) =>
      r.value(outlayOf(a)).cmp(r.value(outlayOf(b))) ||
      r.value(b.run.npv).cmp(r.value(a.run.npv)) ||
      r.value(b.run.co2eAvoidedOverAppraisalKg) - r.value(a.run.co2eAvoidedOverAppraisalKg)
  );
  let last = today.alternative;
  return [today, ...others].map(({ alternative, sameAs }): MoneyRow => {
    const row = { id: alternative.id, sameAs, presentValueOfOutlay: outlayOf(alternative) };
    if (alternative === today.alternative) return { ...row, step: null };
    const figures = new Step(r, { from: last.run, to: alternative.run, factors });
    const paybackYears = r.value(figures.simplePaybackYears);
    const npvIsEnough = !r.value(figures.npv).lt(0);
    const paybackIsWithinLimit =
      !figures.isNothing && paybackYears !== null && paybackYears <= paybackLimitYears;
    const isTaken = npvIsEnough && paybackIsWithinLimit;
    const against = last.id;
    if (isTaken) last = alternative;
    return { ...row, step: { against, figures, npvIsEnough, paybackIsWithinLimit, isTaken } };
  });
}
