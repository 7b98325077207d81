/** Machines that are bought year by year: outlays, the share of the saving that is reached, and what becomes of it. */
import { describe, expect, test } from 'vitest';
import type { CostLine } from '#lib/calc/estimate-types.ts';
import type { Scenario } from '#lib/calc/input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { expectFigures, lowFlow, scenarioOf, today, wholeWorkbook } from '../fixtures/whole-workbook.ts';
import { bringing, keeping as staying } from '../fixtures/one-group.ts';

/** Two machines now and one in a year; one of the old ones would have been replaced in two years. */
const phased: Scenario = {
  ...lowFlow,
  id: 'phased',
  ...bringing('like-the-old', 'low', { byYear: [2, 1] }),
  oneOffCost: '3000',
  avoidedPurchases: [{ year: 2, units: 1, unitPrice: '15000' }]
};
const plain = wholeWorkbook({ scenarios: [today, phased] });
const workbook: Workbook = {
  ...plain,
  accounting: {
    ...plain.accounting,
    residualValue: 'straight-line',
    agentGrowthPercent: 2,
    carbonGrowthPercent: 4
  }
};
const one = 20_000 + 700 - 1500;
const outlays = [
  2 * one + 3000,
  one,
  -15_000,
  0,
  // After 4 years the first two are 4 years old, and the third 3, of a life of 10.
  -(2 * 20_000 * (1 - 4 / 10) + 20_000 * (1 - 3 / 10))
];
const shares = [0, 2 / 3, 1, 1, 1];
const discounts = shares.map((_, year) => 1 / 1.03 ** year);
const lines: readonly CostLine[] = [
  'agents',
  'gases',
  'absorbent',
  'drugs',
  'capture',
  'service',
  'electricity',
  'other',
  'carbon',
  'recovery'
];
const growth = (line: CostLine, year: number): number =>
  line === 'agents' ? 1.02 ** (year - 1) : line === 'carbon' ? 1.04 ** (year - 1) : 1;

const now = scenarioOf(workbook, today);
const then = scenarioOf(workbook, phased);
const savings = shares.map((share, year) =>
  Object.fromEntries(
    lines.map((line) => {
      const ofFullYear = Number(now.perYear.cost[line]) - Number(then.perYear.cost[line]);
      return [line, year === 0 ? 0 : share * ofFullYear * growth(line, year)];
    })
  )
);
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const upTo = (values: readonly number[], year: number): number => sum(values.slice(0, year + 1));
// Carbon price and recovery minutes are lines beside the cash.
const cash = lines.filter((line) => line !== 'carbon' && line !== 'recovery');
const saved = savings.map((ofYear) => sum(cash.map((line) => ofYear[line] ?? NaN)));
const net = saved.map((saving, year) => saving - (outlays[year] ?? NaN));
const discounted = net.map((flow, year) => flow * (discounts[year] ?? NaN));

describe('a phased purchase', () => {
  test('the years: outlays, savings of the share in use at the prices of the year, and their sums', () => {
    expectFigures(
      then.againstBaseline.years,
      shares.map((_, year) => ({
        year,
        investment: outlays[year],
        payments: 0,
        savings: savings[year],
        saving: saved[year],
        net: net[year],
        cumulative: upTo(net, year),
        discounted: discounted[year],
        cumulativeDiscounted: upTo(discounted, year)
      }))
    );
  });

  test('the investment: all outlays without what the machines are worth at the end', () => {
    expectFigures(then.againstBaseline.investment, 3 * one + 3000 - 15_000);
  });

  test('the net present value: all discounted flows', () => {
    expectFigures(then.againstBaseline.npv, sum(discounted));
  });

  test('the total cost of ownership: what today costs less the net flows, as yearly equal amounts too', () => {
    const costOfToday = shares.map((_, year) =>
      year === 0 ? 0 : sum(cash.map((line) => Number(now.perYear.cost[line]) * growth(line, year)))
    );
    expectFigures(then.againstBaseline.totalCostOfOwnership, sum(costOfToday) - sum(net));
    const presentValue = sum(
      costOfToday.map((cost, year) => (cost - (net[year] ?? NaN)) * (discounts[year] ?? NaN))
    );
    expectFigures(then.againstBaseline.equivalentAnnualCost, presentValue / sum(discounts.slice(1)));
  });

  test('the benefit-cost ratio: discounted savings over discounted outlays', () => {
    const weighted = (values: readonly number[]) =>
      sum(values.map((value, year) => value * (discounts[year] ?? NaN)));
    expectFigures(then.againstBaseline.benefitCostRatio, weighted(saved) / weighted(outlays));
  });

  test('the cost of a tonne avoided: emissions follow the share in use, and are not discounted', () => {
    const { co2eAvoidedKg, costPerTonneAvoided } = then.againstBaseline;
    const tonnes = sum(shares.map((share) => (share * co2eAvoidedKg) / 1000));
    expectFigures(costPerTonneAvoided, -sum(discounted) / tonnes);
  });

  test('the internal rate: at it the flows are worth nothing', () => {
    const { irrPercent } = then.againstBaseline;
    const rate = 1 + (irrPercent ?? NaN) / 100;
    expect(Math.abs(sum(net.map((flow, year) => flow / rate ** year)))).toBeLessThan(1e-3);
  });
});

test('a scenario that keeps today’s machines buys none, and saves in full from the first year', () => {
  const keeping: Scenario = { ...phased, ...staying('old', 'low'), avoidedPurchases: [] };
  const { investment, years } = scenarioOf(
    { ...workbook, scenarios: [today, keeping] },
    keeping
  ).againstBaseline;
  expectFigures(investment, 3000);
  const saving = years[1]?.savings.gases;
  expectFigures(saving, Number(now.perYear.cost.gases) - Number(then.perYear.cost.gases));
});

test('all machines at once where no years are given', () => {
  const atOnce: Scenario = { ...phased, ...bringing('like-the-old', 'low'), avoidedPurchases: [] };
  const { investment, years } = scenarioOf(
    { ...workbook, scenarios: [today, atOnce] },
    atOnce
  ).againstBaseline;
  expectFigures(
    { investment, paid: years[0]?.investment },
    { investment: 3 * one + 3000, paid: 3 * one + 3000 }
  );
});

test('what today’s practice pays out once is no outlay of a scenario', () => {
  const paying: Scenario = { ...today, oneOffCost: '500' };
  const { years } = scenarioOf({ ...workbook, scenarios: [paying, phased] }, phased).againstBaseline;
  expectFigures(years[0]?.investment, (outlays[0] ?? NaN) - 500);
});

test('payback: where between two year ends the sum of the net flows reaches 0', () => {
  const cheap: Scenario = { ...lowFlow, oneOffCost: '1000' };
  const of = scenarioOf({ ...plain, scenarios: [today, cheap] }, cheap).againstBaseline;
  const yearly = Number(of.yearlySaving);
  expect(1000 / yearly).toBeLessThan(4);
  expectFigures(of.simplePaybackYears, 1000 / yearly);
  const worth = discounts.map((discount, year) => (year === 0 ? -1000 : yearly * discount));
  const turn = worth.findIndex((_, year) => upTo(worth, year) >= 0);
  const before = upTo(worth, turn - 1);
  expectFigures(of.discountedPaybackYears, turn - 1 + -before / (worth[turn] ?? NaN));
});
