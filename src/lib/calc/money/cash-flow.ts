/**
 * A scenario's cash flow against today's practice, year by year: what is invested, what each line saves, and how it
 * adds up. Positive is good: a saving, a flow in.
 */
import type { CostLine } from '../estimate-types.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { costLineNames } from './cost-lines.ts';
import type { YearlyCost } from './cost-lines.ts';
import { Decimal } from './decimal.ts';
import type { Investment } from './investment.ts';
import type { YearFactors } from './time-factors.ts';

/** One row of the year-by-year table. */
export interface CashFlowYear {
  readonly year: number;
  /** Outlay of the scenario beyond today's practice. */
  readonly investment: Quantity<Decimal>;
  readonly savings: Readonly<Record<CostLine, Quantity<Decimal>>>;
  readonly saving: Quantity<Decimal>;
  readonly net: Quantity<Decimal>;
  readonly cumulative: Quantity<Decimal>;
  readonly discounted: Quantity<Decimal>;
  readonly cumulativeDiscounted: Quantity<Decimal>;
}

export interface CashFlow {
  /** Year 0 first, up to the end of the appraisal. */
  readonly years: readonly CashFlowYear[];
  /** Saving of one year at today's prices with all machines in use, by line and in all. */
  readonly yearlySavings: Readonly<Record<CostLine, Quantity<Decimal>>>;
  readonly yearlySaving: Quantity<Decimal>;
  /** The initial investment beyond today's practice. */
  readonly investment: Quantity<Decimal>;
}

export const againstToday = formula<{ today: Decimal; scenario: Decimal }, Decimal>({
  id: 'money.saving-against-today',
  yields: 'Saving of a year against today’s practice',
  words: 'The cost of today’s practice less that of the scenario.',
  expression: 'B - S',
  inputs: {
    today: { symbol: 'B', unit: 'currency', words: 'cost under today’s practice' },
    scenario: { symbol: 'S', unit: 'currency', words: 'cost under the scenario' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ today, scenario }) => today.minus(scenario)
});

export const beyondToday = formula<{ scenario: Decimal; today: Decimal }, Decimal>({
  id: 'money.outlay-beyond-today',
  yields: 'Investment beyond today’s practice',
  words: 'The outlay of the scenario less that of today’s practice.',
  expression: 'S - B',
  inputs: {
    scenario: { symbol: 'S', unit: 'currency', words: 'outlay under the scenario' },
    today: { symbol: 'B', unit: 'currency', words: 'outlay under today’s practice' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ scenario, today }) => scenario.minus(today)
});

export const savingOfYear = formula<{ saving: Decimal; share: number }, Decimal>({
  id: 'money.saving-of-year',
  yields: 'Saving of the line in this year',
  words: 'The saving of a full year, times the share of the machines in use.',
  expression: 's * k',
  inputs: {
    saving: { symbol: 's', unit: 'currency', words: 'saving of a full year' },
    share: { symbol: 'k', unit: '1', words: 'share of the machines in use' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ saving, share }) => saving.times(share)
});

export const grownSavingOfYear = formula<{ saving: Decimal; share: number; growth: Decimal }, Decimal>({
  id: 'money.grown-saving-of-year',
  yields: 'Saving of the line in this year',
  words:
    'The saving of a full year at today’s prices, times the share of the machines in use and the price level.',
  expression: 's * k * g',
  inputs: {
    saving: { symbol: 's', unit: 'currency', words: 'saving of a full year at today’s prices' },
    share: { symbol: 'k', unit: '1', words: 'share of the machines in use' },
    growth: { symbol: 'g', unit: '1', words: 'price level against today' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ saving, share, growth }) => saving.times(share).times(growth)
});

export const savingOfLines = formula<{ savings: readonly Decimal[] }, Decimal>({
  id: 'money.saving-of-lines',
  yields: 'Saving of the year',
  words: 'The savings of all lines added up.',
  expression: 'sum(s)',
  inputs: { savings: { symbol: 's', unit: 'currency', words: 'savings by line' } },
  unit: 'currency',
  source: 'definition',
  compute: ({ savings }) => savings.reduce((sum, next) => sum.plus(next), new Decimal(0))
});

export const netOfYear = formula<{ saving: Decimal; investment: Decimal }, Decimal>({
  id: 'money.net-of-year',
  yields: 'Net cash flow of the year',
  words: 'The saving of the year less its investment.',
  expression: 's - I',
  inputs: {
    saving: { symbol: 's', unit: 'currency', words: 'saving of the year' },
    investment: { symbol: 'I', unit: 'currency', words: 'investment of the year' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ saving, investment }) => saving.minus(investment)
});

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

/** One side of the comparison: the ledger of its year and its outlays. */
export interface Side {
  readonly cost: YearlyCost;
  readonly investment: Investment;
}

/**
 * The cash flow of a scenario against the baseline: C_t = share_t · Σ lines (B − S)(1 + g)^(t − 1) − (I_S,t − I_B,t),
 * and C_0 = −(I_S,0 − I_B,0).
 *
 * While only a share of the machines is in use, that share of the full saving is reached. A scenario that equals the
 * baseline has 0 everywhere.
 */
export function cashFlow(
  r: Reckoner,
  { baseline, scenario, factors }: { baseline: Side; scenario: Side; factors: readonly YearFactors[] }
): CashFlow {
  const nothing = r.assumption(
    new Decimal(0),
    'currency',
    'Year 0 is the day of the decision: nothing is saved yet.'
  );
  const yearlySavings = byLine((line) =>
    r.apply(againstToday, { today: baseline.cost.lines[line], scenario: scenario.cost.lines[line] })
  );
  const years: CashFlowYear[] = [];
  for (const { year, discount, growth } of factors) {
    const share = at(scenario.investment.shareInUse, year);
    const savings = byLine((line) => {
      if (year === 0) return nothing;
      const saving = yearlySavings[line];
      const level = growth[line];
      return level === undefined
        ? r.apply(savingOfYear, { saving, share })
        : r.apply(grownSavingOfYear, { saving, share, growth: level });
    });
    const saving =
      year === 0 ? nothing : r.apply(savingOfLines, { savings: costLineNames.map((line) => savings[line]) });
    const investment = r.apply(beyondToday, {
      scenario: at(scenario.investment.outlays, year).total,
      today: at(baseline.investment.outlays, year).total
    });
    const net = r.apply(netOfYear, { saving, investment });
    const discounted = r.apply(discountedFlow, { flow: net, discount });
    const before = years.at(-1);
    years.push({
      year,
      investment,
      savings,
      saving,
      net,
      cumulative:
        before === undefined ? net : r.apply(carriedForward, { before: before.cumulative, flow: net }),
      discounted,
      cumulativeDiscounted:
        before === undefined
          ? discounted
          : r.apply(carriedForward, { before: before.cumulativeDiscounted, flow: discounted })
    });
  }
  return {
    years,
    yearlySavings,
    yearlySaving: r.apply(againstToday, { today: baseline.cost.total, scenario: scenario.cost.total }),
    investment: r.apply(beyondToday, {
      scenario: scenario.investment.initial,
      today: baseline.investment.initial
    })
  };
}

const byLine = <T>(of: (line: CostLine) => T): Record<CostLine, T> =>
  Object.fromEntries(costLineNames.map((line) => [line, of(line)])) as Record<CostLine, T>;

function at<T>(list: readonly T[], year: number): T {
  const found = list[year];
  if (found === undefined) throw new Error(`The appraisal has no year ${year}.`);
  return found;
}
