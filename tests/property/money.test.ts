/** What must hold of any business case, whatever its figures. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { annuity } from '#lib/calc/money/annuity.ts';
import { cashLineNames } from '#lib/calc/money/cost-lines.ts';
import { Decimal, amount, text } from '#lib/calc/money/decimal.ts';
import { compareOverEqualService } from '#lib/calc/money/equal-service.ts';
import { internalRates } from '#lib/calc/money/internal-rate.ts';
import { netPresentValue } from '#lib/calc/money/net-present-value.ts';
import type { PaybackYear } from '#lib/calc/money/payback.ts';
import { payback } from '#lib/calc/money/payback.ts';
import { discountFactors } from '#lib/calc/money/time-factors.ts';
import { plain } from '#lib/calc/working/plain.ts';
import {
  accounting,
  appraiseCase,
  machine,
  type Counted,
  type Phased,
  moneyOf,
  paybackYearsOf,
  prices,
  scenario,
  sumsOf
} from '../unit/calc/money/business-case.ts';
import type { Case } from '../unit/calc/money/business-case.ts';

const cents = (low: number, high: number) =>
  fc.integer({ min: low * 100, max: high * 100 }).map((n) => n / 100);
const money = (low: number, high: number) => cents(low, high).map((value) => value.toFixed(2));
const percent = (low: number, high: number) =>
  fc.integer({ min: low * 10, max: high * 10 }).map((n) => n / 10);

const machines = (id: string): fc.Arbitrary<Counted> =>
  fc
    .record({
      units: fc.integer({ min: 0, max: 12 }),
      unitPrice: money(0, 90_000),
      tradeInPerUnit: money(0, 5_000),
      installationPerUnit: money(0, 4_000),
      servicePerUnitPerYear: money(0, 5_000),
      lifeYears: fc.integer({ min: 10, max: 150 }).map((n) => n / 10)
    })
    .map((given) => ({ ...machine, ...given, id }));

const scenarios = (id: string): fc.Arbitrary<Phased> =>
  fc
    .record({
      oneOffCost: money(0, 20_000),
      yearlyExtraCost: money(-2_000, 2_000),
      unitsByYear: fc.option(fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 1, maxLength: 6 })),
      avoidedPurchases: fc.array(
        fc.record({
          year: fc.integer({ min: 0, max: 10 }),
          units: fc.integer({ min: 0, max: 4 }),
          unitPrice: money(0, 50_000)
        }),
        { maxLength: 3 }
      )
    })
    .map((given) => ({ ...scenario, ...given, id }));

const used = fc.record({
  sevofluraneMl: cents(0, 200_000),
  desfluraneMl: cents(0, 100_000),
  oxygenM3: cents(0, 5_000),
  airM3: cents(0, 5_000),
  nitrousOxideKg: cents(0, 900),
  nitrousOxideLostKg: cents(0, 900),
  sodaLimeKg: cents(0, 2_000),
  electricityKWh: cents(0, 9_000),
  co2eKg: cents(0, 90_000),
  recoveryMinutes: cents(0, 9_000),
  captureCost: money(0, 9_000)
});

const cases: fc.Arbitrary<Case> = fc
  .record({
    accounting: fc.record({
      discountRatePercent: percent(-5, 20),
      appraisalYears: fc.integer({ min: 1, max: 15 }),
      carbonPricePerTonne: money(0, 300),
      agentGrowthPercent: percent(-5, 10),
      serviceGrowthPercent: percent(-5, 10),
      carbonGrowthPercent: percent(-5, 10),
      recoveryMinuteValue: money(0, 3),
      residualValue: fc.constantFrom('none' as const, 'straight-line' as const)
    }),
    today: fc.record({
      scenario: scenarios('today'),
      machine: machines('old'),
      used,
      monitors: money(0, 9_000)
    }),
    then: fc.record({
      scenario: scenarios('then'),
      machine: machines('new'),
      used,
      monitors: money(0, 9_000)
    })
  })
  .map((given) => ({ ...given, prices, accounting: { ...accounting, ...given.accounting } }));

const figuresOf = (given: Case) => {
  const of = appraiseCase(plain, given);
  const value = plain.value;
  return {
    money: {
      yearlySaving: value(of.flow.yearlySaving),
      investment: value(of.flow.investment),
      npv: value(of.netPresentValue),
      ownership: value(of.ownership.total),
      equivalent: value(of.ownership.equivalentAnnualCost),
      costPerTonne: value(of.costPerTonneAvoided),
      socialSaving: value(of.shadow.yearlySaving),
      socialNpv: value(of.shadow.npv),
      ...Object.fromEntries(of.flow.years.map(({ net }, year) => [`net${year}`, value(net)])),
      ...Object.fromEntries(
        of.flow.years.flatMap(({ savings }, year) =>
          Object.entries(savings).map(([line, saving]) => [`saving${year}-${line}`, value(saving)])
        )
      )
    } as Record<string, Decimal | null>,
    ratios: {
      simplePayback: value(of.simplePayback),
      discountedPayback: value(of.discountedPayback),
      benefitCostRatio: value(of.benefitCostRatio),
      rates: of.internalRates.allPercent
    }
  };
};

/** Every price of the case times k. */
const scaled = (given: Case, k: number): Case => {
  const times = (price: string): string => text(amount(price).times(k));
  const side = (of: Case['today']): Case['today'] => ({
    ...of,
    monitors: times(of.monitors),
    used: { ...of.used, captureCost: times(of.used.captureCost ?? '0') },
    machine: {
      ...of.machine,
      unitPrice: times(of.machine.unitPrice),
      tradeInPerUnit: times(of.machine.tradeInPerUnit),
      installationPerUnit: times(of.machine.installationPerUnit),
      servicePerUnitPerYear: times(of.machine.servicePerUnitPerYear)
    },
    scenario: {
      ...of.scenario,
      oneOffCost: times(of.scenario.oneOffCost),
      yearlyExtraCost: times(of.scenario.yearlyExtraCost),
      avoidedPurchases: of.scenario.avoidedPurchases.map((one) => ({
        ...one,
        unitPrice: times(one.unitPrice)
      }))
    }
  });
  const { gases, agents, absorbents, site } = given.prices;
  return {
    accounting: {
      ...given.accounting,
      carbonPricePerTonne: times(given.accounting.carbonPricePerTonne),
      recoveryMinuteValue: times(given.accounting.recoveryMinuteValue)
    },
    prices: {
      ...given.prices,
      site: { ...site, electricityPricePerKWh: times(site.electricityPricePerKWh) },
      agents: agents.map((one) => ({ ...one, bottlePrice: times(one.bottlePrice) })),
      gases: {
        ...gases,
        oxygenPerM3: times(gases.oxygenPerM3),
        airPerM3: times(gases.airPerM3),
        nitrousOxidePerKg: times(gases.nitrousOxidePerKg)
      },
      absorbents: absorbents.map((one) => ({ ...one, pricePerKg: times(one.pricePerKg) }))
    },
    today: side(given.today),
    then: side(given.then)
  };
};

