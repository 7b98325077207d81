/** Machines that are paid for as they are used, beside the same machines bought: what a year of the same service costs. */
import type { Arrival } from '../fleet/standing.ts';
import type { Accounting, Machine, Payment } from '../input.ts';
import { once } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { costOfService } from './cost-lines.ts';
import { Decimal, amount } from './decimal.ts';
import type { CostOfService } from './equal-service.ts';
import { costOfWay } from './equal-service.ts';
import { purchaseOfUnits } from './investment.ts';
import type { PartsOfFee } from './managed-service.ts';
import { partsOfFee } from './managed-service.ts';
import { flowsOfPlan, paymentPlan } from './payments.ts';
import { sumOfAmounts } from './sum-of-amounts.ts';
import { growthFactor } from './time-factors.ts';
import { grownCost } from './cost-of-ownership.ts';

/** What is paid in one year of the term, and what it is for. */
export interface FeeOfYear extends PartsOfFee {
  /** Year of service, 1 first. */
  readonly year: number;
  readonly fee: Quantity<Decimal>;
}

export interface WaysOfMove {
  /** Place of the move among the scenario's. */
  readonly move: number;
  readonly machine: Machine;
  readonly units: Quantity;
  readonly asEntered: CostOfService;
  readonly bought: CostOfService;
  /** By year of the term. */
  readonly fees: readonly FeeOfYear[];
}

/** An arrival that a payment is made for. */
export interface PaidArrival extends Arrival {
  readonly move: NonNullable<Arrival['move']>;
}

export const isPaidFor = (arrival: Arrival): arrival is PaidArrival =>
  arrival.move !== null && arrival.move.terms.payment !== null;

/**
 * Both ways for the machines of a move, over equal service: machines that stand installed and serviced, with the absorbent
 * where the payment includes it. What is the same either way (trade-in, monitors) is in neither.
 *
 * - Bought: price and installation now, then service and absorbent of each year of the life, taken to whole years.
 * - As entered: installation now, the payments of the term, and what they do not include. One that is returned serves its
 *   term; one that is bought or renewed serves the life, and service and absorbent are paid for once it is owned.
 *
 * Service grows as everywhere; payments by their own growth. Costs are compared per year of service, over each way's own
 * life: the same as lives one after the other until both end together.
 *
 * @param absorbentPerYear what the absorbent costs that these machines use in a year
 */
export function waysOfMove(
  r: Reckoner,
  {
    arrival: { machine, units, move },
    scenarioId,
    absorbentPerYear,
    accounting
  }: {
    arrival: PaidArrival;
    scenarioId: string;
    absorbentPerYear: Quantity<Decimal>;
    accounting: Accounting;
  }
): WaysOfMove {
  const terms = move.terms.payment as Payment;
  const nothing = r.assumption(new Decimal(0), 'currency', 'Nothing of this kind falls in this year.');
  const price = (key: 'unitPrice' | 'installationPerUnit'): Quantity<Decimal> =>
    r.apply(purchaseOfUnits, {
      units,
      unitPrice: r.cell(amount(machine[key]), 'currency', 'machines', machine.id, key)
    });
  const serviceToday = once(() =>
    r.apply(costOfService, {
      units,
      servicePerUnit: r.cell(
        amount(machine.servicePerUnitPerYear),
        'currency',
        'machines',
        machine.id,
        'servicePerUnitPerYear'
      )
    })
  );
  const service = (year: number): Quantity<Decimal> =>
    r.apply(grownCost, {
      cost: serviceToday(),
      growth: r.apply(growthFactor, {
        growthPercent: r.cell(accounting.serviceGrowthPercent, '%', 'accounting', 'serviceGrowthPercent'),
        years: r.assumption(year, '1', `Year ${year} of service.`)
      })
    });
  const absorbent = (): Quantity<Decimal> => (terms.includesConsumables ? absorbentPerYear : nothing);
  const ratePercent = r.cell(accounting.discountRatePercent, '%', 'accounting', 'discountRatePercent');
  const wholeLife = Math.max(1, Math.round(machine.lifeYears));
  const yearsOf = (lifeYears: number, of: (year: number) => readonly Quantity<Decimal>[]) =>
    Array.from({ length: lifeYears + 1 }, (_, year) => r.apply(sumOfAmounts, { amounts: of(year) }));

  const bought = costOfWay(r, {
    id: 'bought',
    flows: yearsOf(wholeLife, (year) =>
      year === 0 ? [price('unitPrice'), price('installationPerUnit')] : [service(year), absorbent()]
    ),
    ratePercent
  });

  const lifeYears = terms.atEnd === 'return' ? terms.termYears : Math.max(wholeLife, terms.termYears);
  const plan = paymentPlan(r, {
    units,
    terms,
    path: ['scenarios', scenarioId, 'moves', String(move.index), 'payment'],
    startYear: 0,
    horizonYears: lifeYears
  });
  const paid = flowsOfPlan(r, plan);
  const isOwned = (year: number): boolean => terms.atEnd === 'buy' && year > terms.termYears;
  const beside = (year: number): Quantity<Decimal>[] => [
    ...(!terms.includesService || isOwned(year) ? [service(year)] : []),
    ...(isOwned(year) ? [absorbent()] : [])
  ];
  const asEntered = costOfWay(r, {
    id: 'as-entered',
    flows: yearsOf(lifeYears, (year) => [
      paid[year] ?? nothing,
      ...(year === 0 ? [price('installationPerUnit')] : beside(year))
    ]),
    ratePercent
  });

  const feeOf = (year: number): Quantity<Decimal> =>
    plan.years[terms.inAdvance ? year - 1 : year]?.payments ?? nothing;
  const fees = Array.from({ length: terms.termYears }, (_, index): FeeOfYear => {
    const year = index + 1;
    return {
      year,
      fee: feeOf(year),
      ...partsOfFee(r, {
        fee: feeOf(year),
        firstFee: feeOf(1),
        service: terms.includesService ? serviceToday() : nothing,
        consumables: absorbent()
      })
    };
  });
  return { move: move.index, machine, units, asEntered, bought, fees };
}
