/** Yearly flows added up as time goes on, plainly and discounted to the day of the decision. */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Decimal } from './decimal.ts';
import type { YearFactors } from './time-factors.ts';

export interface SumsOfYear {
  /** Σ of the flows up to this year. */
  readonly cumulative: Quantity<Decimal>;
  /** The flow of this year, discounted. */
  readonly discounted: Quantity<Decimal>;
  /** Σ of the discounted flows up to this year. */
  readonly cumulativeDiscounted: Quantity<Decimal>;
}

export const carriedForward = formula<{ before: Decimal; flow: Decimal }, Decimal>({
  id: 'money.carried-forward',
  yields: 'Cumulative cash flow',
  words: 'What had come together by the year before, and the flow of this year.',
  expression: 'K + C',
  inputs: {
    before: { symbol: 'K', unit: 'currency', words: 'cumulative cash flow of the year before' },
    flow: { symbol: 'C', unit: 'currency', words: 'cash flow of this year' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ before, flow }) => before.plus(flow)
});

export const discountedFlow = formula<{ flow: Decimal; discount: Decimal }, Decimal>({
  id: 'money.discounted-flow',
  yields: 'Discounted cash flow of the year',
  words: 'The net cash flow of the year, times its discount factor.',
  expression: 'C * d',
  inputs: {
    flow: { symbol: 'C', unit: 'currency', words: 'net cash flow of the year' },
    discount: { symbol: 'd', unit: '1', words: 'discount factor' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ flow, discount }) => flow.times(discount)
});

/** The sums of the flows C_0 … C_T with their factors, year by year. */
export function sumsOverYears(
  r: Reckoner,
  {
    flows,
    factors
  }: { flows: readonly Quantity<Decimal>[]; factors: readonly Pick<YearFactors, 'discount'>[] }
): SumsOfYear[] {
  const sums: SumsOfYear[] = [];
  flows.forEach((flow, year) => {
    const factor = factors[year];
    if (factor === undefined) throw new Error(`There is a flow but no discount factor for year ${year}.`);
    const discounted = r.apply(discountedFlow, { flow, discount: factor.discount });
    const before = sums.at(-1);
    const carried = (sum: Quantity<Decimal> | undefined, next: Quantity<Decimal>): Quantity<Decimal> =>
      sum === undefined ? next : r.apply(carriedForward, { before: sum, flow: next });
    sums.push({
      cumulative: carried(before?.cumulative, flow),
      discounted,
      cumulativeDiscounted: carried(before?.cumulativeDiscounted, discounted)
    });
  });
  return sums;
}
