/**
 * Every formula of the money room, as printed, against its code: evaluated by a general-purpose expression library in 40
 * digits on 200 random inputs. And every recorded step, recomputed from what it recorded, bit for bit.
 */
import type { TheatreGroup } from '#lib/calc/input.ts';
import { investment } from '#lib/calc/money/investment.ts';
import { all, create } from 'mathjs';
import type { FactoryFunctionMap } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { captureCost } from '#lib/calc/money/capture-cost.ts';
import { consumablePrices } from '#lib/calc/money/consumable-prices.ts';
import { costPerTonneAvoided } from '#lib/calc/money/cost-per-tonne.ts';
import { costOfCase } from '#lib/calc/money/consumables.ts';
import { Decimal } from '#lib/calc/money/decimal.ts';
import { monitorCost, mostLacking } from '#lib/calc/money/monitor-cost.ts';
import type { Formula } from '#lib/calc/working/formula.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { recorder, workingOf } from '#lib/calc/working/recorder.ts';
import type { Quantity, Reckoner } from '#lib/calc/working/reckoner.ts';
import type { StepWorking, Working } from '#lib/calc/working/working.ts';
import { budgetAndCharges } from '../../../fixtures/budget-and-charges.ts';
import { waysToPay } from '../../../fixtures/ways-to-pay.ts';
import { worstDifference } from '../working/printed-against-code.ts';
import { accounting, amountsOf, appraiseCase, machine, prices, scenario } from './business-case.ts';
import type { Case } from './business-case.ts';

type AnyFormula = Formula<Record<string, unknown>, unknown>;

const modules = import.meta.glob<Record<string, unknown>>('/src/lib/calc/money/*.ts', { eager: true });
const formulas = Object.values(modules)
  .flatMap((module) => Object.values(module))
  .filter(
    (value): value is AnyFormula => typeof value === 'object' && value !== null && 'expression' in value
  );

/** A case in which every kind of outlay, line and figure occurs. */
const given: Case = {
  prices,
  accounting: {
    ...accounting,
    appraisalYears: 8,
    carbonPricePerTonne: '120.50',
    recoveryMinuteValue: '1.25',
    agentGrowthPercent: 2.5,
    serviceGrowthPercent: 1.1,
    carbonGrowthPercent: 4,
    residualValue: 'straight-line'
  },
  today: {
    scenario: { ...scenario, id: 'today', baseline: true, oneOffCost: '10' },
    machine: { ...machine, id: 'old', servicePerUnitPerYear: '1450.75' },
    used: {
      sevofluraneMl: 31_234.567_8,
      desfluraneMl: 4_321.123,
      oxygenM3: 812.3,
      airM3: 77.7,
      nitrousOxideKg: 12.345,
      nitrousOxideLostKg: 99.9,
      sodaLimeKg: 210.1,
      electricityKWh: 3_456.7,
      co2eKg: 28_765.4
    },
    monitors: '0'
  },
  then: {
    scenario: {
      ...scenario,
      unitsByYear: [2, 1, 1],
      oneOffCost: '3500',
      yearlyExtraCost: '-99.95',
      avoidedPurchases: [{ year: 2, units: 1, unitPrice: '3100' }]
    },
    machine: { ...machine, unitPrice: '9500', lifeYears: 6 },
    used: {
      sevofluraneMl: 6_543.21,
      oxygenM3: 301.2,
      airM3: 33.3,
      nitrousOxideLostKg: 99.9,
      sodaLimeKg: 533.3,
      electricityKWh: 2_987.6,
      co2eKg: 9_876.5,
      recoveryMinutes: 1_234,
      captureCost: '321.50'
    },
    monitors: '5200'
  }
};

/** Two of today's machines that are bought again in year 3, and stand to the end. */
const renewed = (r: Reckoner): Quantity<unknown>[] => {
  const units = r.cell(2, '1', 'given', 'renewed');
  const { machine: old, scenario: today } = given.today;
  const group = { id: 'main' } as TheatreGroup;
  const { outlays, initial } = investment(r, {
    scenario: today,
    arrivals: [],
    renewals: [{ year: 3, machine: old, group, units, unitsAtEnd: units }],
    monitors: [],
    theatres: () => r.assumption(4, '1', 'Given by the test.'),
    accounting: given.accounting
  });
  return [initial, ...outlays.map(({ total }) => total)];
};

