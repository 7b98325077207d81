/**
 * What a year's distance does to money. Year 0 is the day of the decision; year t is the t-th year after it, its flows
 * counted at its end. The first year runs at today's prices, so year t's are (1 + g)^(t − 1) of them.
 */
import type { CostLine } from '../estimate-types.ts';
import type { Accounting } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { Decimal } from './decimal.ts';
import { keptByText } from './kept-by-text.ts';
import { MoneyInputError } from './money-input-error.ts';

export interface YearFactors {
  readonly year: number;
  readonly discount: Quantity<Decimal>;
  /** Price level of the lines that grow, against today's; without those that do not grow, and empty in year 0. */
  readonly growth: Readonly<Partial<Record<CostLine, Quantity<Decimal>>>>;
  /** Price level of the lines that may grow and do not, for the working alone: a bulk run does without a factor of 1. */
  readonly standing: Readonly<Partial<Record<CostLine, Quantity<Decimal>>>>;
}

export const discountFactor = formula<{ ratePercent: number; years: number }, Decimal>({
  id: 'money.discount-factor',
  yields: 'Discount factor',
  words: 'What one unit of money of that year is worth on the day of the decision.',
  expression: '1 / (1 + i / 100)^t',
  inputs: {
    ratePercent: { symbol: 'i', unit: '%', words: 'discount rate per year' },
    years: { symbol: 't', unit: '1', words: 'years from the decision', testRange: [0, 60] }
  },
  unit: '1',
  source: 'HM Treasury, The Green Book (discounting); definition',
  compute: ({ ratePercent, years }) => new Decimal(1).div(rise(ratePercent).pow(years))
});

export const growthFactor = formula<{ growthPercent: number; years: number }, Decimal>({
  id: 'money.growth-factor',
  yields: 'Price level against today',
  words: 'Growth compounds from the second year on: the first year is at today’s prices.',
  expression: '(1 + g / 100)^(t - 1)',
  inputs: {
    growthPercent: { symbol: 'g', unit: '%', words: 'growth per year' },
    years: { symbol: 't', unit: '1', words: 'years from the decision', testRange: [1, 60] }
  },
  unit: '1',
  source: 'definition',
  compute: ({ growthPercent, years }) => rise(growthPercent).pow(years - 1)
});

const rise = (percent: number): Decimal => new Decimal(percent).div(100).plus(1);

const growthCells = {
  agents: 'agentGrowthPercent',
  service: 'serviceGrowthPercent',
  carbon: 'carbonGrowthPercent'
} as const satisfies Partial<Record<CostLine, keyof Accounting>>;

/** Plain factors: what-if runs ask for the same ones in every draw. */
const keptFactors = keptByText<readonly YearFactors[]>(100);

/**
 * The factors of the years 0 … `appraisalYears`, the same for all scenarios of a workbook.
 * @throws MoneyInputError where the appraisal is not of 1 to 60 whole years, or a rate not above −100 %.
 */
export function timeFactors(r: Reckoner, accounting: Accounting): readonly YearFactors[] {
  if (r.records) return makeFactors(r, accounting);
  const { appraisalYears, discountRatePercent } = accounting;
  const growth = Object.values(growthCells).map((cell) => accounting[cell]);
  return keptFactors([appraisalYears, discountRatePercent, ...growth].join(), () =>
    makeFactors(r, accounting)
  );
}

/** Discount factors (1 + i)^−t of the years 0 … `years` at any rate. */
export const discountFactors = (
  r: Reckoner,
  { ratePercent, years }: { ratePercent: Quantity; years: number }
): Pick<YearFactors, 'discount'>[] =>
  Array.from({ length: years + 1 }, (_, year) => ({
    discount: r.apply(discountFactor, {
      ratePercent,
      years: r.assumption(year, '1', `Year ${year} from the day of the decision.`)
    })
  }));

function makeFactors(r: Reckoner, accounting: Accounting): YearFactors[] {
  check(accounting);
  const ratePercent = r.cell(accounting.discountRatePercent, '%', 'accounting', 'discountRatePercent');
  const cells = Object.entries(growthCells) as [CostLine, (typeof growthCells)[keyof typeof growthCells]][];
  const growing = cells.filter(([, cell]) => accounting[cell] !== 0);
  const standing = r.records ? cells.filter(([, cell]) => accounting[cell] === 0) : [];
  return Array.from({ length: accounting.appraisalYears + 1 }, (_, year) => {
    const years = r.assumption(year, '1', `Year ${year} of the appraisal.`);
    const levels = (lines: typeof cells): Partial<Record<CostLine, Quantity<Decimal>>> => {
      const level: Partial<Record<CostLine, Quantity<Decimal>>> = {};
      if (year > 0)
        for (const [line, cell] of lines)
          level[line] = r.apply(growthFactor, {
            growthPercent: r.cell(accounting[cell], '%', 'accounting', cell),
            years
          });
      return level;
    };
    const discount = r.apply(discountFactor, { ratePercent, years });
    return { year, discount, growth: levels(growing), standing: levels(standing) };
  });
}

function check(accounting: Accounting): void {
  const { appraisalYears } = accounting;
  if (!Number.isInteger(appraisalYears) || appraisalYears < 1 || appraisalYears > 60)
    throw new MoneyInputError(
      'accounting.appraisalYears',
      `An appraisal of ${appraisalYears} years: 1 to 60 whole years are allowed.`
    );
  for (const cell of ['discountRatePercent', ...Object.values(growthCells)] as const)
    if (!(accounting[cell] > -100))
      throw new MoneyInputError(
        `accounting.${cell}`,
        `A rate of ${accounting[cell]} % a year: more than −100 % is needed.`
      );
}
