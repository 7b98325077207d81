/** What capture costs: canisters as they fill, and a fee a year; its devices are bought once, and are no yearly cost. */
import type { Scenario } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { Decimal, amount } from './decimal.ts';

/** Canisters filled = caught mass ÷ what one holds; what is lost from them later has filled them too. */
export const canistersFilled = formula<{
  caughtKg: readonly number[];
  lostKg: readonly number[];
  holdsG: number;
}>({
  id: 'money.canisters-filled',
  yields: 'Canisters filled in a year',
  words: 'all agent that is caught, lost again or not, over what a full canister holds',
  expression: '(sum(k) + sum(o)) * 1000 / h',
  inputs: {
    caughtKg: { symbol: 'k', unit: 'kg', words: 'agent that stays caught' },
    lostKg: { symbol: 'o', unit: 'kg', words: 'agent that is caught and lost again' },
    holdsG: { symbol: 'h', unit: 'g', words: 'agent that a full canister holds', testRange: [50, 2000] }
  },
  unit: '1',
  source: 'definition',
  compute: ({ caughtKg, lostKg, holdsG }) => {
    let kg = 0;
    for (const each of caughtKg) kg += each;
    for (const each of lostKg) kg += each;
    return (kg * 1000) / holdsG;
  }
});

export const costOfCapture = formula<
  { feePerYear: Decimal; canisters: number; canisterPrice: Decimal },
  Decimal
>({
  id: 'money.cost-of-capture',
  yields: 'Cost of capture in a year',
  words: 'The yearly fee, and the canisters filled times the price of one.',
  expression: 'f + n * p',
  inputs: {
    feePerYear: { symbol: 'f', unit: 'currency', words: 'fee a year' },
    canisters: { symbol: 'n', unit: '1', words: 'canisters filled' },
    canisterPrice: { symbol: 'p', unit: 'currency', words: 'price of a full canister' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ feePerYear, canisters, canisterPrice }) => canisterPrice.times(canisters).plus(feePerYear)
});

/** What is caught of each agent in a year: what stays so, and what is lost again. */
export type CaughtOfAgents = Readonly<
  Record<string, { readonly caughtKg: Quantity; readonly caughtAndLostKg: Quantity }>
>;

/**
 * Fee and canisters of a scenario's year; canisters whose content is not given are not counted, and the estimate says so.
 * @param caught asked for where canisters are counted
 */
export function captureCost(
  r: Reckoner,
  scenario: Scenario,
  caught: () => CaughtOfAgents
): Quantity<Decimal> {
  const { id, captureFeePerYear, canisterPrice, canisterHoldsG } = scenario;
  const cell = (value: string, key: string) => r.cell(amount(value), 'currency', 'scenarios', id, key);
  const feePerYear = cell(captureFeePerYear, 'captureFeePerYear');
  if (canisterHoldsG === null) return feePerYear;
  const agents = Object.values(caught());
  return r.apply(costOfCapture, {
    feePerYear,
    canisters: r.apply(canistersFilled, {
      caughtKg: agents.map(({ caughtKg }) => caughtKg),
      lostKg: agents.map(({ caughtAndLostKg }) => caughtAndLostKg),
      holdsG: r.cell(canisterHoldsG, 'g', 'scenarios', id, 'canisterHoldsG')
    }),
    canisterPrice: cell(canisterPrice, 'canisterPrice')
  });
}
