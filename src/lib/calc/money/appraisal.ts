/** A scenario's whole business case against the baseline, in two parts: what every run needs, and what one looks up. */
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { benefitCostRatio } from './benefit-cost-ratio.ts';
import { cashFlow } from './cash-flow.ts';
import type { CashFlow, Side } from './cash-flow.ts';
import { costOfOwnership, costOfToday } from './cost-of-ownership.ts';
import type { CostOfOwnership } from './cost-of-ownership.ts';
import { costPerTonneAvoided } from './cost-per-tonne.ts';
import type { Decimal } from './decimal.ts';
import { internalRates } from './internal-rate.ts';
import type { InternalRates } from './internal-rate.ts';
import { netPresentValue } from './net-present-value.ts';
import { payback } from './payback.ts';
import type { Payback } from './payback.ts';
import type { YearFactors } from './time-factors.ts';

/** The cash flow and the figures of each what-if draw. */
export interface Appraisal {
  readonly flow: CashFlow;
  readonly netPresentValue: Quantity<Decimal>;
  readonly simplePayback: Payback;
  readonly discountedPayback: Payback;
}

/** The figures that only a full estimate shows. */
export interface FurtherFigures extends CostOfOwnership {
  readonly internalRates: InternalRates;
  readonly benefitCostRatio: Quantity<number | null>;
  readonly costPerTonneAvoided: Quantity<Decimal | null>;
}

export function appraise(
  r: Reckoner,
  given: { baseline: Side; scenario: Side; factors: readonly YearFactors[] }
): Appraisal {
  const flow = cashFlow(r, given);
  return {
    flow,
    netPresentValue: netPresentValue(r, flow),
    simplePayback: payback(
      r,
      flow.years.map(({ cumulative }) => cumulative)
    ),
    discountedPayback: payback(
      r,
      flow.years.map(({ cumulativeDiscounted }) => cumulativeDiscounted)
    )
  };
}

/** `avoidedKg`: CO2e that the scenario avoids against the baseline in a year with all machines in use. */
export function furtherFigures(
  r: Reckoner,
  {
    appraisal,
    baseline,
    scenario,
    avoidedKg,
    factors
  }: {
    appraisal: Appraisal;
    baseline: Side;
    scenario: Side;
    avoidedKg: Quantity;
    factors: readonly YearFactors[];
  }
): FurtherFigures {
  const { flow } = appraisal;
  const today = costOfToday(r, { baseline, factors });
  return {
    ...costOfOwnership(r, { today, flow, factors }),
    internalRates: internalRates(
      r,
      flow.years.map(({ net }) => net)
    ),
    benefitCostRatio: benefitCostRatio(r, { flow, factors }),
    costPerTonneAvoided: costPerTonneAvoided(r, {
      netPresentValue: appraisal.netPresentValue,
      avoidedKg,
      shareInUse: scenario.investment.shareInUse,
      factors
    })
  };
}
