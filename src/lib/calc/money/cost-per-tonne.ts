/** What it costs to avoid a tonne of emissions, where avoiding it costs anything. */
import { leastAvoidedKg } from '../limits.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { Decimal } from './decimal.ts';
import { noFigure } from './no-figure.ts';

const avoidedInYears = formula<{ avoidedKg: number; years: number }>({
  id: 'money.avoided-in-years',
  yields: 'Emissions avoided while the same machines stand in the same theatres',
  words: 'What such a year avoids, times the number of such years in the appraisal.',
  expression: 'm * n',
  inputs: {
    avoidedKg: { symbol: 'm', unit: 'kg CO2e', words: 'emissions avoided in such a year' },
    years: { symbol: 'n', unit: '1', words: 'such years' }
  },
  unit: 'kg CO2e',
  source: 'definition',
  compute: ({ avoidedKg, years }) => avoidedKg * years
});

const avoidedInAll = formula<{ parts: readonly number[] }>({
  id: 'money.avoided-over-appraisal',
  yields: 'Emissions avoided over the appraisal',
  words:
    'What is avoided in the years of each standing of the machines, added up. Tonnes are not discounted.',
  expression: 'sum(m)',
  inputs: { parts: { symbol: 'm', unit: 'kg CO2e', words: 'emissions avoided' } },
  unit: 'kg CO2e',
  source: 'definition',
  compute: ({ parts }) => parts.reduce((sum, part) => sum + part, 0)
});

/** Emissions avoided over the appraisal, kg CO2e, undiscounted: of years that are alike, each kind times its number. */
export const avoidedOverAppraisal = (
  r: Reckoner,
  alike: readonly { readonly avoidedKg: Quantity; readonly years: Quantity }[]
): Quantity => r.apply(avoidedInAll, { parts: alike.map((years) => r.apply(avoidedInYears, years)) });

export const costPerTonneFormula = formula<{ netPresentValue: Decimal; avoidedKg: number }, Decimal>({
  id: 'money.cost-per-tonne-avoided',
  yields: 'Cost per tonne avoided',
  words:
    'The net present value with the sign of a cost, over the tonnes avoided in the appraisal. No carbon price is in it.',
  expression: '-N / (m / 1000)',
  inputs: {
    netPresentValue: { symbol: 'N', unit: 'currency', words: 'net present value' },
    avoidedKg: { symbol: 'm', unit: 'kg CO2e', words: 'emissions avoided over the appraisal' }
  },
  unit: 'currency/(tonne CO2e)',
  source: 'definition',
  compute: ({ netPresentValue, avoidedKg }) =>
    new Decimal(0).minus(netPresentValue.div(new Decimal(avoidedKg).div(1000)))
});

/**
 * Cost per tonne avoided = −NPV / Σ tonnes avoided over the appraisal.
 *
 * null where nothing is avoided, and where money is saved as well: a ratio below 0 ranks nothing, as it looks better with
 * fewer tonnes. Saving and tonnes are then read side by side (S. Taylor, Energy Policy 48 (2012), 430).
 */
export function costPerTonneAvoided(
  r: Reckoner,
  { netPresentValue, avoidedKg }: { netPresentValue: Quantity<Decimal>; avoidedKg: Quantity }
): Quantity<Decimal | null> {
  const none = (id: string, words: string) =>
    noFigure(
      r,
      { id, yields: 'Cost per tonne avoided', words, unit: 'currency/(tonne CO2e)' },
      { 'emissions avoided over the appraisal': avoidedKg, 'net present value': netPresentValue }
    );
  if (!(r.value(avoidedKg) > leastAvoidedKg))
    return none(
      'money.no-tonne-avoided',
      'No emissions are avoided, so there is no cost for a tonne of them.'
    );
  if (r.value(netPresentValue).gt(0))
    return none(
      'money.saves-with-each-tonne',
      'Money is saved as well as emissions, so that a tonne costs nothing. The saving over the tonnes would rank nothing: fewer tonnes would look better.'
    );
  return r.apply(costPerTonneFormula, { netPresentValue, avoidedKg });
}
