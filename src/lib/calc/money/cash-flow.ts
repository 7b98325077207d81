/**
 * A scenario's cash flow against today's practice, year by year: what is invested, what each line saves, and how it
 * adds up. Positive is good: a saving, a flow in.
 */
import type { CostLine } from '../estimate-types.ts';
import { kept, once } from '../working/kept.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { cashLineNames, costLineNames } from './cost-lines.ts';
import type { YearlyCost } from './cost-lines.ts';
import { Decimal } from './decimal.ts';
import type { FallingYear } from './cause-of-fall.ts';
import type { Investment, OutlayKind } from './investment.ts';
import { outlayKinds } from './investment.ts';
import type { PaybackYear } from './payback.ts';
import { addUp, less, sumOfAmounts } from './sum-of-amounts.ts';
import { discountedFlow, discountedFlows, sumsUpToYears } from './sums-over-years.ts';
import type { YearFactors } from './time-factors.ts';

/** One row of the year-by-year table. */
export interface CashFlowYear {
  readonly year: number;
  /** Outlay of the scenario beyond today's practice. */
  readonly investment: Quantity<Decimal>;
  /** Of it, what is paid for machines that are not bought. */
  readonly payments: Quantity<Decimal>;
  /** By line, carbon and recovery too; made where they are asked for, as what-if runs need only the sum of the cash. */
  readonly savings: Readonly<Record<CostLine, Quantity<Decimal>>>;
  readonly saving: Quantity<Decimal>;
  readonly net: Quantity<Decimal>;
  /** Σ of the net flows up to this year. */
  readonly cumulative: Quantity<Decimal>;
  /** The net flow of this year, discounted. */
  readonly discounted: Quantity<Decimal>;
  /** Σ of the discounted flows up to this year; made where it is asked for. */
  readonly cumulativeDiscounted: Quantity<Decimal>;
}

export interface CashFlow {
  /** Year 0 first, up to the end of the appraisal. */
  readonly years: readonly CashFlowYear[];
  /** Saving of the settled year at today's prices, by line and in all. */
  readonly yearlySavings: Readonly<Record<CostLine, Quantity<Decimal>>>;
  readonly yearlySaving: Quantity<Decimal>;
  /** The initial investment beyond today's practice. */
  readonly investment: Quantity<Decimal>;
  /**
   * What the machines are worth at the end of the appraisal, beyond those of today's practice. It counts as a flow in of
   * the last year, and takes no part in a payback.
   */
  readonly worthAtEnd: Quantity<Decimal>;
  /** The years as payback sees them, and as discounted payback does; made where they are asked for. */
  readonly forPayback: () => readonly PaybackYear[];
  readonly forDiscountedPayback: () => readonly PaybackYear[];
  /** The years by what lifts and lowers the sum; made where they are asked for. */
  readonly falling: () => readonly FallingYear[];
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
  compute: ({ today, scenario }) => less(today, scenario)
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
  compute: ({ scenario, today }) => less(scenario, today)
});

export const worthBeyondToday = formula<{ scenario: Decimal; today: Decimal }, Decimal>({
  id: 'money.worth-beyond-today',
  yields: 'Worth of the machines at the end of the appraisal, beyond today’s practice',
  words: 'What machines are worth at the end under the scenario less under today’s practice.',
  expression: 'S - B',
  inputs: {
    scenario: { symbol: 'S', unit: 'currency', words: 'worth under the scenario' },
    today: { symbol: 'B', unit: 'currency', words: 'worth under today’s practice' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ scenario, today }) => less(scenario, today)
});

export const sumWithoutWorth = formula<{ sum: Decimal; worth: Decimal }, Decimal>({
  id: 'money.sum-without-worth',
  yields: 'Cumulative cash flow without what machines are worth at the end',
  words: 'Nothing has been paid back by a worth that nobody has been paid: for a payback it is left out.',
  expression: 'K - w',
  inputs: {
    sum: { symbol: 'K', unit: 'currency', words: 'cumulative cash flow at the end of the appraisal' },
    worth: { symbol: 'w', unit: 'currency', words: 'worth of the machines at the end' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ sum, worth }) => sum.minus(worth)
});

