import { describe, expect, test } from 'vitest';
import { text } from '#lib/calc/money/decimal.ts';
import { plain } from '#lib/calc/working/plain.ts';
import type { CashFlowYear } from '#lib/calc/money/cash-flow.ts';
import type { Quantity } from '#lib/calc/working/reckoner.ts';
import type { Decimal } from '#lib/calc/money/decimal.ts';
import { accounting, appraiseCase, machine, prices, scenario } from './business-case.ts';
import type { Case } from './business-case.ts';

const old = { ...machine, id: 'old', units: 2, servicePerUnitPerYear: '1000' };
const bought = {
  ...machine,
  units: 2,
  unitPrice: '10000',
  tradeInPerUnit: '0',
  installationPerUnit: '0',
  servicePerUnitPerYear: '1500'
};
const given: Case = {
  prices,
  accounting: { ...accounting, discountRatePercent: 10, appraisalYears: 3 },
  // 100 bottles against 20, at 118 each.
  today: {
    scenario: { ...scenario, id: 'today', baseline: true },
    machine: old,
    used: { sevofluraneMl: 24_750, co2eKg: 30_000 },
    monitors: '0'
  },
  then: { scenario, machine: bought, used: { sevofluraneMl: 4950, co2eKg: 6000 }, monitors: '0' }
};
const texts = (list: readonly Quantity<Decimal>[]): string[] => list.map((one) => text(plain.value(one)));

