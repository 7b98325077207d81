import { describe, expect, test } from 'vitest';
import { consumablePrices } from '#lib/calc/money/consumable-prices.ts';
import { costOfCase } from '#lib/calc/money/consumables.ts';
import { costLines } from '#lib/calc/money/cost-lines.ts';
import { MoneyInputError } from '#lib/calc/money/money-input-error.ts';
import { text } from '#lib/calc/money/decimal.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { accounting, amountsOf, machine, prices, scenario } from './business-case.ts';
import type { BareAmounts } from './business-case.ts';

const linesOf = (bare: BareAmounts, change: { carbon?: string; recovery?: string; extra?: string } = {}) => {
  const cost = costLines(plain, {
    prices: consumablePrices(plain, prices),
    cells: {
      ...prices,
      accounting: {
        ...accounting,
        carbonPricePerTonne: change.carbon ?? '0',
        recoveryMinuteValue: change.recovery ?? '0'
      }
    },
    scenario: { ...scenario, yearlyExtraCost: change.extra ?? '0' },
    serviced: [
      {
        payment: null,
        machine: { ...machine, servicePerUnitPerYear: '1800.00' },
        units: plain.assumption(3, '1', 'Given by the test.')
      }
    ],
    used: amountsOf(plain, bare)
  });
  const lines: Record<string, string> = { total: text(plain.value(cost.total)) };
  for (const [line, value] of Object.entries(cost.lines)) lines[line] = text(plain.value(value));
  return { lines, byAgent: cost.byAgent };
};

describe('the ledger of a year', () => {
  test('prices each line by hand-checked sums', () => {
    // 99 bottles of 250 mL, of which 1 % stays behind: 100 bottles to be bought would hold 24 750 mL usable.
    const { lines, byAgent } = linesOf(
      {
        sevofluraneMl: 24_750,
        desfluraneMl: 480,
        oxygenM3: 100,
        airM3: 200,
        nitrousOxideKg: 10,
        nitrousOxideLostKg: 5,
        sodaLimeKg: 20,
        electricityKWh: 1000,
        co2eKg: 2500,
        recoveryMinutes: 60,
        captureCost: '77.50'
      },
      { carbon: '40', recovery: '0.50', extra: '12.34' }
    );
    expect(lines).toMatchObject({
      agents: '11993', // 100 × 118 + 2 × 96.50
      gases: '160', // 100 × 0.90 + 200 × 0.05 + 15 × 4
      absorbent: '180',
      capture: '77.5',
      service: '5400',
      electricity: '250',
      other: '12.34',
      carbon: '100',
      recovery: '-30',
      total: '18072.84' // of cash: without the carbon price and the recovery minutes
    });
    expect(plain.value(byAgent.sevoflurane!.bottles)).toBeCloseTo(100, 12);
    expect(plain.value(byAgent.desflurane!.bottles)).toBe(2);
  });

  test('of nothing used costs only the service', () => {
    expect(linesOf({}).lines).toMatchObject({
      agents: '0',
      gases: '0',
      carbon: '0',
      recovery: '0',
      total: '5400'
    });
  });

  test('of one case holds agents, gases and absorbent', () => {
    const cost = costOfCase(
      plain,
      consumablePrices(plain, prices),
      amountsOf(plain, { desfluraneMl: 24, oxygenM3: 0.1, sodaLimeKg: 0.05 })
    );
    expect(text(plain.value(cost))).toBe('10.19'); // 9.65 + 0.09 + 0.45
  });

  test('prices each absorbent that is used', () => {
    const kg = (value: number) => plain.assumption(value, 'kg', '');
    const used = { ...amountsOf(plain, {}), absorbentKg: { 'soda-lime': kg(2), other: kg(1) } };
    expect(text(plain.value(costOfCase(plain, consumablePrices(plain, prices), used)))).toBe('29');
  });
});

describe('what has no price is refused with the place', () => {
  const failure = (change: Partial<typeof prices>): MoneyInputError => {
    try {
      costOfCase(
        plain,
        consumablePrices(plain, { ...prices, ...change }),
        amountsOf(plain, { sevofluraneMl: 1 })
      );
    } catch (error) {
      if (error instanceof MoneyInputError) return error;
    }
    throw new Error('It was not refused.');
  };
  const [sevoflurane, desflurane] = prices.agents as [(typeof prices.agents)[0], (typeof prices.agents)[0]];

  test('an agent without a bottle', () => {
    expect(failure({ agents: [desflurane] }).path).toBe('agents.sevoflurane');
  });

  test('a bottle of which nothing can be used', () => {
    const error = failure({ agents: [{ ...sevoflurane, unusablePercent: 100 }, desflurane] });
    expect(error.path).toBe('agents.sevoflurane.unusablePercent');
    expect(error.message).toContain('100 %');
  });

  test('an empty bottle', () => {
    expect(failure({ agents: [{ ...sevoflurane, bottleMl: 0 }, desflurane] }).path).toBe(
      'agents.sevoflurane.bottleMl'
    );
  });

  test('an absorbent', () => {
    expect(failure({ absorbents: [] }).path).toBe('absorbents.soda-lime');
  });
});
