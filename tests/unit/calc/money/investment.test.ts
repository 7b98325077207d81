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
  buysMachine = true,
  monitors = '0'
}: {
  machine?: Partial<Machine>;
  scenario?: Partial<Scenario>;
  accounting?: Partial<Accounting>;
  buysMachine?: boolean;
  monitors?: string;
} = {}): Investment =>
  investment(plain, {
    scenario: { ...scenario, ...scenarioChange },
    machine: { ...machine, ...machineChange },
    buysMachine,
    monitors: plain.assumption(new Decimal(monitors), 'currency', ''),
    accounting: { ...accounting, ...accountingChange }
  });

const totals = ({ outlays }: Investment): string[] => outlays.map(({ total }) => text(plain.value(total)));
const kind = ({ outlays }: Investment, name: OutlayKind): string[] =>
  outlays.map(({ kinds }) => text(plain.value(kinds[name])));
const shares = ({ shareInUse }: Investment): number[] => shareInUse.map((share) => plain.value(share));

describe('investment', () => {
  test('buys all units now, installs them, trades in the old ones, and adds one-off cost and monitors', () => {
    const given = invest({ scenario: { oneOffCost: '3000' }, monitors: '2600' });
    // 4 × (48 000 + 1 500 − 2 000) + 3 000 + 2 600
    expect(totals(given)).toEqual(['195600', ...Array<string>(10).fill('0')]);
    expect(text(plain.value(given.initial))).toBe('195600');
    expect(shares(given).slice(1)).toEqual(Array(10).fill(1));
  });

  test('follows a phased purchase, each unit paid in its year and in use from the next', () => {
    const given = invest({ scenario: { unitsByYear: [1, 0, 2, 1] }, accounting: { appraisalYears: 5 } });
    expect(kind(given, 'purchase')).toEqual(['48000', '0', '96000', '48000', '0', '0']);
    expect(kind(given, 'tradeIn')).toEqual(['2000', '0', '4000', '2000', '0', '0']);
    expect(shares(given)).toEqual([0, 0.25, 0.25, 0.75, 1, 1]);
    expect(text(plain.value(given.initial))).toBe('190000');
  });

  test('never reaches more than the whole with more units than are needed, nor all with fewer', () => {
    expect(shares(invest({ scenario: { unitsByYear: [3, 3] } })).slice(1, 4)).toEqual([0.75, 1, 1]);
    expect(shares(invest({ scenario: { unitsByYear: [2] } })).at(-1)).toBe(0.5);
  });

  test('replaces each cohort at the end of its life, before the end of the appraisal, without trade-in', () => {
    const given = invest({
      machine: { lifeYears: 4, units: 2 },
      scenario: { unitsByYear: [1, 1] },
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
    const left = (lifeYears: number, appraisalYears: number, unitsByYear: number[] | null = null): string =>
      kind(
        invest({
          machine: { lifeYears },
          scenario: { unitsByYear },
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

  test('buys no machine where today’s stays, and then applies from the first year', () => {
    const given = invest({
      buysMachine: false,
      scenario: { oneOffCost: '500', unitsByYear: [1, 1] },
      monitors: '100'
    });
    expect(totals(given)).toEqual(['600', ...Array<string>(10).fill('0')]);
    expect(new Set(shares(given))).toEqual(new Set([1]));
  });
});
