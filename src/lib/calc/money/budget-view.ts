/** What the budgets of the first years must hold beyond today's: cash as it falls due, not discounted. */
import type { AgainstBaseline } from '../estimate-types.ts';
import { amount, text } from './decimal.ts';

/** Years 0 to 5 are what a budget is made for. */
export const lastBudgetYear = 5;

/** Cash of one budget year beyond today's practice; above 0 it has to be found, below 0 it comes free. Decimal text. */
export interface BudgetYear {
  readonly year: number;
  /** Capital: machines, installation and all else that is paid once, less what is avoided or traded in. */
  readonly once: string;
  /** Revenue: running cost. */
  readonly running: string;
  readonly total: string;
  /** False in the last year where the cash flow counts what machines are worth: its figures are then not these. */
  readonly isAsCounted: boolean;
}

/**
 * The budget years 0 … 5, or to the end of a shorter appraisal.
 *
 * once_t = outlays of the year, without what machines are worth at the end, which nobody is paid; running_t = −saving_t.
 */
export function budgetView({
  years,
  worthAtEnd
}: Pick<AgainstBaseline, 'years' | 'worthAtEnd'>): BudgetYear[] {
  return years.slice(0, lastBudgetYear + 1).map(({ year, investment, saving }) => {
    const outlay = amount(investment);
    const once = year === years.length - 1 ? outlay.plus(amount(worthAtEnd)) : outlay;
    const running = amount('0').minus(amount(saving));
    return {
      year,
      once: text(once),
      running: text(running),
      total: text(once.plus(running)),
      isAsCounted: once.eq(outlay)
    };
  });
}