const closeRatio = (a: number | null, b: number | null): void => {
  if (a === null || b === null) expect(a).toBe(b);
  else expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(a)));
};

describe('a business case', () => {
  test('scaling the currency scales every money figure and no ratio', () => {
    fc.assert(
      fc.property(cases, fc.constantFrom(0.01, 2, 7.3, 1000), (given, k) => {
        const [before, after] = [figuresOf(given), figuresOf(scaled(given, k))];
        // 28 digits, of which sums of large amounts that cancel may lose some twelve.
        const scales = (figure: Decimal | null, then: Decimal | null | undefined): boolean =>
          figure === null || !then
            ? figure === then
            : then
                .minus(figure.times(k))
                .abs()
                .lte(1e-12 * k);
        const wrong = Object.entries(before.money).filter(
          ([name, figure]) => !scales(figure, after.money[name])
        );
        expect(wrong).toEqual([]);
        closeRatio(after.ratios.simplePayback, before.ratios.simplePayback);
        closeRatio(after.ratios.discountedPayback, before.ratios.discountedPayback);
        closeRatio(after.ratios.benefitCostRatio, before.ratios.benefitCostRatio);
        expect(after.ratios.rates.length).toBe(before.ratios.rates.length);
        after.ratios.rates.forEach((rate, index) => closeRatio(rate, before.ratios.rates[index] as number));
      }),
      { numRuns: 100 }
    );
  });

  test('a scenario against itself is 0 everywhere', () => {
    fc.assert(
      fc.property(cases, (given) => {
        const same = figuresOf({
          ...given,
          then: { ...given.today, scenario: { ...given.today.scenario, id: 'copy' } }
        });
        const { ownership, equivalent, costPerTonne, ...against } = same.money;
        expect(ownership?.isFinite() && equivalent?.isFinite()).toBe(true);
        expect(costPerTonne).toBeNull();
        expect(Object.entries(against).filter(([, figure]) => !figure?.isZero())).toEqual([]);
        expect(same.ratios).toEqual({
          simplePayback: null,
          discountedPayback: null,
          benefitCostRatio: null,
          rates: []
        });
      }),
      { numRuns: 100 }
    );
  });

  test('the total cost of ownership differs between scenario and today by the plain sum of the cash flow', () => {
    fc.assert(
      fc.property(cases, (given) => {
        const then = figuresOf(given);
        const today = figuresOf({ ...given, then: given.today });
        const sum = Object.entries(then.money).reduce(
          (total, [name, figure]) => (name.startsWith('net') ? total.plus(figure as Decimal) : total),
          new Decimal(0)
        );
        const difference = (today.money['ownership'] as Decimal).minus(then.money['ownership'] as Decimal);
        expect(difference.minus(sum).abs().toNumber()).toBeLessThanOrEqual(1e-12);
      }),
      { numRuns: 100 }
    );
  });

  test('buying a year later never reaches more of the yearly saving, or of the yearly loss', () => {
    fc.assert(
      fc.property(cases, (given) => {
        const now = {
          ...given,
          today: { ...given.today, scenario: { ...given.today.scenario, yearlyExtraCost: '0' } },
          // The extra cost of a year does not wait for the machines.
          then: {
            ...given.then,
            scenario: { ...given.then.scenario, unitsByYear: null, yearlyExtraCost: '0' }
          }
        };
        const units = given.then.machine.units;
        const later = {
          ...now,
          then: { ...now.then, scenario: { ...now.then.scenario, unitsByYear: [0, units] } }
        };
        const saving = (of: Case): Decimal =>
          appraiseCase(plain, of).flow.years.reduce(
            (sum, { saving: one }) => sum.plus(plain.value(one).abs()),
            new Decimal(0)
          );
        expect(saving(later).lte(saving(now))).toBe(true);
      }),
      { numRuns: 100 }
    );
  });
});

