/** What the budgets of the first years must hold beyond today's: cash as it falls due, not discounted. */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { CashFlowYear } from './cash-flow.ts';
import { Decimal } from './decimal.ts';
import { addUp } from './sum-of-amounts.ts';

/** Years 0 to 5 are what a budget is made for. */
export const lastBudgetYear = 5;

/** Cash of one budget year beyond today's practice; above 0 it has to be found, below 0 it comes free. */
export interface BudgetYear {
  readonly year: number;
  /** Capital: machines, installation and all else that is paid once, less what is avoided or traded in. */
  readonly once: Quantity<Decimal>;
  /** Revenue: running cost, and payments for machines that are not bought. */
  readonly running: Quantity<Decimal>;
  readonly total: Quantity<Decimal>;
}

export const paidOnce = formula<{ investment: Decimal; payments: Decimal; worth: Decimal }, Decimal>({
  id: 'money.paid-once',
  yields: 'Bought and paid once, beyond today’s practice',
  words:
    'The outlay of the year, without payments for machines that are not bought, and without what machines are worth at the end, which nobody is paid.',
  expression: 'I - u + w',
  inputs: {
    investment: { symbol: 'I', unit: 'currency', words: 'outlay of the year' },
    payments: { symbol: 'u', unit: 'currency', words: 'payments for machines that are not bought' },
    worth: { symbol: 'w', unit: 'currency', words: 'worth of the machines at the end, taken off in it' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ investment, payments, worth }) => addUp([investment, payments.negated(), worth])
});

export const runningBeyondToday = formula<{ saving: Decimal; payments: Decimal }, Decimal>({
  id: 'money.running-beyond-today',
  yields: 'Running cost beyond today’s practice',
  words: 'Payments for machines that are not bought, less what the year saves.',
  expression: 'u - s',
  inputs: {
    saving: { symbol: 's', unit: 'currency', words: 'saving of the year' },
    payments: { symbol: 'u', unit: 'currency', words: 'payments for machines that are not bought' }
  },
  unit: 'currency',
  source: 'definition',
  // Added to 0, so that nothing is 0 and not −0.
  compute: ({ saving, payments }) => addUp([payments, saving.negated()])
});

export const toBeFound = formula<{ once: Decimal; running: Decimal }, Decimal>({
  id: 'money.to-be-found',
  yields: 'To be found in the budget year, beyond today’s practice',
  words: 'What is paid once, and the running cost.',
  expression: 'o + v',
  inputs: {
    once: { symbol: 'o', unit: 'currency', words: 'bought and paid once' },
    running: { symbol: 'v', unit: 'currency', words: 'running cost' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ once, running }) => addUp([once, running])
});

/** The budget years 0 … 5, or to the end of a shorter appraisal. */
export function budgetView(
  r: Reckoner,
  { years, worthAtEnd }: { years: readonly CashFlowYear[]; worthAtEnd: Quantity<Decimal> }
): BudgetYear[] {
  const nothing = r.assumption(new Decimal(0), 'currency', 'The appraisal goes on after this year.');
  return years.slice(0, lastBudgetYear + 1).map(({ year, investment, payments, saving }) => {
    const worth = year === years.length - 1 ? worthAtEnd : nothing;
    const once = r.apply(paidOnce, { investment, payments, worth });
    const running = r.apply(runningBeyondToday, { saving, payments });
    return { year, once, running, total: r.apply(toBeFound, { once, running }) };
  });
}
