import type { AgainstBaseline, FallCause } from '../estimate-types.ts';
import type { Accounting } from '../input.ts';
import { benefitCostRatio } from '../money/benefit-cost-ratio.ts';
import type { BudgetYear } from '../money/budget-view.ts';
import { budgetView } from '../money/budget-view.ts';
import { capitalAccount } from '../money/capital-account.ts';
import type { CashFlow, Side } from '../money/cash-flow.ts';
import { cashFlow } from '../money/cash-flow.ts';
import type { Charges } from '../money/charges.ts';
import { charges } from '../money/charges.ts';
import type { CostOfOwnership } from '../money/cost-of-ownership.ts';
import { costOfOwnership } from '../money/cost-of-ownership.ts';
import { avoidedOverAppraisal, costPerTonneAvoided } from '../money/cost-per-tonne.ts';
import type { Decimal } from '../money/decimal.ts';
import type { InternalRates } from '../money/internal-rate.ts';
import { internalRates } from '../money/internal-rate.ts';
import { netPresentValue } from '../money/net-present-value.ts';
import { causeOfFall } from '../money/cause-of-fall.ts';
import type { AheadForATime, PaybackYear } from '../money/payback.ts';
import { aheadForATime, payback } from '../money/payback.ts';
import type { SocialView } from '../money/shadow-money.ts';
import { socialView } from '../money/shadow-money.ts';
import type { YearFactors } from '../money/time-factors.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { formula } from '../working/formula.ts';

const avoided = formula<{ todayKg: number; scenarioKg: number }>({
  id: 'emissions.avoided',
  yields: 'Emissions avoided in a year',
  words: 'emissions of today less emissions of the scenario',
  expression: 'b - s',
  inputs: {
    todayKg: { symbol: 'b', unit: 'kg CO2e', words: 'today' },
    scenarioKg: { symbol: 's', unit: 'kg CO2e', words: 'the scenario' }
  },
  unit: 'kg CO2e',
  source: 'definition',
  compute: ({ todayKg, scenarioKg }) => todayKg - scenarioKg
});

const shareOfFootprint = formula<{ avoidedKg: number; footprintTonnes: number }>({
  id: 'emissions.share-of-department',
  yields: 'Share of the department’s footprint that is avoided',
  words: 'emissions avoided in a year, as a percentage of what the department emits',
  expression: '100 * m / (1000 * F)',
  inputs: {
    avoidedKg: { symbol: 'm', unit: 'kg CO2e', words: 'emissions avoided' },
    footprintTonnes: { symbol: 'F', unit: 't CO2e', words: 'the department’s footprint' }
  },
  unit: '%',
  source: 'definition',
  compute: ({ avoidedKg, footprintTonnes }) => (100 * avoidedKg) / (1000 * footprintTonnes)
});

/** Years in which a side emits alike. */
export interface EmittingYears {
  readonly co2eKg: Quantity;
  /** How many of the appraisal's years, 0 where all lie beyond it. */
  readonly years: number;
}

/** A side of the comparison, with what its years emit. */
export interface EmittingSide extends Side {
  /** Of the year when all has settled. */
  readonly co2eKg: Quantity;
  readonly emitting: readonly EmittingYears[];
}

export interface AgainstGiven {
  readonly today: EmittingSide;
  readonly scenario: EmittingSide;
  readonly factors: readonly YearFactors[];
  readonly accounting: Accounting;
  /** What today's practice costs in each year: one list for all scenarios, made where one of them asks for it. */
  readonly costOfToday: () => readonly Quantity<Decimal>[];
  /** The department's yearly footprint; null where it was not given, or is 0. */
  readonly footprintTonnes: Quantity | null;
}

/**
 * A scenario against today's practice. What-if runs read a few of its figures, thousands of times, so the others are made
 * when they are read. They are getters of a class: an object literal with getters makes a hidden class for every object,
 * and each of those keeps the one before it alive.
 */
export class Against implements Record<keyof AgainstBaseline, unknown> {
  readonly yearlySaving: Quantity<Decimal>;
  readonly co2eAvoidedKg: Quantity;
  readonly investment: Quantity<Decimal>;
  readonly simplePaybackYears: Quantity<number | null>;
  readonly npv: Quantity<Decimal>;
  readonly years: CashFlow['years'];
  readonly #r: Reckoner;
  readonly #given: AgainstGiven;
  readonly #flow: CashFlow;
  #discountedPayback: Quantity<number | null> | undefined;
  #ahead: readonly (AheadForATime & { readonly cause: FallCause })[] | undefined;
  #rates: InternalRates | undefined;
  #ownership: CostOfOwnership | undefined;
  #perTonne: Quantity<Decimal | null> | undefined;
  #ratio: Quantity<number | null> | undefined;
  #avoided: Quantity | undefined;
  #social: SocialView | undefined;
  #budget: readonly BudgetYear[] | undefined;
  #charges: Charges | null | undefined;

