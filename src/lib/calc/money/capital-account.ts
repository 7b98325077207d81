/** What is bought and wears out over several years: what of it is written off in each year, and what is left. */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { Decimal } from './decimal.ts';
import { sumCalled } from './sum-of-amounts.ts';

/** Bought at the end of a year (year 0: at once) and written off evenly over its life, from the year after on. */
export interface CapitalItem {
  readonly year: number;
  readonly paid: Quantity<Decimal>;
  readonly lifeYears: Quantity;
}

/** The account of one year, year 0 being the day of the decision. */
export interface CapitalYear {
  readonly bought: Quantity<Decimal>;
  readonly writtenOff: Quantity<Decimal>;
  /** Not yet written off at the end of the year. */
  readonly left: Quantity<Decimal>;
}

export const writtenOffOfItem = formula<
  { paid: Decimal; lifeYears: number; ownedYears: number; thisYear: number },
  Decimal
>({
  id: 'money.written-off-of-item',
  yields: 'Written off in this year',
  words: 'What was paid, times the part of its life that falls in this year.',
  expression: 'p * max(0, min(y / L, 1 - o / L))',
  inputs: {
    paid: { symbol: 'p', unit: 'currency', words: 'what was paid' },
    lifeYears: { symbol: 'L', unit: 'year', words: 'life' },
    ownedYears: { symbol: 'o', unit: 'year', words: 'how long it was owned before this year' },
    thisYear: { symbol: 'y', unit: 'year', words: 'this year' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ paid, lifeYears, ownedYears, thisYear }) =>
    paid.times(
      Decimal.max(
        0,
        Decimal.min(
          new Decimal(thisYear).div(lifeYears),
          new Decimal(1).minus(new Decimal(ownedYears).div(lifeYears))
        )
      )
    )
});

export const boughtInYear = sumCalled('money.bought-in-year', 'Bought in this year, to be written off');
export const writtenOffInYear = sumCalled('money.written-off-in-year', 'Written off in this year');

export const leftOnAccount = formula<{ before: Decimal; bought: Decimal; writtenOff: Decimal }, Decimal>({
  id: 'money.left-on-account',
  yields: 'Not yet written off at the end of the year',
  words: 'What was left the year before and what is bought at the end of this one, less what is written off.',
  expression: 'B + p - w',
  inputs: {
    before: { symbol: 'B', unit: 'currency', words: 'left at the end of the year before' },
    bought: { symbol: 'p', unit: 'currency', words: 'bought' },
    writtenOff: { symbol: 'w', unit: 'currency', words: 'written off' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ before, bought, writtenOff }) => before.plus(bought).minus(writtenOff)
});

/** The account of the years 0 … `horizonYears`. */
export function capitalAccount(
  r: Reckoner,
  { items, horizonYears }: { items: readonly CapitalItem[]; horizonYears: number }
): CapitalYear[] {
  const account: CapitalYear[] = [];
  const nothing = r.assumption(
    new Decimal(0),
    'currency',
    'Nothing was bought before the day of the decision.'
  );
  const thisYear = r.assumption(1, 'year', 'Money is written off year by year.');
  for (let year = 0; year <= horizonYears; year += 1) {
    const bought = r.apply(boughtInYear, {
      amounts: items.filter((item) => item.year === year).map(({ paid }) => paid)
    });
    const writtenOff = r.apply(writtenOffInYear, {
      amounts: items
        .filter((item) => item.year < year)
        .map(({ paid, lifeYears, year: from }) =>
          r.apply(writtenOffOfItem, {
            paid,
            lifeYears,
            ownedYears: r.assumption(
              year - from - 1,
              'year',
              `Bought in year ${from}; this is year ${year}.`
            ),
            thisYear
          })
        )
    });
    const before = account.at(-1)?.left ?? nothing;
    account.push({ bought, writtenOff, left: r.apply(leftOnAccount, { before, bought, writtenOff }) });
  }
  return account;
}