export const savingAtPriceLevel = formula<{ saving: Decimal; growth: Decimal }, Decimal>({
  id: 'money.saving-at-price-level',
  yields: 'Saving of the line at the prices of this year',
  words: 'The saving of the year at today’s prices, times the price level.',
  expression: 's * g',
  inputs: {
    saving: { symbol: 's', unit: 'currency', words: 'saving of the year at today’s prices' },
    growth: { symbol: 'g', unit: '1', words: 'price level against today' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ saving, growth }) => saving.times(growth)
});

export const savingOfAllLines = formula<{ savings: readonly Decimal[] }, Decimal>({
  id: 'money.saving-of-all-lines',
  yields: 'Saving of the year',
  words: 'What all lines of cash save in the year, at its prices.',
  expression: 'sum(s)',
  inputs: {
    savings: {
      symbol: 's',
      unit: 'currency',
      words: 'savings of the year: lines whose prices stay, lines whose prices grow'
    }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ savings }) => addUp(savings)
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
  compute: ({ saving, investment }) => less(saving, investment)
});

/** One side of the comparison: the ledgers of its years, at today's prices, and its outlays. */
export interface Side {
  /** Of the year when all has settled. */
  readonly cost: YearlyCost;
  /** The same ledger for years that are alike. */
  readonly costIn: (year: number) => YearlyCost;
  readonly investment: Investment;
}

/**
 * The cash flow of a scenario against the baseline: C_t = Σ lines (B_t − S_t)(1 + g)^(t − 1) − (I_S,t − I_B,t), and
 * C_0 = −(I_S,0 − I_B,0), over the lines of cash alone.
 *
 * B_t and S_t are the ledgers of year t, with the machines that stand then. A scenario that equals the baseline has 0
 * everywhere.
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
  const savingsBeside = kept((cost: YearlyCost) =>
    byLine((line) => r.apply(againstToday, { today: baseline.cost.lines[line], scenario: cost.lines[line] }))
  );
  const yearlySavings = savingsBeside(scenario.cost);
  const growing = cashLineNames.filter((line) => factors.at(-1)?.growth[line] !== undefined);
  const atLevel = (saving: Quantity<Decimal>, level: Quantity<Decimal> | undefined): Quantity<Decimal> =>
    level === undefined ? saving : r.apply(savingAtPriceLevel, { saving, growth: level });
  const steadyAt = (savings: LineSavings, standing: YearFactors['standing']): Quantity<Decimal> =>
    r.apply(sumOfAmounts, {
      amounts: cashLineNames
        .filter((line) => !growing.includes(line))
        .map((line) => atLevel(savings[line], standing[line]))
    });
  const steadyBeside = kept((cost: YearlyCost) => steadyAt(savingsBeside(cost), {}));
  const savingInYear = ({ year, growth, standing }: YearFactors): Quantity<Decimal> => {
    if (year === 0) return nothing;
    const cost = scenario.costIn(year);
    const savings = savingsBeside(cost);
    return r.apply(savingOfAllLines, {
      savings: [
        r.records ? steadyAt(savings, standing) : steadyBeside(cost),
        ...growing.map((line) => atLevel(savings[line], growth[line]))
      ]
    });
  };
  const savingOfLineInYear = ({ year, growth, standing }: YearFactors, line: CostLine): Quantity<Decimal> =>
    year === 0
      ? nothing
      : atLevel(savingsBeside(scenario.costIn(year))[line], growth[line] ?? standing[line]);
  const rows = factors.map((factor) => {
    const saving = savingInYear(factor);
    const investment = r.apply(beyondToday, {
      scenario: at(scenario.investment.outlays, factor.year).total,
      today: at(baseline.investment.outlays, factor.year).total
    });
    // Today's practice pays for no machine as it is used.
    const { payments } = at(scenario.investment.outlays, factor.year).kinds;
    return { saving, investment, payments, net: r.apply(netOfYear, { saving, investment }) };
  });
  const flows = rows.map(({ net }) => net);
  const cumulative = sumsUpToYears(r, flows);
  const discounted = discountedFlows(r, { flows, factors });
  const cumulativeDiscounted = once(() => sumsUpToYears(r, discounted));
  const late: LateFigures = {
    savings: (factor) => byLine((line) => savingOfLineInYear(factor, line)),
    cumulativeDiscounted
  };
  const last = factors.length - 1;
  const worthOf = (side: Side): Quantity<Decimal> => at(side.investment.outlays, last).kinds.residual;
  const worthAtEnd = r.apply(worthBeyondToday, { scenario: worthOf(scenario), today: worthOf(baseline) });
  const isWorthSomething = !r.value(worthAtEnd).isZero();
  const forPayback = once(() =>
    rows.map(({ saving: evenly }, year): PaybackYear => {
      const sum = at(cumulative, year);
      if (year < last || !isWorthSomething) return { sum, evenly };
      return { sum: r.apply(sumWithoutWorth, { sum, worth: worthAtEnd }), evenly };
    })
  );
  const forDiscountedPayback = once(() =>
    factors.map(({ year, discount }): PaybackYear => {
      const sum = at(cumulativeDiscounted(), year);
      const evenly = r.apply(discountedFlow, { flow: at(rows, year).saving, discount });
      if (year < last || !isWorthSomething) return { sum, evenly };
      const worth = r.apply(discountedFlow, { flow: worthAtEnd, discount });
      return { sum: r.apply(sumWithoutWorth, { sum, worth }), evenly };
    })
  );
  const falling = once(() =>
    rows.map(({ saving }, year): FallingYear => {
      const outlays: Partial<Record<OutlayKind, Decimal>> = {};
      for (const kind of outlayKinds) {
        const of = ({ investment: paid }: Side): Decimal => r.value(at(paid.outlays, year).kinds[kind]);
        outlays[kind] = of(scenario).minus(of(baseline));
      }
      return { evenly: r.value(saving), outlays: outlays as Record<OutlayKind, Decimal> };
    })
  );
  return {
    years: factors.map((factor) => {
      const { year } = factor;
      const { saving, investment, payments, net } = at(rows, year);
      const sums = { cumulative: at(cumulative, year), discounted: at(discounted, year) };
      return new Year({ factor, saving, investment, payments, net, ...sums }, late);
    }),
    yearlySavings,
    yearlySaving: r.apply(againstToday, { today: baseline.cost.total, scenario: scenario.cost.total }),
    investment: r.apply(beyondToday, {
      scenario: scenario.investment.initial,
      today: baseline.investment.initial
    }),
    worthAtEnd,
    forPayback,
    forDiscountedPayback,
    falling
  };
}

type LineSavings = Readonly<Record<CostLine, Quantity<Decimal>>>;
type Savings = CashFlowYear['savings'];

/** What is made where it is asked for. */
interface LateFigures {
  readonly savings: (factor: YearFactors) => Savings;
  readonly cumulativeDiscounted: () => readonly Quantity<Decimal>[];
}

