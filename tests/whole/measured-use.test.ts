/** A case group whose use the department has measured: the measurement counts, the model carries it over to other plans. */
import { expect, test } from 'vitest';
import type { FlowPlan } from '#lib/calc/input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import {
  expectFigures,
  hernia,
  low,
  lowFlow,
  oldMachine,
  oneCase,
  scenarioOf,
  today,
  usual,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

const measured = { ...hernia, measuredMlPerCase: 17 };
const workbook = wholeWorkbook({ caseMix: [measured] });
const onUsual = oneCase(workbook, { row: measured, plan: usual, machine: oldMachine });
const onLow = oneCase(workbook, { row: measured, plan: low, machine: oldMachine });
const carriedOverMl = (onLow.liquidMl * 17) / onUsual.liquidMl;

test('today uses what was measured, and where it went is the model’s own', () => {
  const { perYear, cases } = scenarioOf(workbook, today);
  expectFigures(perYear.agents.sevoflurane?.liquidMl, 200 * 17);
  const { method, liquidMl, takenUpMl, spilledMl } = cases[0] ?? {};
  expectFigures(
    { method, liquidMl, takenUpMl, spilledMl },
    { method: 'measured', liquidMl: 17, takenUpMl: onUsual.takenUpMl, spilledMl: onUsual.spilledMl }
  );
});

test('another plan uses the measurement times what the model gives for it against today', () => {
  const { method, liquidMl, takenUpMl } = scenarioOf(workbook, lowFlow).cases[0] ?? {};
  expectFigures(
    { method, liquidMl, takenUpMl },
    { method: 'scaled-to-measured', liquidMl: carriedOverMl, takenUpMl: onLow.takenUpMl }
  );
});

test('cases that do not follow use what was measured', () => {
  const { agents, co2eKg } = scenarioOf(workbook, lowFlow).perYear;
  expectFigures(agents.sevoflurane?.liquidMl, 200 * (0.6 * carriedOverMl + 0.4 * 17));
  const kgOf = (liquidMl: number, takenUpMl: number) => (((liquidMl - 0.05 * takenUpMl) * 1.52) / 1000) * 0.7;
  expectFigures(
    co2eKg.agents,
    200 * (0.6 * kgOf(carriedOverMl, onLow.takenUpMl) + 0.4 * kgOf(17, onUsual.takenUpMl)) * 195
  );
});

test('where the vapour went in a year is the model’s own, measured or not', () => {
  const { takenUpMl, togetherMl } = scenarioOf(workbook, today).vapourOnOwnPlan;
  expectFigures(
    { takenUpMl, togetherMl },
    { takenUpMl: 200 * onUsual.takenUpMl, togetherMl: 200 * onUsual.liquidMl }
  );
});

test('where the model gives nothing for today, another plan uses the model’s figure', () => {
  const off: FlowPlan = {
    ...usual,
    phases: usual.phases.map((phase) => ({ ...phase, vaporiser: 'off' as const }))
  };
  const withoutModel: Workbook = { ...workbook, flowPlans: [off, low] };
  const { method, liquidMl } = scenarioOf(withoutModel, lowFlow).cases[0] ?? {};
  expectFigures({ method, liquidMl }, { method: 'circle-system', liquidMl: onLow.liquidMl });
  expectFigures(scenarioOf(withoutModel, today).perYear.agents.sevoflurane?.liquidMl, 200 * 17);
});

test('a measurement is divided by what was bought as an estimate is', () => {
  const agents = workbook.agents.map((supply) => ({ ...supply, bottlesBoughtPerYear: 10 }));
  const { sevoflurane } = scenarioOf({ ...workbook, agents }, today).perYear.agents;
  expect(sevoflurane?.estimateOverPurchase).toBeCloseTo((200 * 17) / (10 * 250 * 0.98), 12);
});
