import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import {
  changedOrders,
  explainUnder,
  lastingCut,
  underEverySet
} from '#lib/calc/estimate/under-every-set.ts';
import type { YearUnderChoice } from '#lib/calc/estimate/under-every-set.ts';
import type { Accounting } from '#lib/calc/input.ts';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { take } from '#lib/calc/reference/reference-set.ts';
import { temperatureMetric, temperatureMetricRecords } from '#lib/calc/reference/temperature-metrics.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { ordersInWords } from '#lib/sheets/emissions/set-words.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';

const department = departmentWorkbook();
const input = coreInput(department);
const counted = (accounting: Partial<Accounting>) =>
  coreInput({ ...department, accounting: { ...department.accounting, ...accounting } });
const memo = new CaseMemo();
const years = underEverySet(input, memo);
const published = [
  ['AR6', 20],
  ['AR6', 100],
  ['AR6', 500],
  ['AR5', 20],
  ['AR5', 100],
  ['literature-2012', 100],
  ['literature-2021', 20],
  ['literature-2021', 100],
  ['literature-2021', 500]
] as const;

test('holds every set and horizon on record, AR5 over 20 years among them, and temperature after 50 and 100', () => {
  expect(years.map(({ key }) => key)).toEqual([
    ...published.map(([set, horizon]) => `${set}.${horizon}`),
    'GTP.50',
    'GTP.100'
  ]);
  expect(years.filter(({ isInForce }) => isInForce).map(({ key }) => key)).toEqual(['AR6.100']);
});

test.each(published)(
  '%s over %i years is what the estimate says once it is chosen',
  (warmingSet, horizon) => {
    const chosen = estimate(counted({ warmingSet, warmingHorizonYears: horizon }));
    const year = years.find(({ key }) => key === `${warmingSet}.${horizon}`);
    expect(year?.scenarios).toEqual(
      chosen.scenarios.map(({ id, perYear }) => ({ id, co2eKg: perYear.co2eKg.total }))
    );
  }
);

test('temperature counts what is vented by its own records, and its working ends in the same figure', () => {
  const [today] = estimate(input).scenarios;
  const gtp = (subject: string): number => temperatureMetric('GTP', 100, subject)?.value ?? NaN;
  const gwp = (subject: string): number => take(input.reference, `warming.AR6.100.${subject}`).value;
  const gas = today?.perYear.co2eKg;
  if (today === undefined || gas === undefined) throw new Error('There is no scenario.');
  const agents = Object.entries(today.agentFate).reduce(
    (sum, [agent, { ventedKg }]) => sum + ventedKg * gtp(agent),
    0
  );
  const nitrousOxide =
    ((gas.nitrousOxide + gas.nitrousOxideLost) * gtp('nitrous-oxide')) / gwp('nitrous-oxide');
  const rest = gas.total - gas.agents - gas.nitrousOxide - gas.nitrousOxideLost;
  const year = years.find(({ key }) => key === 'GTP.100');
  const told = year?.scenarios.find(({ id }) => id === today.id)?.co2eKg ?? NaN;
  expect(told).toBeCloseTo(agents + nitrousOxide + rest, 6);
  if (year === undefined) throw new Error('There is no such choice.');
  expect(explainUnder(input, { choice: year, scenarioId: today.id, memo }).value).toBe(told);
});

test('a set that lacks an agent of the workbook tells nothing, and not 0', () => {
  const supply = department.agents[0];
  if (supply === undefined) throw new Error('There is no agent.');
  const withHalothane = coreInput({
    ...department,
    agents: [...department.agents, { ...supply, agent: 'halothane' }]
  });
  const year = underEverySet(withHalothane, memo).find(({ set }) => set === 'literature-2012');
  expect(year?.lacks).toEqual(['halothane']);
  expect(year?.scenarios.every(({ co2eKg }) => co2eKg === null)).toBe(true);
});

test('figures of the user’s own stand in it where they are in force', () => {
  const own = underEverySet(counted({ warmingSet: 'custom', customWarming: { desflurane: 1 } }), memo);
  expect(own.filter(({ isInForce }) => isInForce).map(({ key }) => key)).toEqual(['custom.100']);
});

test('a set changes no litre and no money', () => {
  const drinks = (accounting: Partial<Accounting>) =>
    estimate(counted(accounting)).scenarios.map(({ perYear, againstBaseline }) => {
      const { carbon: _, ...cash } = perYear.cost;
      const { co2eKg: __, cost: ___, ...used } = perYear;
      return JSON.stringify([used, cash, againstBaseline.npv, againstBaseline.simplePaybackYears]);
    });
  const now = drinks({});
  fc.assert(
    fc.property(fc.constantFrom(...published), fc.integer({ min: 0, max: 9000 }), ([set, horizon], own) => {
      expect(drinks({ warmingSet: set, warmingHorizonYears: horizon })).toEqual(now);
      expect(drinks({ warmingSet: 'custom', customWarming: { sevoflurane: own } })).toEqual(now);
    }),
    { numRuns: 10 }
  );
});

test('orders that change are named, with where they do', () => {
  const year = (key: string, isInForce: boolean, of: Record<string, number | null>): YearUnderChoice => ({
    key,
    set: 'AR6',
    years: Number(key),
    isInForce,
    lacks: [],
    scenarios: Object.entries(of).map(([id, co2eKg]) => ({ id, co2eKg }))
  });
  const orders = changedOrders([
    year('20', false, { a: 3, b: 2, c: 9 }),
    year('100', true, { a: 1, b: 2, c: 2 }),
    year('500', false, { a: null, b: 2, c: 1 })
  ]);
  expect(
    orders.map(({ less, more, reversedUnder }) => [less, more, reversedUnder.map(({ key }) => key)])
  ).toEqual([['a', 'b', ['20']]]);
  expect(ordersInWords(orders, (id) => id.toUpperCase(), 'this set')).toEqual([
    '“A” emits less than “B” by this set, and more by IPCC AR6 (2021), 20 years.'
  ]);
  expect(ordersInWords([], String, '')).toEqual([expect.stringMatching(/is the same/)]);
});

test('a lasting cut counts each agent that is vented less, and more with the sign turned', () => {
  const [today, other] = [input.scenarios[0], input.scenarios.at(-1)];
  const of = (id: string) => estimate(input).scenarios.find((each) => each.id === id)?.agentFate ?? {};
  const [before, after] = [of(today?.id ?? ''), of(other?.id ?? '')];
  const agents = [...new Set([...Object.keys(before), ...Object.keys(after)])] as (keyof typeof before)[];
  const wanted = agents.reduce(
    (sum, agent) =>
      sum +
      ((before[agent]?.ventedKg ?? 0) - (after[agent]?.ventedKg ?? 0)) *
        (temperatureMetric('CGTP', 100, agent)?.value ?? NaN),
    0
  );
  const cut = lastingCut(plain, input, { scenarioId: other?.id ?? '', memo });
  expect(Math.abs(wanted)).toBeGreaterThan(0);
  expect(plain.value(cut.asOnePulseKg)).toBeCloseTo(wanted, 3);
  const none = lastingCut(plain, input, { scenarioId: today?.id ?? '', memo });
  expect([plain.value(none.asOnePulseKg), plain.value(none.asPulsesKg)]).toEqual([0, 0]);
});

test('every metric of temperature has a figure, and nitrous oxide none of a lasting change', () => {
  expect(temperatureMetricRecords).toHaveLength(22);
  expect(temperatureMetric('CGTP', 100, 'nitrous-oxide')).toBeNull();
});
