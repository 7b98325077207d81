/** A case group whose use the department has measured: the measurement counts, the model carries it over to other plans. */
import { describe, expect, test } from 'vitest';
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
  ventedKg,
  warningsOf,
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
  // What patients and circuit take is the model's; what was measured beyond it leaves by leak and exhaust.
  const kgOf = (liquidMl: number, one: typeof onLow) =>
    ventedKg(
      { ...one, liquidMl, spilledMl: Math.max(0, liquidMl - one.takenUpMl - one.leftMl) },
      { row: measured, machine: oldMachine, capturePercent: 30 }
    );
  expectFigures(co2eKg.agents, 200 * (0.6 * kgOf(carriedOverMl, onLow) + 0.4 * kgOf(17, onUsual)) * 195);
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

describe('from the second set on, only the spill depends on practice', () => {
  const second: Workbook = { ...workbook, referenceSet: '2026-2' };
  const usualCase = oneCase(second, { row: measured, plan: usual, machine: oldMachine });
  const lowCase = oneCase(second, { row: measured, plan: low, machine: oldMachine });
  const at = (measuredMlPerCase: number | null, changes: Partial<Workbook> = {}): Workbook => ({
    ...second,
    caseMix: [{ ...measured, measuredMlPerCase }],
    ...changes
  });
  const casesOf = (of: Workbook) =>
    [scenarioOf(of, today).cases[0], scenarioOf(of, lowFlow).cases[0]] as const;
  const codes = (of: Workbook) => casesOf(of)[0]?.warnings.map(({ code }) => code);
  const spillOf = (measuredMl: number) => measuredMl - usualCase.takenUpMl - usualCase.leftMl;

  test('another plan takes up and leaves its own, and spills in the same proportion as today', () => {
    const [now, then] = casesOf(at(17));
    expectFigures(now?.liquidMl, 17);
    expectFigures(now?.spilledMl, spillOf(17));
    const spilledMl = (spillOf(17) / usualCase.spilledMl) * lowCase.spilledMl;
    const { method, liquidMl, takenUpMl, leftMl, spilledMl: spilled } = then ?? {};
    expectFigures(
      { method, liquidMl, takenUpMl, leftMl, spilledMl: spilled },
      {
        method: 'scaled-to-measured',
        liquidMl: lowCase.takenUpMl + lowCase.leftMl + spilledMl,
        takenUpMl: lowCase.takenUpMl,
        leftMl: lowCase.leftMl,
        spilledMl
      }
    );
    expect(codes(at(17))).toEqual([]);
  });

  test('less than patient and circuit take is not believed, and is said', () => {
    const [now, then] = casesOf(at(2));
    expectFigures(now?.liquidMl, usualCase.takenUpMl + usualCase.leftMl);
    expectFigures(then?.liquidMl, lowCase.takenUpMl + lowCase.leftMl);
    expect(codes(at(2))).toEqual(['measured-below-uptake']);
  });

  test('a spill far from the model’s is said, with what usually causes it', () => {
    expect(codes(at(17 + 3 * usualCase.spilledMl))).toEqual(['measured-far-from-model']);
    expect(codes(at(usualCase.takenUpMl + usualCase.leftMl + 0.3 * usualCase.spilledMl))).toEqual([
      'measured-far-from-model'
    ]);
    expect(codes(at(usualCase.takenUpMl + usualCase.leftMl + 0.6 * usualCase.spilledMl))).toEqual([]);
  });

  test('where today’s plan spills next to nothing, another plan is the model’s own', () => {
    const closed: FlowPlan = {
      ...usual,
      phases: usual.phases.map((phase) => ({ ...phase, flowLPerMin: 0.01 }))
    };
    const tight = { ...oldMachine, leakMlPerMin: 0, sampleReturned: true, minimumFlowLPerMin: 0 };
    const of = at(30, {
      flowPlans: [closed, low],
      machines: second.machines.map((each) => (each.id === tight.id ? tight : each))
    });
    const [now, then] = casesOf(of);
    expectFigures(now?.liquidMl, 30);
    expectFigures(then?.liquidMl, oneCase(of, { row: measured, plan: low, machine: tight }).liquidMl);
    expect(codes(of)).toContain('measured-without-spill');
  });

  const bought = (bottles: number, measuredMlPerCase: number | null) =>
    at(measuredMlPerCase, {
      agents: workbook.agents.map((supply) => ({
        ...supply,
        bottlesBoughtPerYear: bottles,
        scaleToPurchases: true
      }))
    });
  const perBottleMl = 250 * 0.98;

  test('purchases change the spill alone, and today’s use meets them', () => {
    const boughtMl = 200 * (usualCase.liquidMl + 0.5 * usualCase.spilledMl);
    const of = bought(boughtMl / perBottleMl, null);
    expectFigures(scenarioOf(of, today).perYear.agents.sevoflurane?.liquidMl, boughtMl);
    expectFigures(
      scenarioOf(of, lowFlow).perYear.agents.sevoflurane?.liquidMl,
      200 *
        (0.6 * (lowCase.liquidMl + 0.5 * lowCase.spilledMl) +
          0.4 * (usualCase.liquidMl + 0.5 * usualCase.spilledMl))
    );
    expect(warningsOf(of).join(' ')).toContain('so that today’s meets the purchases');
  });

  test('purchases below what patients and circuits take are not met, and that is said', () => {
    const of = bought(1, null);
    expectFigures(
      scenarioOf(of, today).perYear.agents.sevoflurane?.liquidMl,
      200 * (usualCase.takenUpMl + usualCase.leftMl)
    );
    expect(warningsOf(of).join(' ')).toContain('what was bought cannot be met');
  });

  test('what was measured is not scaled to purchases', () => {
    expectFigures(scenarioOf(bought(30, 17), today).perYear.agents.sevoflurane?.liquidMl, 200 * 17);
  });
});
