/** What capture costs and saves, in a department so small that it can be reckoned by hand. */
import { expect, test } from 'vitest';
import type { Scenario } from '#lib/calc/input.ts';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { reckon } from '#lib/calc/reckoning/reckoning.ts';
import { plain } from '#lib/calc/working/plain.ts';
import type { Reckoner } from '#lib/calc/working/reckoner.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import {
  atExhaustMl,
  expectFigures,
  hernia,
  oldMachine,
  oneCase,
  published,
  scenarioOf,
  today as capturingToday,
  usual,
  warningsOf,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

const today: Scenario = { ...capturingToday, capturePercent: 0 };
const capturing: Scenario = {
  ...today,
  id: 'capturing',
  name: 'Capture',
  baseline: false,
  capturePercent: 60,
  caughtLostPercent: 10,
  captureDevicePrice: '1200',
  captureFeePerYear: '450.50',
  canisterPrice: '80',
  canisterHoldsG: 400
};
const withScenario = (changes: Partial<Scenario> = {}, more: Partial<Workbook> = {}): Workbook =>
  wholeWorkbook({ scenarios: [today, { ...capturing, ...changes }], ...more });
const workbook = withScenario();
const one = oneCase(workbook, { row: hernia, plan: usual, machine: oldMachine });
const caughtKg = (0.6 * 200 * atExhaustMl(one, { row: hernia, machine: oldMachine }) * 1.52) / 1000;

test('canisters fill with all that is caught, lost again or not, and are paid with the fee', () => {
  const { cost } = scenarioOf(workbook, capturing).perYear;
  const capture = 450.5 + ((caughtKg * 1000) / 400) * 80;
  expectFigures(cost.capture, capture);
  const before = scenarioOf(workbook, today).perYear.cost;
  expectFigures(before.capture, 0);
  expectFigures(cost.total, Number(before.total) + capture);
});

test('devices are bought for each theatre, once', () => {
  expectFigures(scenarioOf(workbook, capturing).againstBaseline.investment, 3 * 1200);
});

test('emissions fall by what stays caught, and by nothing else', () => {
  expectFigures(
    scenarioOf(workbook, capturing).againstBaseline.co2eAvoidedKg,
    0.9 * caughtKg * published.sevoflurane.kgCo2ePerKg
  );
});

test('without what a canister holds none is counted, and where it has a price that is said', () => {
  const unknown = withScenario({ canisterHoldsG: null });
  expectFigures(scenarioOf(unknown, capturing).perYear.cost.capture, 450.5);
  expect(warningsOf(unknown)).toEqual([
    '“Capture” gives a canister of its capture a price and not what one holds: canisters are not counted in its cost.'
  ]);
  expect(warningsOf(withScenario({ canisterHoldsG: null, canisterPrice: '0.00' }))).toEqual([]);
});

test('where nobody knows what becomes of it that is said, and no figure rests on it', () => {
  const notKnown = withScenario({ caughtBecomes: 'not-known' });
  expect(warningsOf(notKnown)).toEqual([
    '“Capture” captures agent, and what becomes of it is not known: it counts as kept out of the air, which holds only if nobody lets it go.'
  ]);
  expect(warningsOf(withScenario({ caughtBecomes: 'not-known', capturePercent: 0 }))).toEqual([]);
  expect(warningsOf(workbook)).toEqual([]);
  for (const caughtBecomes of ['destroyed', 'recovered'] as const)
    expect(scenarioOf(withScenario({ caughtBecomes }), capturing).perYear).toEqual(
      scenarioOf(notKnown, capturing).perYear
    );
});

test('all of it is the lever of capture, and with the lever off every figure is today’s to the last digit', () => {
  const { attribution, againstBaseline } = scenarioOf(workbook, capturing);
  expect(attribution?.map(({ lever }) => lever)).toEqual(['capture']);
  expect(attribution?.[0]).toMatchObject({
    yearlySaving: againstBaseline.yearlySaving,
    npv: againstBaseline.npv
  });
  const off = withScenario({
    capturePercent: 0,
    caughtLostPercent: null,
    captureDevicePrice: '0',
    captureFeePerYear: '0',
    canisterPrice: '0',
    canisterHoldsG: null
  });
  expect(scenarioOf(off, capturing).perYear).toEqual(scenarioOf(workbook, today).perYear);
  // A share of nothing that is caught is nothing, in the same bits.
  const nothing = scenarioOf(withScenario({ capturePercent: 0, captureFeePerYear: '0' }), capturing);
  expect(JSON.stringify(nothing.perYear.co2eKg)).toBe(
    JSON.stringify(scenarioOf(workbook, today).perYear.co2eKg)
  );
});

test('what is caught, and its canisters, are linear in the cases', () => {
  const twice = withScenario({}, { caseMix: [{ ...hernia, casesPerYear: 400 }] });
  const once = withScenario({}, { caseMix: [hernia] });
  const of = (each: Workbook) => scenarioOf(each, capturing);
  expectFigures(of(twice).agentFate, {
    sevoflurane: Object.fromEntries(
      Object.entries(of(once).agentFate.sevoflurane ?? {}).map(([key, kg]) => [key, 2 * kg])
    )
  });
  expectFigures(
    Number(of(twice).perYear.cost.capture) - 450.5,
    2 * (Number(of(once).perYear.cost.capture) - 450.5)
  );
});

test('what leaves a case by the exhaust is reckoned once, in however many scenarios it is met', () => {
  let reckoned = 0;
  const counting: Reckoner = {
    ...plain,
    apply: (formula, inputs) => {
      if (formula.id === 'emissions.liquid-at-exhaust') reckoned += 1;
      return plain.apply(formula, inputs);
    }
  };
  const reckoning = reckon(counting, coreInput(workbook), new CaseMemo());
  reckoning.year(capturing);
  const once = reckoned;
  expect(once).toBeGreaterThan(0);
  reckoning.year({ ...capturing, id: 'like-it' });
  expect(reckoned).toBe(once);
});
