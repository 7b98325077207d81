import type { Decimal } from '../money/decimal.ts';
import type { PaybackYear } from '../money/payback.ts';
import type { Quantity } from '../working/reckoner.ts';

/** One year of a run's cash flow against today's practice. */
export interface RunYear {
  readonly year: number;
  readonly investment: Quantity<Decimal>;
  readonly net: Quantity<Decimal>;
}

/** What one run of the model says against today's practice: all that parts, steps and lists of alternatives are made of. */
export interface Run {
  readonly yearlySaving: Quantity<Decimal>;
  readonly co2eAvoidedKg: Quantity;
  /** Over the whole appraisal, not discounted. */
  readonly co2eAvoidedOverAppraisalKg: Quantity;
  readonly investment: Quantity<Decimal>;
  readonly npv: Quantity<Decimal>;
  /** Year 0 first, up to the end of the appraisal. */
  readonly years: readonly RunYear[];
  /** The years as payback sees them. */
  readonly sumsForPayback: readonly PaybackYear[];
  readonly sumsForDiscountedPayback: readonly PaybackYear[];
}
