/**
 * Beside the cash of a scenario: what a department is charged for capital, and tax. Both are off where their rates are 0,
 * and in no other figure: a capital charge is paid from one pocket of the public to another.
 */
import type { Accounting } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { CapitalYear } from './capital-account.ts';
import type { CashFlowYear } from './cash-flow.ts';
import { againstToday } from './cash-flow.ts';
import { Decimal } from './decimal.ts';
import { presentValue } from './present-value.ts';
import { addUp } from './sum-of-amounts.ts';
import { discountFactors } from './time-factors.ts';

/** One year beyond today's practice. */
export interface ChargesOfYear {
  readonly year: number;
  readonly writtenOff: Quantity<Decimal>;
  readonly capitalCharge: Quantity<Decimal>;
  /** Paid in this year, on the year before; below 0: less is to be paid. */
  readonly tax: Quantity<Decimal>;
}

export interface Charges {
  /** Year 0 first, up to the year after the end of the appraisal, in which the tax on its last year falls. */
  readonly years: readonly ChargesOfYear[];
  readonly npvAfterTax: Quantity<Decimal>;
}

export const capitalChargeOfYear = formula<
  { ratePercent: number; before: Decimal; writtenOff: Decimal },
  Decimal
>({
  id: 'money.capital-charge',
  yields: 'Capital charge of the year',
  words:
    'The rate, on what is not written off on average over the year: what was left before, less half of what is written off.',
  expression: 'c / 100 * (B - w / 2)',
  inputs: {
    ratePercent: { symbol: 'c', unit: '%', words: 'capital charge per year' },
    before: { symbol: 'B', unit: 'currency', words: 'not written off at the end of the year before' },
    writtenOff: { symbol: 'w', unit: 'currency', words: 'written off in the year' }
  },
  unit: 'currency',
  source: 'Hansard, House of Lords 13 October 2003 (charge on average relevant net assets)',
  compute: ({ ratePercent, before, writtenOff }) =>
    before.minus(writtenOff.div(2)).times(new Decimal(ratePercent).div(100))
});

export const taxedInYear = formula<
  { net: Decimal; bought: Decimal; writtenOff: Decimal; worth: Decimal },
  Decimal
>({
  id: 'money.taxed-in-year',
  yields: 'Taxed for the year',
  words:
    'The net cash flow, without what is bought to be written off and what machines are worth at the end, less what is written off.',
  expression: 'C + p - w - r',
  inputs: {
    net: { symbol: 'C', unit: 'currency', words: 'net cash flow' },
    bought: { symbol: 'p', unit: 'currency', words: 'bought, to be written off' },
    writtenOff: { symbol: 'w', unit: 'currency', words: 'written off' },
    worth: { symbol: 'r', unit: 'currency', words: 'worth of the machines at the end of the appraisal' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ net, bought, writtenOff, worth }) => net.plus(bought).minus(writtenOff).minus(worth)
});

export const taxOfYear = formula<{ ratePercent: number; taxed: Decimal }, Decimal>({
  id: 'money.tax-of-year',
  yields: 'Tax, paid a year later',
  words: 'The rate, on what is taxed for the year before; below 0 it is relief.',
  expression: 't / 100 * x',
  inputs: {
    ratePercent: { symbol: 't', unit: '%', words: 'rate of tax' },
    taxed: { symbol: 'x', unit: 'currency', words: 'taxed for the year before' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ ratePercent, taxed }) => taxed.times(new Decimal(ratePercent).div(100))
});

export const npvAfterTaxFormula = formula<{ npv: Decimal; tax: Decimal }, Decimal>({
  id: 'money.npv-after-tax',
  yields: 'Net present value after tax',
  words: 'The net present value, less the present value of the tax.',
  expression: 'N - T',
  inputs: {
    npv: { symbol: 'N', unit: 'currency', words: 'net present value' },
    tax: { symbol: 'T', unit: 'currency', words: 'present value of the tax' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ npv, tax }) => addUp([npv, tax.negated()])
});

/**
 * What is charged beyond today's practice; null where both rates are 0.
 *
 * capital charge_t = c (B_t−1 − w_t / 2) of the scenario less today's; tax_t+1 = τ (C_t + p_t − w_t − r_t), where p is
 * bought and w written off over the lives of machines and their replacements, straight line, and r what machines are
 * worth at the end. All else that is paid is taken off in its year. What is not written off by the end of the appraisal
 * brings no relief.
 */
export function charges(
  r: Reckoner,
  {
    accounting,
    years,
    worthAtEnd,
    npv,
    today,
    scenario
  }: {
    accounting: Accounting;
    years: readonly Pick<CashFlowYear, 'net'>[];
    worthAtEnd: Quantity<Decimal>;
    npv: Quantity<Decimal>;
    today: readonly CapitalYear[];
    scenario: readonly CapitalYear[];
  }
): Charges | null {
  const { capitalChargePercent, taxPercent, discountRatePercent } = accounting;
  if (capitalChargePercent === 0 && taxPercent === 0) return null;
  const chargeRate = r.cell(capitalChargePercent, '%', 'accounting', 'capitalChargePercent');
  const taxRate = r.cell(taxPercent, '%', 'accounting', 'taxPercent');
  const nothing = r.assumption(new Decimal(0), 'currency', 'Nothing of this kind falls in this year.');
  const beyond = (of: (year: CapitalYear) => Quantity<Decimal>, year: number): Quantity<Decimal> => {
    const [mine, todays] = [scenario[year], today[year]];
    if (mine === undefined || todays === undefined) return nothing;
    // Above 0 where the scenario has more: what it costs is the turn of what it saves.
    return r.apply(againstToday, { today: of(mine), scenario: of(todays) });
  };
  const last = years.length - 1;
  const rows = Array.from({ length: last + 2 }, (_, year): ChargesOfYear => {
    const writtenOff = year > last ? nothing : beyond((each) => each.writtenOff, year);
    const before = year - 1;
    const flow = years[before];
    return {
      year,
      writtenOff,
      capitalCharge:
        year === 0 || year > last
          ? nothing
          : r.apply(capitalChargeOfYear, {
              ratePercent: chargeRate,
              before: beyond((each) => each.left, before),
              writtenOff
            }),
      tax:
        flow === undefined
          ? nothing
          : r.apply(taxOfYear, {
              ratePercent: taxRate,
              taxed: r.apply(taxedInYear, {
                net: flow.net,
                bought: beyond((each) => each.bought, before),
                writtenOff: beyond((each) => each.writtenOff, before),
                worth: before === last ? worthAtEnd : nothing
              })
            })
    };
  });
  const factors = discountFactors(r, {
    ratePercent: r.cell(discountRatePercent, '%', 'accounting', 'discountRatePercent'),
    years: last + 1
  });
  return {
    years: rows,
    npvAfterTax: r.apply(npvAfterTaxFormula, {
      npv,
      tax: presentValue(r, { flows: rows.map(({ tax }) => tax), factors })
    })
  };
}
