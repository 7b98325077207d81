/** The step from one run to another: what it costs and brings, from the difference of their yearly cash flows. */
import type { InternalRates } from '../money/internal-rate.ts';
import { internalRates } from '../money/internal-rate.ts';
import type { Decimal } from '../money/decimal.ts';
import { netPresentValue } from '../money/net-present-value.ts';
import type { PaybackYear } from '../money/payback.ts';
import { payback } from '../money/payback.ts';
import { discountedFlows } from '../money/sums-over-years.ts';
import type { YearFactors } from '../money/time-factors.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Run } from './run.ts';

export const amountOfStep = formula<{ to: Decimal; from: Decimal }, Decimal>({
  id: 'attribution.amount-of-step',
  yields: 'Difference of two runs',
  words: 'The amount in the one run less that in the other, each against today’s practice.',
  expression: 'b - a',
  inputs: {
    to: { symbol: 'b', unit: 'currency', words: 'in the run that the step leads to' },
    from: { symbol: 'a', unit: 'currency', words: 'in the run that it starts from' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ to, from }) => to.minus(from)
});

export const emissionsOfStep = formula<{ toKg: number; fromKg: number }>({
  id: 'attribution.emissions-of-step',
  yields: 'Difference of two runs',
  words: 'Emissions avoided in the one run less those avoided in the other, each against today’s practice.',
  expression: 'b - a',
  inputs: {
    toKg: { symbol: 'b', unit: 'kg CO2e', words: 'in the run that the step leads to' },
    fromKg: { symbol: 'a', unit: 'kg CO2e', words: 'in the run that it starts from' }
  },
  unit: 'kg CO2e',
  source: 'definition',
  compute: ({ toKg, fromKg }) => toKg - fromKg
});

/**
 * From one run to another. Payback, net present value and internal rate are those of the difference of the yearly cash
 * flows; paybacks and rates of the two runs are never taken from each other. Figures are made when they are read: runs
 * over many draws read two of them.
 */
export class Step {
  readonly #r: Reckoner;
  readonly #from: Run;
  readonly #to: Run;
  readonly #factors: readonly YearFactors[];
  #nets: readonly Quantity<Decimal>[] | undefined;
  #discountedNets: readonly Quantity<Decimal>[] | undefined;
  #sums: readonly PaybackYear[] | undefined;
  #discountedSums: readonly PaybackYear[] | undefined;
  #npv: Quantity<Decimal> | undefined;
  #payback: Quantity<number | null> | undefined;
  #discountedPayback: Quantity<number | null> | undefined;
  #rates: InternalRates | undefined;

  /** @param factors of the years that both runs have. */
  constructor(r: Reckoner, { from, to, factors }: { from: Run; to: Run; factors: readonly YearFactors[] }) {
    this.#r = r;
    this.#from = from;
    this.#to = to;
    this.#factors = factors;
  }

  get yearlySaving(): Quantity<Decimal> {
    return this.#amount(this.#from.yearlySaving, this.#to.yearlySaving);
  }

  get investment(): Quantity<Decimal> {
    return this.#amount(this.#from.investment, this.#to.investment);
  }

  get co2eAvoidedKg(): Quantity {
    return this.#r.apply(emissionsOfStep, {
      toKg: this.#to.co2eAvoidedKg,
      fromKg: this.#from.co2eAvoidedKg
    });
  }

  get npv(): Quantity<Decimal> {
    this.#npv ??= netPresentValue(this.#r, this.#discounted);
    return this.#npv;
  }

  get simplePaybackYears(): Quantity<number | null> {
    this.#payback ??= payback(this.#r, this.sumsForPayback);
    return this.#payback;
  }

  get discountedPaybackYears(): Quantity<number | null> {
    this.#discountedPayback ??= payback(this.#r, this.sumsForDiscountedPayback);
    return this.#discountedPayback;
  }

  get irrPercent(): Quantity<number | null> {
    this.#rates ??= internalRates(this.#r, this.#net);
    return this.#rates.ratePercent;
  }

  /** True where the two runs have the same cash flow. */
  get isNothing(): boolean {
    return this.#net.every((net) => this.#r.value(net).isZero());
  }

  /** The years as payback sees them. */
  get sumsForPayback(): readonly PaybackYear[] {
    return (this.#sums ??= this.#difference(this.#from.sumsForPayback, this.#to.sumsForPayback));
  }

  get sumsForDiscountedPayback(): readonly PaybackYear[] {
    return (this.#discountedSums ??= this.#difference(
      this.#from.sumsForDiscountedPayback,
      this.#to.sumsForDiscountedPayback
    ));
  }

  get #net(): readonly Quantity<Decimal>[] {
    this.#nets ??= this.#to.years.map(({ net }, year) => {
      const before = this.#from.years[year];
      if (before === undefined) throw new Error(`The run that the step starts from has no year ${year}.`);
      return this.#amount(before.net, net);
    });
    return this.#nets;
  }

  get #discounted(): readonly Quantity<Decimal>[] {
    this.#discountedNets ??= discountedFlows(this.#r, { flows: this.#net, factors: this.#factors });
    return this.#discountedNets;
  }

  #difference(from: readonly PaybackYear[], to: readonly PaybackYear[]): PaybackYear[] {
    return to.map(({ sum, evenly }, year) => {
      const before = from[year];
      if (before === undefined) throw new Error(`The run that the step starts from has no year ${year}.`);
      return { sum: this.#amount(before.sum, sum), evenly: this.#amount(before.evenly, evenly) };
    });
  }

  #amount(from: Quantity<Decimal>, to: Quantity<Decimal>): Quantity<Decimal> {
    return this.#r.apply(amountOfStep, { to, from });
  }
}