  constructor(r: Reckoner, given: AgainstGiven) {
    const { today, scenario, factors } = given;
    const flow = cashFlow(r, { baseline: today, scenario, factors });
    this.yearlySaving = flow.yearlySaving;
    this.co2eAvoidedKg = r.apply(avoided, { todayKg: today.co2eKg, scenarioKg: scenario.co2eKg });
    this.investment = flow.investment;
    this.simplePaybackYears = payback(r, flow.forPayback());
    this.npv = netPresentValue(
      r,
      flow.years.map((year) => year.discounted)
    );
    this.years = flow.years;
    this.#r = r;
    this.#given = given;
    this.#flow = flow;
  }

  /** null: the department's footprint was not given, or is 0. */
  get departmentSharePercent(): Quantity | null {
    const { footprintTonnes } = this.#given;
    if (footprintTonnes === null) return null;
    return this.#r.apply(shareOfFootprint, { avoidedKg: this.co2eAvoidedKg, footprintTonnes });
  }

  get discountedPaybackYears(): Quantity<number | null> {
    return (this.#discountedPayback ??= payback(this.#r, this.sumsForDiscountedPayback));
  }

  /** The years as payback sees them. */
  get sumsForPayback(): readonly PaybackYear[] {
    return this.#flow.forPayback();
  }

  get sumsForDiscountedPayback(): readonly PaybackYear[] {
    return this.#flow.forDiscountedPayback();
  }

  get aheadForATime(): readonly (AheadForATime & { readonly cause: FallCause })[] {
    return (this.#ahead ??= aheadForATime(this.#r, this.sumsForPayback).map((time) => {
      const [fromYears, untilYears] = [this.#r.value(time.fromYears), this.#r.value(time.untilYears)];
      return { ...time, cause: causeOfFall(this.#flow.falling(), { fromYears, untilYears }) };
    }));
  }

  get worthAtEnd(): Quantity<Decimal> {
    return this.#flow.worthAtEnd;
  }

  get irrPercent(): Quantity<number | null> {
    return this.#internalRates.ratePercent;
  }

  get irrAllPercent(): readonly number[] {
    return this.#internalRates.allPercent;
  }

  get costPerTonneAvoided(): Quantity<Decimal | null> {
    this.#perTonne ??= costPerTonneAvoided(this.#r, {
      netPresentValue: this.npv,
      avoidedKg: this.co2eAvoidedOverAppraisalKg
    });
    return this.#perTonne;
  }

  get co2eAvoidedOverAppraisalKg(): Quantity {
    const { today, scenario } = this.#given;
    const within = scenario.emitting.filter(({ years }) => years > 0);
    this.#avoided ??= avoidedOverAppraisal(
      this.#r,
      within.map(({ co2eKg, years }) => ({
        avoidedKg:
          co2eKg === scenario.co2eKg
            ? this.co2eAvoidedKg
            : this.#r.apply(avoided, { todayKg: today.co2eKg, scenarioKg: co2eKg }),
        years: this.#r.assumption(years, '1', 'Years of the appraisal in which the same machines stand.')
      }))
    );
    return this.#avoided;
  }

  /** The social view, which is in no other figure. */
  get shadow(): SocialView {
    const { factors } = this.#given;
    return (this.#social ??= socialView(this.#r, { flow: this.#flow, npv: this.npv, factors }));
  }

  /** By budget year, beyond today's. */
  get budget(): readonly BudgetYear[] {
    return (this.#budget ??= budgetView(this.#r, this.#flow));
  }

  /** Capital charge and tax, which are in no other figure; null where both are off. */
  get charges(): Charges | null {
    if (this.#charges !== undefined) return this.#charges;
    const { accounting, today, scenario } = this.#given;
    const horizonYears = accounting.appraisalYears;
    const accountOf = ({ investment: { capital } }: EmittingSide) =>
      capitalAccount(this.#r, { items: capital, horizonYears });
    return (this.#charges = charges(this.#r, {
      accounting,
      years: this.years,
      worthAtEnd: this.worthAtEnd,
      npv: this.npv,
      today: accountOf(today),
      scenario: accountOf(scenario)
    }));
  }

  get equivalentAnnualCost(): Quantity<Decimal> {
    return this.#costOfOwnership.equivalentAnnualCost;
  }

  get benefitCostRatio(): Quantity<number | null> {
    this.#ratio ??= benefitCostRatio(this.#r, { flow: this.#flow, factors: this.#given.factors });
    return this.#ratio;
  }

  get totalCostOfOwnership(): Quantity<Decimal> {
    return this.#costOfOwnership.total;
  }

  get #internalRates(): InternalRates {
    this.#rates ??= internalRates(
      this.#r,
      this.years.map((year) => year.net)
    );
    return this.#rates;
  }

  get #costOfOwnership(): CostOfOwnership {
    const { costOfToday, factors } = this.#given;
    this.#ownership ??= costOfOwnership(this.#r, { today: costOfToday(), flow: this.#flow, factors });
    return this.#ownership;
  }
}
