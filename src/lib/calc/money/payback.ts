/**
 * When an investment has paid for itself: the time after which the sum of all flows stays at or above 0 to the end of
 * the appraisal. Within a year only what flows evenly is interpolated; purchases and all else that is paid once fall at
 * the year's end.
 */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Decimal } from './decimal.ts';
import { byYear } from './no-figure.ts';

/** A year as payback sees it, discounted or not. */
export interface PaybackYear<Amount = Quantity<Decimal>> {
  /** What has come together by the year's end and at it; what machines are worth at the end of the appraisal is left out. */
  readonly sum: Amount;
  /** What came in evenly over the year; the rest of it fell at its end. In year 0 nothing does. */
  readonly evenly: Amount;
}

/** A time during which the sum stands at 0 or above, and after which it falls below 0. */
export interface AheadForATime {
  readonly fromYears: Quantity;
  readonly untilYears: Quantity;
}

export const timeOfTurn = formula<{
  before: number;
  after: number;
  sumBefore: Decimal;
  evenly: Decimal;
}>({
  id: 'money.time-of-turn',
  yields: 'Time at which the sum passes 0',
  words: 'What is saved in the year comes in evenly: where between two year ends the sum reaches 0.',
  expression: 't_0 - (t_1 - t_0) * K_0 / s',
  inputs: {
    before: { symbol: 't_0', unit: 'year', words: 'year end before' },
    after: { symbol: 't_1', unit: 'year', words: 'year end after' },
    sumBefore: {
      symbol: 'K_0',
      unit: 'currency',
      words: 'cumulative cash flow at the former',
      testRange: [-10, -0.1]
    },
    evenly: { symbol: 's', unit: 'currency', words: 'saved between the two' }
  },
  unit: 'year',
  source: 'OpenStax, Principles of Finance (2022), chapter 16: payback',
  compute: ({ before, after, sumBefore, evenly }) =>
    sumBefore
      .div(evenly)
      .times(before - after)
      .plus(before)
      .toNumber()
});

const isBelow = (sum: Decimal): boolean => sum.isNegative() && !sum.isZero();
const isAbove = (sum: Decimal): boolean => sum.isPositive() && !sum.isZero();

/**
 * The payback in years from the decision, over the years 0 … T of the appraisal.
 *
 * 0 where the sum is never below 0 and something is saved. null where the sum stands below 0 at the end, and where
 * nothing is invested and nothing saved.
 */
export function payback(r: Reckoner, years: readonly PaybackYear[]): Quantity<number | null> {
  const last = years.length - 1;
  let somethingSaved = false;
  for (let year = last; year >= 0; year -= 1) {
    const after = r.value(at(years, year).sum);
    // From here to the end the sum is at 0 or above.
    if (isBelow(after)) return year === last ? notWithin(r, years) : turnWithin(r, years, year + 1);
    const before = sumJustBefore(r, years, year);
    if (isBelow(before)) return turnAtEndOf(r, years, year);
    somethingSaved ||= isAbove(after) || isAbove(before);
  }
  return somethingSaved ? atOnce(r, years) : nothingAtStake(r, years);
}

/**
 * The times during which the sum stands at 0 or above without staying there, in their order. None of them is a payback:
 * after each the sum falls below 0 again. A time in which it never rises above 0 is none.
 */
export function aheadForATime(r: Reckoner, years: readonly PaybackYear[]): AheadForATime[] {
  const found: AheadForATime[] = [];
  let from: (() => Quantity) | null = null;
  let below = false;
  let above = false;
  const pass = (sum: Decimal, time: () => Quantity): void => {
    if (below && !isBelow(sum)) {
      [below, from, above] = [false, time, false];
    } else if (!below && isBelow(sum)) {
      if (from !== null && above) found.push({ fromYears: from(), untilYears: time() });
      [below, from, above] = [true, null, false];
    }
    above ||= isAbove(sum);
  };
  years.forEach(({ sum }, year) => {
    if (year === 0) from = () => fromTheStart(r, years);
    else pass(sumJustBefore(r, years, year), () => turnWithin(r, years, year));
    pass(r.value(sum), () => turnAtEndOf(r, years, year));
  });
  return found;
}

