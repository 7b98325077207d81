/** What a scenario costs in all, over the years of the appraisal: plainly added up, and as the same amount each year. */
import type { CashLine } from '../estimate-types.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { annuity } from './annuity.ts';
import type { CashFlow, Side } from './cash-flow.ts';
import { cashLineNames } from './cost-lines.ts';
import type { Decimal } from './decimal.ts';
import { addUp } from './sum-of-amounts.ts';
import { discountedFlow } from './sums-over-years.ts';
import type { YearFactors } from './time-factors.ts';

export interface CostOfOwnership {
  /** All outlays and yearly costs of the appraisal, undiscounted. */
  readonly total: Quantity<Decimal>;
  /** The same amount for each year 1 … T that is worth as much as all of them, discounted. */
  readonly equivalentAnnualCost: Quantity<Decimal>;
}

export const grownCost = formula<{ cost: Decimal; growth: Decimal }, Decimal>({
  id: 'money.grown-cost',
  yields: 'Cost of the line in this year',
  words: 'The cost at today’s prices, times the price level of the year.',
  expression: 'c * g',
  inputs: {
    cost: { symbol: 'c', unit: 'currency', words: 'cost at today’s prices' },
    growth: { symbol: 'g', unit: '1', words: 'price level against today' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ cost, growth }) => cost.times(growth)
});

export const costOfTodayInYear = formula<{ outlay: Decimal; costs: readonly Decimal[] }, Decimal>({
  id: 'money.cost-of-today-in-year',
  yields: 'Cost of today’s practice in this year',
  words: 'Its outlay and the cost of all its lines.',
  expression: 'o + sum(c)',
  inputs: {
    outlay: { symbol: 'o', unit: 'currency', words: 'outlay of the year' },
    costs: { symbol: 'c', unit: 'currency', words: 'cost by line' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ outlay, costs }) => outlay.plus(addUp(costs))
});

export const costLessSavings = formula<{ today: readonly Decimal[]; net: readonly Decimal[] }, Decimal>({
  id: 'money.cost-less-savings',
  yields: 'Cost over the appraisal',
  words: 'What today’s practice costs in all years, less the net cash flows of the scenario against it.',
  expression: 'sum(b) - sum(C)',
  inputs: {
    today: { symbol: 'b', unit: 'currency', words: 'cost of today’s practice, year by year' },
    net: { symbol: 'C', unit: 'currency', words: 'net cash flows against it, year by year' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ today, net }) => {
    return addUp(today).minus(addUp(net));
  }
});

/**
 * What today's practice costs in each year 0 … T: its outlay, and from year 1 on its lines at the price level of the
 * year. The same for all scenarios of a workbook.
 */
export function costOfToday(
  r: Reckoner,
  { baseline, factors }: { baseline: Side; factors: readonly YearFactors[] }
): Quantity<Decimal>[] {
  return factors.map(({ year, growth, standing }) => {
    const outlay = baseline.investment.outlays[year];
    if (outlay === undefined) throw new Error(`The appraisal has no year ${year}.`);
    return r.apply(costOfTodayInYear, {
      outlay: outlay.total,
      costs: year === 0 ? [] : cashLineNames.map(grown)
    });

    function grown(line: CashLine): Quantity<Decimal> {
      const cost = baseline.cost.lines[line];
      const level = growth[line] ?? standing[line];
      return level === undefined ? cost : r.apply(grownCost, { cost, growth: level });
    }
  });
}

/**
 * Total cost of ownership Σ (B_t − C_t) and equivalent annual cost Σ (B_t − C_t)(1 + i)^−t / annuity factor, of the
 * scenario with the cash flow C against today's practice, which costs B_t. For the baseline itself C is 0.
 */
export function costOfOwnership(
  r: Reckoner,
  {
    today,
    flow,
    factors
  }: { today: readonly Quantity<Decimal>[]; flow: CashFlow; factors: readonly YearFactors[] }
): CostOfOwnership {
  const discountedToday = today.map((cost, year) => {
    const at = factors[year];
    if (at === undefined) throw new Error(`The appraisal has no year ${year}.`);
    return r.apply(discountedFlow, { flow: cost, discount: at.discount });
  });
  const presentValue = r.apply(costLessSavings, {
    today: discountedToday,
    net: flow.years.map(({ discounted }) => discounted)
  });
  return {
    total: r.apply(costLessSavings, { today, net: flow.years.map(({ net }) => net) }),
    equivalentAnnualCost: annuity(r, { presentValue, factors })
  };
}