describe('the cash flow against today', () => {
  test('sets the yearly saving by line against the investment, year by year', () => {
    const { flow, netPresentValue, simplePayback } = appraiseCase(plain, given);
    expect(text(plain.value(flow.yearlySavings.agents))).toBe('9440');
    expect(text(plain.value(flow.yearlySavings.service))).toBe('-1000');
    expect(text(plain.value(flow.yearlySaving))).toBe('8440');
    expect(text(plain.value(flow.investment))).toBe('20000');
    expect(texts(flow.years.map(({ net }) => net))).toEqual(['-20000', '8440', '8440', '8440']);
    expect(texts(flow.years.map(({ cumulative }) => cumulative))).toEqual([
      '-20000',
      '-11560',
      '-3120',
      '5320'
    ]);
    expect(plain.value(simplePayback)).toBeCloseTo(2 + 3120 / 8440, 14);
    // 8 440 × 2.486 851 990 984 2 − 20 000
    expect(plain.value(netPresentValue).toFixed(4)).toBe('989.0308');
  });

  test('lets agents, service and carbon grow from the second year on, each at its own rate', () => {
    const { flow } = appraiseCase(plain, {
      ...given,
      accounting: {
        ...given.accounting,
        agentGrowthPercent: 10,
        serviceGrowthPercent: 20,
        carbonGrowthPercent: 50,
        carbonPricePerTonne: '100'
      }
    });
    expect(texts(flow.years.map(({ savings }) => savings.agents))).toEqual(['0', '9440', '10384', '11422.4']);
    expect(texts(flow.years.map(({ savings }) => savings.service))).toEqual(['0', '-1000', '-1200', '-1440']);
    expect(texts(flow.years.map(({ savings }) => savings.carbon))).toEqual(['0', '2400', '3600', '5400']);
    expect(texts(flow.years.map(({ savings }) => savings.gases))).toEqual(['0', '0', '0', '0']);
  });

  test('leaves a carbon price and the value of recovery minutes out of all cash, and counts them in the social view', () => {
    const without = appraiseCase(plain, given);
    const counted = appraiseCase(plain, {
      ...given,
      accounting: {
        ...given.accounting,
        carbonPricePerTonne: '100',
        carbonGrowthPercent: 50,
        recoveryMinuteValue: '2'
      },
      then: { ...given.then, used: { ...given.then.used, recoveryMinutes: 300 } }
    });
    const cash = (of: typeof counted) => [
      text(plain.value(of.flow.yearlySaving)),
      ...texts(of.flow.years.flatMap(({ saving, net, cumulative }) => [saving, net, cumulative])),
      text(plain.value(of.netPresentValue)),
      text(plain.value(of.ownership.total)),
      plain.value(of.simplePayback),
      plain.value(of.discountedPayback),
      plain.value(of.internalRates.ratePercent),
      plain.value(of.benefitCostRatio),
      plain.value(of.costPerTonneAvoided)
    ];
    expect(cash(counted)).toEqual(cash(without));
    // 8 440 + 24 t × 100 + 300 min × 2
    expect(text(plain.value(counted.shadow.yearlySaving))).toBe('11440');
    // Carbon 2 400, 3 600, 5 400 and recovery 600 a year, at 10 %: 3 000 / 1.1 + 4 200 / 1.21 + 6 000 / 1.331.
    const beside = 3000 / 1.1 + 4200 / 1.21 + 6000 / 1.331;
    expect(plain.value(counted.shadow.npv).toNumber()).toBeCloseTo(989.030804 + beside, 5);
    expect(text(plain.value(without.shadow.npv))).toBe(text(plain.value(without.netPresentValue)));
  });

  test('reaches only the share of the saving that the machines in use bring', () => {
    const { flow } = appraiseCase(plain, {
      ...given,
      then: { ...given.then, scenario: { ...scenario, unitsByYear: [1, 1] } }
    });
    expect(texts(flow.years.map(({ net }) => net))).toEqual(['-10000', '-5780', '8440', '8440']);
  });

  test('leaves out what today’s practice pays as well', () => {
    const monitors = {
      ...given,
      today: { ...given.today, monitors: '500' },
      then: { ...given.then, monitors: '700' }
    };
    expect(text(plain.value(appraiseCase(plain, monitors).flow.investment))).toBe('20200');
  });

  test('has not paid back while a replacement is still to undo it', () => {
    const short = {
      ...given,
      accounting: { ...given.accounting, appraisalYears: 6 },
      then: { ...given.then, machine: { ...bought, lifeYears: 3 } }
    };
    const { simplePayback, flow, ahead } = appraiseCase(plain, short);
    // −20 000, −11 560, −3 120, 5 320 − 20 000: the replacement comes first.
    expect(texts(flow.years.map(({ cumulative }) => cumulative)).slice(2)).toEqual([
      '-3120',
      '-14680',
      '-6240',
      '2200',
      '10640'
    ]);
    expect(plain.value(simplePayback)).toBeCloseTo(4 + 6240 / 8440, 14);
    // Just before the replacement at the end of year 3 the sum was 5 320: ahead, for 0.63 years.
    expect(
      ahead.map(({ fromYears, untilYears }) => [plain.value(fromYears), plain.value(untilYears)])
    ).toEqual([[expect.closeTo(2 + 3120 / 8440, 14), 3]]);
    const longer = appraiseCase(plain, {
      ...short,
      then: { ...short.then, machine: { ...bought, lifeYears: 4 } }
    });
    // −3 120, 5 320, 13 760 − 20 000 = −6 240, 2 200, 10 640: the crossing in year 3 lasts to the end of year 4.
    expect(plain.value(longer.simplePayback)).toBeCloseTo(4 + 6240 / 8440, 14);
    expect(longer.ahead.map(({ untilYears }) => plain.value(untilYears))).toEqual([4]);
  });

  test('pays nothing back by what machines are worth at the end, nor by a replacement due then', () => {
    const years = (appraisalYears: number, residualValue: 'none' | 'straight-line') =>
      appraiseCase(plain, {
        ...given,
        accounting: { ...given.accounting, appraisalYears, residualValue },
        then: { ...given.then, machine: { ...bought, lifeYears: 4 } }
      });
    // Two years save 16 880 of 20 000; the machines are then worth half, so that the sum ends above 0.
    const short = years(2, 'straight-line');
    expect(text(plain.value(short.flow.worthAtEnd))).toBe('10000');
    expect(text(plain.value((short.flow.years[2] as CashFlowYear).cumulative))).toBe('6880');
    expect(plain.value(short.simplePayback)).toBeNull();
    expect(plain.value(short.discountedPayback)).toBeNull();
    // Replaced at the end of year 4, which is the end of the appraisal: the payback of year 3 lasts.
    expect(plain.value(years(4, 'none').simplePayback)).toBeCloseTo(2 + 3120 / 8440, 14);
  });

  test('pays at once where something is saved and nothing invested, and not at all where nothing is', () => {
    const free = { ...given, then: { ...given.then, machine: { ...old, servicePerUnitPerYear: '900' } } };
    expect(plain.value(appraiseCase(plain, free).simplePayback)).toBe(0);
    const same = { ...given, then: { ...given.today, scenario: { ...scenario, id: 'twin' } } };
    expect(plain.value(appraiseCase(plain, same).simplePayback)).toBeNull();
  });

  test('takes a purchase avoided at the end of its year, as in a scenario that loses money every year', () => {
    // Nothing bought, 1 000 more a year, 3 500 of purchases avoided in year 2.
    const losing = {
      ...given,
      accounting: { ...given.accounting, appraisalYears: 8 },
      then: {
        ...given.today,
        scenario: {
          ...scenario,
          yearlyExtraCost: '1000',
          avoidedPurchases: [{ year: 2, units: 1, unitPrice: '3500' }]
        }
      }
    };
    const { simplePayback, discountedPayback, ahead } = appraiseCase(plain, losing);
    expect([plain.value(simplePayback), plain.value(discountedPayback)]).toEqual([null, null]);
    // −1 000, −2 000 + 3 500 = 1 500, 500, −500: from 2 to 3.5 years.
    expect(
      ahead.map(({ fromYears, untilYears }) => [plain.value(fromYears), plain.value(untilYears)])
    ).toEqual([[2, 3.5]]);
  });
});

