/**
 * Ways to pay for the same service, made comparable: what a year of it costs, over a way's own life, and over a time in
 * which all of them end together.
 */
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { annuity } from './annuity.ts';
import type { Decimal } from './decimal.ts';
import { presentValue } from './present-value.ts';
import { sumOfAmounts } from './sum-of-amounts.ts';
import { discountFactors } from './time-factors.ts';

/** A way to pay for service over its life: flows of the years 0 … lifeYears, costs above 0. */
export interface WayToPay {
  readonly id: string;
  readonly flows: readonly Quantity<Decimal>[];
}

export interface CostOfService {
  readonly id: string;
  readonly lifeYears: number;
  /** Of one life. */
  readonly presentValue: Quantity<Decimal>;
  /** The same amount at the end of each year of the life that is worth as much: the figure to compare. */
  readonly equivalentAnnualCost: Quantity<Decimal>;
}

export interface CostOfChain extends CostOfService {
  /** Of lives one after the other until all ways end together, the least common multiple of their lives. */
  readonly chainYears: number;
  readonly chainPresentValue: Quantity<Decimal>;
}

/**
 * What a way costs over its own life: present value, and by annuity the cost of a year, PV / Σ_{t=1}^{L} (1 + i)^−t.
 * @throws RangeError where the way has no year after year 0.
 */
export function costOfWay(
  r: Reckoner,
  { id, flows, ratePercent }: WayToPay & { readonly ratePercent: Quantity }
): CostOfService {
  const lifeYears = flows.length - 1;
  if (lifeYears < 1) throw new RangeError('A way to pay needs a life of at least one year.');
  const factors = discountFactors(r, { ratePercent, years: lifeYears });
  const value = presentValue(r, { flows, factors });
  return {
    id,
    lifeYears,
    presentValue: value,
    equivalentAnnualCost: annuity(r, { presentValue: value, factors })
  };
}

/** Chains longer than this are not made; the annuity compares all the same. */
export const longestChainYears = 600;

/**
 * Costs of the ways over equal service. Equivalent annual cost by annuity, PV / Σ_{t=1}^{L} (1 + i)^−t, and by repeated
 * chain rank alike: the chain's present value is the annuity's over the same years.
 *
 * @throws RangeError where a way has no year after year 0, or the lives end together only after `longestChainYears`.
 */
export function compareOverEqualService(
  r: Reckoner,
  { ways, ratePercent }: { ways: readonly WayToPay[]; ratePercent: Quantity }
): CostOfChain[] {
  const costs = ways.map((way) => costOfWay(r, { ...way, ratePercent }));
  const lives = costs.map(({ lifeYears }) => lifeYears);
  const chainYears = lives.reduce(leastCommonMultiple, 1);
  if (chainYears > longestChainYears)
    throw new RangeError(
      `Lives of ${lives.join(', ')} years end together only after ${chainYears}: at most ${longestChainYears} are chained.`
    );
  const factors = discountFactors(r, { ratePercent, years: chainYears });
  return ways.map(({ flows }, index) => {
    const cost = costs[index] as CostOfService;
    const chain = repeatedChain(r, { flows, lives: chainYears / cost.lifeYears });
    return { ...cost, chainYears, chainPresentValue: presentValue(r, { flows: chain, factors }) };
  });
}

/** Flows of so many lives one after the other: where one ends the next begins, and both flows fall in that year. */
export function repeatedChain(
  r: Reckoner,
  { flows, lives }: { flows: readonly Quantity<Decimal>[]; lives: number }
): Quantity<Decimal>[] {
  const lifeYears = flows.length - 1;
  return Array.from({ length: lives * lifeYears + 1 }, (_, year) => {
    const within = year % lifeYears;
    const [first, last] = [flows[within], flows[lifeYears]] as [Quantity<Decimal>, Quantity<Decimal>];
    if (within > 0 || year === 0) return first;
    return year === lives * lifeYears ? last : r.apply(sumOfAmounts, { amounts: [last, first] });
  });
}

const leastCommonMultiple = (a: number, b: number): number => (a / greatestCommonDivisor(a, b)) * b;
const greatestCommonDivisor = (a: number, b: number): number =>
  b === 0 ? a : greatestCommonDivisor(b, a % b);