test('the savings of the lines of cash add up to the saving of the year', () => {
  fc.assert(
    fc.property(cases, (given) => {
      for (const { savings, saving } of appraiseCase(plain, given).flow.years) {
        const sum = cashLineNames.reduce(
          (total, line) => total.plus(plain.value(savings[line])),
          new Decimal(0)
        );
        expect(sum.minus(plain.value(saving)).abs().toNumber()).toBeLessThanOrEqual(1e-18);
      }
    }),
    { numRuns: 100 }
  );
});

describe('a cash flow', () => {
  const anyFlows = fc.array(cents(-50_000, 50_000), { minLength: 2, maxLength: 30 });
  const anInvestment = fc
    .tuple(cents(1, 100_000), fc.array(cents(0, 50_000), { minLength: 1, maxLength: 30 }))
    .map(([out, inflows]) => [-out, ...inflows]);
  const npv = (flows: number[], ratePercent: number): Decimal =>
    plain.value(netPresentValue(plain, sumsOf(plain, { flows, ratePercent }).discounted));

  test('has, at a rate of 0, its plain sum as net present value', () => {
    fc.assert(
      fc.property(anyFlows, (flows) => {
        const sum = flows.reduce((total, flow) => total.plus(flow), new Decimal(0));
        expect(npv(flows, 0).eq(sum)).toBe(true);
      })
    );
  });

  test('of an investment is worth less as the rate rises', () => {
    fc.assert(
      fc.property(anInvestment, percent(-50, 50), percent(0.1, 50), (flows, ratePercent, more) => {
        fc.pre(flows.slice(1).some((flow) => flow > 0));
        expect(npv(flows, ratePercent + more).lt(npv(flows, ratePercent))).toBe(true);
      })
    );
  });

  test('pays back where the sum, looked at moment by moment, was last below 0', () => {
    const anyYears = fc.array(fc.tuple(cents(-500, 500), fc.constantFrom(0, 0, 0, 400, -300, 90.5)), {
      minLength: 2,
      maxLength: 20
    });
    fc.assert(
      fc.property(anyYears, cents(0, 2000), (later, atStart) => {
        const flows = [[0, atStart] as const, ...later];
        const found = plain.value(payback(plain, paybackYearsOf(plain, flows)));
        // Walked from moment to moment, in plain numbers: after each piece of a year, and after what falls at its end.
        const pieces = 64;
        let [sum, lastBelow, some] = [-atStart, atStart > 0 ? 0 : -1, atStart !== 0];
        const look = (time: number) => {
          if (sum < -1e-9) lastBelow = time;
          if (Math.abs(sum) > 1e-9) some = true;
        };
        later.forEach(([evenly, paid], year) => {
          const from = sum;
          for (let piece = 1; piece <= pieces; piece += 1) {
            sum = from + (evenly * piece) / pieces;
            look(year + piece / pieces);
          }
          sum -= paid;
          look(year + 1);
        });
        if (lastBelow === later.length && sum < -1e-9) expect(found).toBeNull();
        else if (lastBelow < 0) expect(found).toBe(some ? 0 : null);
        else {
          expect(found).toBeGreaterThanOrEqual(lastBelow - 1e-9);
          expect(found).toBeLessThanOrEqual(lastBelow + 1 / pieces + 1e-9);
        }
      }),
      { numRuns: 500 }
    );
  });

  test('no scenario that ends below 0 pays back, and every time ahead ends before its payback', () => {
    fc.assert(
      fc.property(cases, (given) => {
        const { simplePayback, ahead, flow } = appraiseCase(plain, given);
        const years = plain.value(simplePayback);
        const end = plain.value((flow.forPayback().at(-1) as PaybackYear).sum);
        if (end.lt(0)) expect(years).toBeNull();
        for (const { fromYears, untilYears } of ahead) {
          expect(plain.value(fromYears)).toBeLessThan(plain.value(untilYears));
          if (years !== null) expect(plain.value(untilYears)).toBeLessThanOrEqual(years);
        }
      }),
      { numRuns: 200 }
    );
  });

  test('has as internal rates just the rates at which its net present value is 0', () => {
    fc.assert(
      fc.property(anyFlows, (flows) => {
        const { flows: given } = sumsOf(plain, { flows, ratePercent: 0 });
        const { allPercent } = internalRates(plain, given);
        const worth = (rate: number): { sum: number; size: number } =>
          flows.reduce(
            ({ sum, size }, flow, year) => {
              const term = flow * (1 + rate) ** (flows.length - 1 - year);
              return { sum: sum + term, size: size + Math.abs(term) };
            },
            { sum: 0, size: 0 }
          );
        for (const rate of allPercent) {
          const { sum, size } = worth(rate / 100);
          expect(Math.abs(sum)).toBeLessThanOrEqual(1e-9 * size);
        }
        // A fine scan sees no change of sign that the rates do not explain.
        let before = Math.sign(worth(-0.999).sum);
        for (let k = 1; k <= 400; k += 1) {
          const [from, to] = [-0.999 + (k - 1) * 0.01, -0.999 + k * 0.01];
          const { sum, size } = worth(to);
          const sign = Math.abs(sum) < 1e-9 * size ? 0 : Math.sign(sum);
          if (sign !== 0 && before !== 0 && sign !== before)
            expect(allPercent.some((rate) => rate / 100 >= from - 1e-6 && rate / 100 <= to + 1e-6)).toBe(
              true
            );
          if (sign !== 0) before = sign;
        }
      }),
      { numRuns: 300 }
    );
  });
});

test('unequal lives rank alike by annuity and by repeated chain', () => {
  const life = fc.array(cents(-5000, 50_000), { minLength: 2, maxLength: 9 });
  fc.assert(
    fc.property(fc.array(life, { minLength: 2, maxLength: 3 }), percent(-10, 25), (lives, rate) => {
      const ratePercent = plain.cell(rate, '%', 'given', 'rate');
      const costs = compareOverEqualService(plain, {
        ways: lives.map((flows, index) => ({ id: String(index), flows: flows.map(moneyOf) })),
        ratePercent
      });
      const years = costs[0]?.chainYears ?? 0;
      const factors = discountFactors(plain, { ratePercent, years });
      for (const { equivalentAnnualCost, chainPresentValue, chainYears } of costs) {
        expect(chainYears).toBe(years);
        const byAnnuity = plain.value(equivalentAnnualCost);
        const byChain = plain.value(annuity(plain, { presentValue: chainPresentValue, factors }));
        expect(byChain.minus(byAnnuity).abs().lte(byAnnuity.abs().plus(50_000).times(1e-18))).toBe(true);
      }
    }),
    { numRuns: 100 }
  );
});
