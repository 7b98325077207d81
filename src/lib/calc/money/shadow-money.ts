/**
 * The social view: what nobody is paid, a carbon price and the value put on recovery minutes, counted together with the
 * cash. It stands beside the figures of cash and is in none of them.
 */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { CashFlow } from './cash-flow.ts';
import { shadowLineNames } from './cost-lines.ts';
import type { Decimal } from './decimal.ts';
import { addUp } from './sum-of-amounts.ts';
import { discountedFlow } from './sums-over-years.ts';
import type { YearFactors } from './time-factors.ts';

export interface SocialView {
  readonly yearlySaving: Quantity<Decimal>;
  readonly npv: Quantity<Decimal>;
}

export const socialSaving = formula<{ cash: Decimal; carbon: Decimal; recovery: Decimal }, Decimal>({
  id: 'money.social-saving',
  yields: 'Saving of a year, social view',
  words: 'The saving in cash, with what the carbon price and the value of recovery minutes would add to it.',
  expression: 's + c + r',
  inputs: {
    cash: { symbol: 's', unit: 'currency', words: 'saving in cash' },
    carbon: { symbol: 'c', unit: 'currency', words: 'saving at the carbon price' },
    recovery: { symbol: 'r', unit: 'currency', words: 'value of recovery minutes saved' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ cash, carbon, recovery }) => addUp([cash, carbon, recovery])
});

export const socialNetPresentValue = formula<{ cash: Decimal; shadow: readonly Decimal[] }, Decimal>({
  id: 'money.social-net-present-value',
  yields: 'Net present value, social view',
  words: 'The net present value in cash, and the discounted carbon and recovery savings of all years.',
  expression: 'N + sum(s)',
  inputs: {
    cash: { symbol: 'N', unit: 'currency', words: 'net present value in cash' },
    shadow: {
      symbol: 's',
      unit: 'currency',
      words: 'discounted savings of carbon and recovery, year by year'
    }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ cash, shadow }) => addUp([cash, ...shadow])
});

/** The social view of a cash flow whose net present value is given. */
export function socialView(
  r: Reckoner,
  { flow, npv, factors }: { flow: CashFlow; npv: Quantity<Decimal>; factors: readonly YearFactors[] }
): SocialView {
  const { carbon, recovery } = flow.yearlySavings;
  return {
    yearlySaving: r.apply(socialSaving, { cash: flow.yearlySaving, carbon, recovery }),
    npv: r.apply(socialNetPresentValue, {
      cash: npv,
      shadow: flow.years.slice(1).flatMap(({ year, savings }) =>
        shadowLineNames.map((line) => {
          const factor = factors[year];
          if (factor === undefined) throw new Error(`The appraisal has no year ${year}.`);
          return r.apply(discountedFlow, { flow: savings[line], discount: factor.discount });
        })
      )
    })
  };
}
