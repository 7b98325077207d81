import { describe, expect, test } from 'vitest';
import type { Accounting, Machine, Scenario } from '#lib/calc/input.ts';
import { Decimal, text } from '#lib/calc/money/decimal.ts';
import { investment } from '#lib/calc/money/investment.ts';
import type { Investment, OutlayKind } from '#lib/calc/money/investment.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { accounting, machine, scenario } from './business-case.ts';

const invest = ({
  machine: machineChange = {},
  scenario: scenarioChange = {},
  accounting: accountingChange = {},
  bought = [4],
  theatres = bought,
  monitors = ['0']
}: {
  machine?: Partial<Machine>;
  scenario?: Partial<Scenario>;
  accounting?: Partial<Accounting>;
  /** Units by year. */
  bought?: readonly number[];
  /** Theatres that they come to. */
  theatres?: readonly number[];
  monitors?: readonly string[];
} = {}): Investment => {
  const changed = { ...machine, ...machineChange };
  return investment(plain, {
    scenario: { ...scenario, ...scenarioChange },
    renewals: [],
    arrivals: bought.flatMap((units, year) =>
      units > 0
        ? [
            {
              year,
              machine: changed,
              move: null,
              units: plain.assumption(units, '1', ''),
              tradedIn: plain.assumption(theatres[year] ?? 0, '1', '')
            }
          ]
        : []
    ),
    theatres: () => plain.assumption(4, '1', ''),
    monitors: monitors.map((cost, year) => ({
      year,
      cost: plain.assumption(new Decimal(cost), 'currency', '')
    })),
    accounting: { ...accounting, ...accountingChange }
  });
};

const totals = ({ outlays }: Investment): string[] => outlays.map(({ total }) => text(plain.value(total)));
const kind = ({ outlays }: Investment, name: OutlayKind): string[] =>
  outlays.map(({ kinds }) => text(plain.value(kinds[name])));

describe('investment', () => {
  test('buys all units now, installs them, trades in the old ones, and adds one-off cost and monitors', () => {
    const given = invest({ scenario: { oneOffCost: '3000' }, monitors: ['2600'] });
    // 4 × (48 000 + 1 500 − 2 000) + 3 000 + 2 600
    expect(totals(given)).toEqual(['195600', ...Array<string>(10).fill('0')]);
    expect(text(plain.value(given.initial))).toBe('195600');
  });

  test('follows a phased purchase, each unit paid in its year', () => {
    const given = invest({ bought: [1, 0, 2, 1], accounting: { appraisalYears: 5 } });
    expect(kind(given, 'purchase')).toEqual(['48000', '0', '96000', '48000', '0', '0']);
    expect(kind(given, 'tradeIn')).toEqual(['2000', '0', '4000', '2000', '0', '0']);
    expect(text(plain.value(given.initial))).toBe('190000');
  });

  test('trades in one old machine for each theatre that a new one comes to, and none for a spare', () => {
    const given = invest({ bought: [3, 2], theatres: [3, 1], accounting: { appraisalYears: 5 } });
    expect(kind(given, 'purchase').slice(0, 2)).toEqual(['144000', '96000']);
    expect(kind(given, 'installation').slice(0, 2)).toEqual(['4500', '3000']);
    expect(kind(given, 'tradeIn').slice(0, 2)).toEqual(['6000', '2000']);
  });

  test('pays for monitors in the years in which they become due', () => {
    expect(kind(invest({ monitors: ['2600', '0', '1300'] }), 'monitors').slice(0, 4)).toEqual([
      '2600',
      '0',
      '1300',
      '0'
    ]);
  });

  test('replaces each cohort at the end of its life, before the end of the appraisal, without trade-in', () => {
    const given = invest({
      machine: { lifeYears: 4 },
      bought: [1, 1],
      accounting: { appraisalYears: 9 }
    });
    // Bought in 0 and 1; lives end in 4, 8 and in 5, 9: the last is the end of the appraisal and buys nothing.
    expect(kind(given, 'replacement')).toEqual([
      '0',
      '0',
      '0',
      '0',
      '49500',
      '49500',
      '0',
      '0',
      '49500',
      '0'
    ]);
    expect(text(plain.value(given.initial))).toBe('95000');
  });

  test('takes the whole year nearest to the end of a broken life', () => {
    const years = (lifeYears: number): number[] =>
      kind(invest({ machine: { lifeYears } }), 'replacement').flatMap((value, year) =>
        value === '0' ? [] : [year]
      );
    expect(years(2.5)).toEqual([3, 5, 8]);
    expect(years(9.4)).toEqual([9]);
    expect(years(9.6)).toEqual([]);
    expect(years(0.2)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
  });

  test('gives back the price less straight-line wear at the end, where asked for', () => {
    const left = (lifeYears: number, appraisalYears: number, bought = [4]): string =>
      kind(
        invest({
          machine: { lifeYears },
          bought,
          accounting: { appraisalYears, residualValue: 'straight-line' }
        }),
        'residual'
      ).at(-1) as string;
    expect(left(10, 10)).toBe('0');
    expect(left(10, 6)).toBe('76800'); // 192 000 × 4/10
    expect(left(4, 6)).toBe('96000'); // replaced in year 4: 192 000 × 2/4
    expect(left(10, 6, [2, 2])).toBe('86400'); // 96 000 × (4 + 5)/10
    expect(kind(invest({ accounting: { appraisalYears: 6 } }), 'residual').at(-1)).toBe('0');
  });

  test('counts purchases avoided against it, in their year; those beyond the appraisal lie outside', () => {
    const given = invest({
      scenario: {
        avoidedPurchases: [
          { year: 0, units: 1, unitPrice: '30000' },
          { year: 3, units: 2, unitPrice: '35000' },
          { year: 3, units: 1, unitPrice: '1000' },
          { year: 40, units: 1, unitPrice: '1' }
        ]
      }
    });
    expect(totals(given).slice(0, 4)).toEqual(['160000', '0', '0', '-71000']);
    expect(text(plain.value(given.initial))).toBe('89000');
  });

  test('refuses a machine without a life', () => {
    expect(() => invest({ machine: { lifeYears: 0 } })).toThrow('A life of 0 years');
  });

  test('buys no machine where today’s stays', () => {
    const given = invest({ bought: [], scenario: { oneOffCost: '500' }, monitors: ['100'] });
    expect(totals(given)).toEqual(['600', ...Array<string>(10).fill('0')]);
  });
});
