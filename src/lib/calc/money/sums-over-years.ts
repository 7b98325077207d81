/** Yearly flows added up as time goes on, plainly and discounted to the day of the decision. */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Decimal } from './decimal.ts';
import type { YearFactors } from './time-factors.ts';

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

/** The flows C_0 … C_T, each discounted by its year's factor. */
export const discountedFlows = (
  r: Reckoner,
  {
    flows,
    factors
  }: { flows: readonly Quantity<Decimal>[]; factors: readonly Pick<YearFactors, 'discount'>[] }
): Quantity<Decimal>[] =>
  flows.map((flow, year) => {
    const factor = factors[year];
    if (factor === undefined) throw new Error(`There is a flow but no discount factor for year ${year}.`);
    return r.apply(discountedFlow, { flow, discount: factor.discount });
  });

/** Σ of the flows up to each year, discounted or not. */
export function sumsUpToYears(r: Reckoner, flows: readonly Quantity<Decimal>[]): Quantity<Decimal>[] {
  const sums: Quantity<Decimal>[] = [];
  for (const flow of flows) {
    const before = sums.at(-1);
    sums.push(before === undefined ? flow : r.apply(carriedForward, { before, flow }));
  }
  return sums;
}