/**
 * The lowest that the sum stands from a time on, to the end of the appraisal: at or above 0 exactly where the payback is
 * at that time or before, and so what is solved for when a payback is asked for. Past the appraisal its end stands.
 */
export function lowestSumFrom(years: readonly PaybackYear<Decimal>[], fromYears: number): Decimal {
  const last = years.length - 1;
  const from = Math.min(Math.max(fromYears, 0), last);
  const before = Math.floor(from);
  const { sum } = at(years, before);
  let lowest = before === last ? sum : sum.plus(at(years, before + 1).evenly.times(from - before));
  for (let year = before + 1; year <= last; year += 1) {
    const { sum: after, evenly } = at(years, year);
    for (const next of [at(years, year - 1).sum.plus(evenly), after]) if (next.lt(lowest)) lowest = next;
  }
  return lowest;
}

/** The sum at the end of a year, before what falls there. */
function sumJustBefore(r: Reckoner, years: readonly PaybackYear[], year: number): Decimal {
  const before = years[year - 1];
  const { sum, evenly } = at(years, year);
  return before === undefined ? r.value(sum) : r.value(before.sum).plus(r.value(evenly));
}

function turnWithin(r: Reckoner, years: readonly PaybackYear[], year: number): Quantity {
  return r.apply(timeOfTurn, {
    before: r.assumption(
      year - 1,
      'year',
      `Year ${year - 1}, the last end of a year before the sum passes 0.`
    ),
    after: r.assumption(year, 'year', `Year ${year}, in the course of which it does.`),
    sumBefore: at(years, year - 1).sum,
    evenly: at(years, year).evenly
  });
}

const turnAtEndOf = (r: Reckoner, years: readonly PaybackYear[], year: number): Quantity =>
  r.result(
    year,
    year === 0
      ? { 'sum at the start': at(years, 0).sum }
      : {
          'sum at the end of the year before': at(years, year - 1).sum,
          'saved in the year, evenly': at(years, year).evenly,
          'sum at the end of the year': at(years, year).sum
        },
    () => ({
      id: 'money.turn-at-end-of-year',
      yields: 'Time at which the sum passes 0',
      words: `What is paid or avoided once falls at the end of its year, and it is what takes the sum past 0 at the end of year ${year}.`,
      unit: 'year',
      source: 'definition',
      report: []
    })
  );

const fromTheStart = (r: Reckoner, years: readonly PaybackYear[]): Quantity =>
  r.result(0, { 'sum at the start': at(years, 0).sum }, () => ({
    id: 'money.ahead-from-the-start',
    yields: 'Time at which the sum passes 0',
    words: 'The sum is not below 0 at the start.',
    unit: 'year',
    source: 'definition',
    report: []
  }));

const withoutTurn =
  <Years extends 0 | null>(value: Years, id: string, words: string) =>
  (r: Reckoner, years: readonly PaybackYear[]): Quantity<Years> =>
    r.result(value, byYear(years.map(({ sum }) => sum)), () => ({
      id,
      yields: 'Payback',
      words,
      unit: 'year',
      source: 'definition',
      report: []
    }));

const atOnce = withoutTurn(
  0,
  'money.payback-at-once',
  'The cumulative cash flow is never below 0, and something is saved: it pays at once.'
);
const nothingAtStake = withoutTurn(
  null,
  'money.nothing-to-pay-back',
  'Nothing is invested and nothing saved: there is nothing to pay back.'
);
const notWithin = withoutTurn(
  null,
  'money.no-payback',
  'At the end of the appraisal the cumulative cash flow, without what machines are still worth, is below 0: there is no payback within it.'
);

function at<T>(list: readonly T[], year: number): T {
  const found = list[year];
  if (found === undefined) throw new RangeError(`The appraisal has no year ${year}.`);
  return found;
}