/** Every figure of the case, and the costs that only single cases and monitors have. */
const figuresOf = (r: Reckoner): Quantity<unknown>[] => {
  const of = appraiseCase(r, given);
  return [
    ...of.flow.years.flatMap(({ year: _, savings, ...rest }) => [
      ...Object.values(savings),
      ...Object.values(rest)
    ]),
    ...Object.values(of.flow.yearlySavings),
    of.flow.yearlySaving,
    of.flow.investment,
    of.flow.worthAtEnd,
    ...of.flow.forPayback().map(({ sum }) => sum),
    ...of.ahead.flatMap(({ fromYears, untilYears }) => [fromYears, untilYears]),
    of.netPresentValue,
    of.simplePayback,
    of.discountedPayback,
    of.internalRates.ratePercent,
    of.ownership.total,
    of.ownership.equivalentAnnualCost,
    of.benefitCostRatio,
    of.costPerTonneAvoided,
    costPerTonneAvoided(r, {
      netPresentValue: r.cell(new Decimal('-1234.5'), 'currency', 'given', 'netPresentValue'),
      avoidedKg: r.cell(9876, 'kg CO2e', 'given', 'avoidedKg')
    }),
    of.shadow.yearlySaving,
    of.shadow.npv,
    ...of.bottles,
    costOfCase(
      r,
      consumablePrices(r, prices),
      amountsOf(r, { sevofluraneMl: 12.5, oxygenM3: 0.07, sodaLimeKg: 0.03 })
    ),
    monitorCost(r, [
      {
        item: 'capnography',
        theatresMissing: r.cell(3, '1', 'given', 'theatresMissing'),
        missingBefore: r.apply(mostLacking, {
          before: r.cell(1, '1', 'given', 'missingToday'),
          now: r.cell(2, '1', 'given', 'missingSince')
        }),
        unitPrice: '2600'
      }
    ]),
    captureCost(
      r,
      { ...scenario, captureFeePerYear: '610.50', canisterPrice: '84', canisterHoldsG: 380 },
      () => ({
        sevoflurane: {
          caughtKg: r.cell(12.5, 'kg', 'given', 'caughtKg'),
          caughtAndLostKg: r.cell(0.4, 'kg', 'given', 'caughtAndLostKg')
        }
      })
    ),
    ...waysToPay(r),
    ...budgetAndCharges(r, of.flow, given.accounting),
    ...renewed(r)
  ];
};

function stepsUnder(roots: readonly Quantity<unknown>[]): StepWorking[] {
  const seen = new Set<Working>();
  const walk = (working: Working): void => {
    if (seen.has(working)) return;
    seen.add(working);
    if (working.kind === 'step' || working.kind === 'method')
      Object.values(working.inputs).flat().forEach(walk);
  };
  roots.map(workingOf).forEach(walk);
  return [...seen].filter((working): working is StepWorking => working.kind === 'step');
}

const valuesOf = ({ inputs }: StepWorking): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(inputs as Record<string, Working | Working[]>).map(([name, input]) => [
      name,
      Array.isArray(input) ? input.map(({ value }) => value) : input.value
    ])
  );

const figures = figuresOf(recorder);
const steps = stepsUnder(figures);
const sampleOf = new Map(steps.map((step) => [step.formula as unknown as AnyFormula, valuesOf(step)]));
const same = (a: unknown, b: unknown): boolean =>
  a instanceof Decimal && b instanceof Decimal ? a.eq(b) : Object.is(a, b);

describe('the money room', () => {
  test('has formulas, each with an id of its own, and the case meets all of them', () => {
    expect(formulas.length).toBeGreaterThan(30);
    expect(new Set(formulas.map(({ id }) => id)).size).toBe(formulas.length);
    expect(formulas.filter((one) => !sampleOf.has(one)).map(({ id }) => id)).toEqual([]);
  });

  test('replays every recorded step, bit for bit', () => {
    expect(steps.length).toBeGreaterThan(300);
    const wrong = steps.filter((step) => {
      const { compute } = step.formula as unknown as AnyFormula;
      return !same(compute(valuesOf(step)), step.value);
    });
    expect(wrong.map(({ formula }) => formula)).toEqual([]);
  });

  test('gives the same digits whether the working is kept or not', () => {
    const bare = figuresOf(plain);
    expect(bare).toHaveLength(figures.length);
    bare.forEach((figure, index) => {
      const [a, b] = [plain.value(figure), recorder.value(figures[index] as Quantity<unknown>)];
      expect(same(a, b) || `${String(a)} ≠ ${String(b)}`).toBe(true);
    });
  });

  test('leads every figure back to cells and to what the test gave', () => {
    const leaves = new Set<string>();
    const walk = (working: Working): void => {
      if (working.kind === 'step' || working.kind === 'method')
        Object.values(working.inputs).flat().forEach(walk);
      else leaves.add(working.kind);
    };
    steps.forEach(walk);
    expect([...leaves].sort()).toEqual(['assumption', 'cell']);
  });
});

describe('each formula as printed equals its code', () => {
  test.each(formulas.map((one) => [one.id, one] as const))('%s', (_, one) => {
    const sample = sampleOf.get(one) as Record<string, unknown>;
    expect(worstDifference(one, sample)).toBeLessThanOrEqual(1e-14);
  });
});

const units = create(all as FactoryFunctionMap);
units.createUnit('currency');
units.createUnit('CO2e');
/** One of the unit; a share in percent is a pure number here, as its 100 stands in the formula. */
const oneOf = (unit: string): unknown => (unit === '1' || unit === '%' ? 1 : units.unit(1, unit));

test.each(formulas.map((one) => [one.id, one] as const))('the units of %s agree', (_, one) => {
  const sample = sampleOf.get(one) as Record<string, unknown>;
  const symbols = Object.fromEntries(
    Object.entries(one.inputs).map(([name, { symbol, unit }]) => [
      symbol,
      Array.isArray(sample[name]) ? [oneOf(unit), oneOf(unit)] : oneOf(unit)
    ])
  );
  const found: unknown = units.evaluate(one.expression as string, symbols);
  const wanted = oneOf(one.unit);
  if (typeof wanted === 'number') expect(typeof found).toBe('number');
  else expect((found as { equalBase: (unit: unknown) => boolean }).equalBase(wanted)).toBe(true);
});