/** A class for the sake of its getters: objects that define their own are slow to make, and what-if runs make thousands. */
class Year implements CashFlowYear {
  readonly year: number;
  readonly saving: Quantity<Decimal>;
  readonly investment: Quantity<Decimal>;
  readonly payments: Quantity<Decimal>;
  readonly net: Quantity<Decimal>;
  readonly cumulative: Quantity<Decimal>;
  readonly discounted: Quantity<Decimal>;
  readonly #factor: YearFactors;
  readonly #late: LateFigures;
  #savings: Savings | undefined;

  constructor(
    row: { readonly factor: YearFactors } & Pick<
      CashFlowYear,
      'saving' | 'investment' | 'payments' | 'net' | 'cumulative' | 'discounted'
    >,
    late: LateFigures
  ) {
    this.year = row.factor.year;
    this.saving = row.saving;
    this.investment = row.investment;
    this.payments = row.payments;
    this.net = row.net;
    this.cumulative = row.cumulative;
    this.discounted = row.discounted;
    this.#factor = row.factor;
    this.#late = late;
  }

  get savings(): Savings {
    return (this.#savings ??= this.#late.savings(this.#factor));
  }

  get cumulativeDiscounted(): Quantity<Decimal> {
    return at(this.#late.cumulativeDiscounted(), this.year);
  }
}

function byLine<T>(of: (line: CostLine) => T): Record<CostLine, T> {
  const made: Partial<Record<CostLine, T>> = {};
  for (const line of costLineNames) made[line] = of(line);
  return made as Record<CostLine, T>;
}

function at<T>(list: readonly T[], year: number): T {
  const found = list[year];
  if (found === undefined) throw new Error(`The appraisal has no year ${year}.`);
  return found;
}