describe('further figures', () => {
  test('are those worked out by hand', () => {
    const found = appraiseCase(plain, given);
    // Today: (11 800 + 2 000) × 3; the scenario: 20 000 + (2 360 + 3 000) × 3.
    expect(text(plain.value(found.ownership.total))).toBe('36080');
    // 5 360 a year, and 20 000 / 2.486 851 990 984 2.
    expect(plain.value(found.ownership.equivalentAnnualCost).toFixed(4)).toBe('13402.2961');
    expect(plain.value(found.benefitCostRatio)).toBeCloseTo(20989.0308039 / 20000, 10);
    // 989.03 are saved with 72 t: no ratio is put on that.
    expect(plain.value(found.costPerTonneAvoided)).toBeNull();
    // At 11 000 a unit 2 000 more are paid: 1 010.969 196 over 3 × 24 t.
    const dearer = appraiseCase(plain, {
      ...given,
      then: { ...given.then, machine: { ...bought, unitPrice: '11000' } }
    });
    expect(plain.value(dearer.costPerTonneAvoided)?.toFixed(4)).toBe('14.0412');
    expect(found.internalRates.kind).toBe('one');
    // The root of 8 440 (x + x² + x³) = 20 000, by halving elsewhere.
    expect(plain.value(found.internalRates.ratePercent)).toBeCloseTo(12.78824679447571, 10);
  });

  test('count the tonnes with the machines in use', () => {
    const phased = {
      ...given,
      accounting: { ...given.accounting, discountRatePercent: 0 },
      then: { ...given.then, scenario: { ...scenario, unitsByYear: [1, 1] } }
    };
    // At 11 000 a unit: −11 000 − 6 780 + 8 440 + 8 440 = −900 in three years, over 24 t × (0.5 + 1 + 1).
    phased.then = { ...phased.then, machine: { ...bought, unitPrice: '11000' } };
    expect(plain.value(appraiseCase(plain, phased).costPerTonneAvoided)?.toFixed(6)).toBe('15.000000');
  });

  test('are missing, with the reason in the working, where they would mean nothing', () => {
    const nothing = appraiseCase(plain, {
      ...given,
      then: { ...given.then, machine: old, used: { ...given.then.used, co2eKg: 30_000 } }
    });
    expect(plain.value(nothing.benefitCostRatio)).toBeNull();
    expect(plain.value(nothing.costPerTonneAvoided)).toBeNull();
    expect(nothing.internalRates.kind).toBe('none');
    expect(
      plain.value(
        appraiseCase(plain, { ...given, then: { ...given.then, used: { co2eKg: 30_001 } } })
          .costPerTonneAvoided
      )
    ).toBeNull();
  });
});
