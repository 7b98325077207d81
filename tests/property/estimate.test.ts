/** What must hold of every estimate, whatever the workbook. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { Estimate, ScenarioEstimate } from '#lib/calc/estimate-types.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { randomWorkbook } from '../fixtures/random-workbook.ts';

const of = (workbook: Workbook): Estimate => estimate(coreInput(workbook));
const scenario = (result: Estimate, id: string): ScenarioEstimate => {
  const found = result.scenarios.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no scenario ${id}`);
  return found;
};
const baselineOf = (workbook: Workbook) => {
  const found = workbook.scenarios.find((each) => each.baseline);
  if (found === undefined) throw new Error('no baseline');
  return found;
};
const workbooks = randomWorkbook();
const runs = { numRuns: 60 };

test('delivered = taken up + spilled + left, to 1e-9 of what was delivered, in every case of every scenario', () => {
  fc.assert(
    fc.property(workbooks, (workbook) => {
      for (const { cases } of of(workbook).scenarios)
        for (const one of cases) {
          if (one.method !== 'circle-system') continue;
          const parts = one.takenUpMl + one.spilledMl + one.leftMl;
          expect(Math.abs(parts - one.liquidMl)).toBeLessThanOrEqual(1e-9 * one.liquidMl);
        }
    }),
    runs
  );
});

test('no figure of a valid workbook is NaN or infinite', () => {
  fc.assert(
    fc.property(workbooks, (workbook) => {
      const check = (value: unknown, path: string): void => {
        if (typeof value === 'number') expect(Number.isFinite(value), path).toBe(true);
        else if (typeof value === 'string') expect(value, path).not.toMatch(/^(NaN|-?Infinity)$/);
        else if (typeof value === 'object' && value !== null)
          for (const [key, inner] of Object.entries(value)) check(inner, `${path}.${key}`);
      };
      check(of(workbook), 'estimate');
    }),
    runs
  );
});

test('no case costs nothing', () => {
  fc.assert(
    fc.property(workbooks, (workbook) => {
      const empty = of({
        ...workbook,
        caseMix: workbook.caseMix.map((row) => ({ ...row, casesPerYear: 0 })),
        agents: workbook.agents.map((supply) => ({ ...supply, scaleToPurchases: false }))
      });
      for (const { perYear } of empty.scenarios) {
        expect(Object.values(perYear.agents).every((agent) => agent.liquidMl === 0)).toBe(true);
        expect([Number(perYear.cost.agents), Number(perYear.cost.absorbent)]).toEqual([0, 0]);
        expect([perYear.oxygenM3, perYear.airM3, perYear.absorbentKg, perYear.co2eKg.agents]).toEqual([
          0, 0, 0, 0
        ]);
      }
    }),
    runs
  );
});

test('twice the cases use twice as much', () => {
  fc.assert(
    fc.property(workbooks, (workbook) => {
      const unscaled = {
        ...workbook,
        agents: workbook.agents.map((supply) => ({ ...supply, scaleToPurchases: false }))
      };
      const once = of(unscaled);
      const twice = of({
        ...unscaled,
        caseMix: unscaled.caseMix.map((row) => ({ ...row, casesPerYear: row.casesPerYear * 2 }))
      });
      once.scenarios.forEach((before, index) => {
        const after = twice.scenarios[index] as ScenarioEstimate;
        // Doubling is exact in binary arithmetic, so no tolerance is needed.
        expect(after.perYear.oxygenM3).toBe(before.perYear.oxygenM3 * 2);
        expect(after.perYear.co2eKg.agents).toBe(before.perYear.co2eKg.agents * 2);
        for (const [agent, use] of Object.entries(before.perYear.agents))
          expect(after.perYear.agents[agent as 'sevoflurane']?.liquidMl).toBe(use.liquidMl * 2);
      });
    }),
    runs
  );
});

test('the order of the rows does not matter', () => {
  fc.assert(
    fc.property(workbooks, (workbook) => {
      const forwards = of(workbook);
      const backwards = of({ ...workbook, caseMix: [...workbook.caseMix].reverse() });
      forwards.scenarios.forEach((before, index) => {
        const after = backwards.scenarios[index] as ScenarioEstimate;
        // Sums in another order differ in the last digits.
        const close = (a: number, b: number) =>
          expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(a)));
        close(Number(before.perYear.cost.total), Number(after.perYear.cost.total));
        close(before.perYear.co2eKg.total, after.perYear.co2eKg.total);
      });
    }),
    runs
  );
});

test('a scenario equal to the baseline saves exactly 0, everywhere', () => {
  fc.assert(
    fc.property(workbooks, (workbook) => {
      const baseline = baselineOf(workbook);
      const twin = { ...baseline, id: 'twin-of-today', name: 'Twin', baseline: false };
      const { againstBaseline } = scenario(
        of({ ...workbook, scenarios: [...workbook.scenarios, twin] }),
        twin.id
      );
      // Recovery minutes saved are saved against today, so the twin is to save none.
      if (baseline.recoveryMinutesSavedPerCase !== 0) return;
      expect(Number(againstBaseline.yearlySaving)).toBe(0);
      expect(againstBaseline.co2eAvoidedKg).toBe(0);
      expect(Number(againstBaseline.investment)).toBe(0);
      expect(Number(againstBaseline.npv)).toBe(0);
      expect(againstBaseline.simplePaybackYears).toBeNull();
      expect(againstBaseline.aheadForATime).toEqual([]);
      expect(againstBaseline.years.every((year) => Number(year.net) === 0)).toBe(true);
    }),
    runs
  );
});

test('a lower maintenance flow never uses more agent, for the same plan otherwise (common practice, no source)', () => {
  const demo = demoWorkbook();
  const useAt = (flowLPerMin: number): readonly number[] =>
    scenario(
      of({
        ...demo,
        ranges: {},
        flowPlans: demo.flowPlans.map((plan) => ({
          ...plan,
          phases: plan.phases.map((phase) => (phase.minutes === null ? { ...phase, flowLPerMin } : phase))
        }))
      }),
      'today'
    ).cases.map((one) => one.liquidMl);
  fc.assert(
    fc.property(
      fc.double({ min: 0.2, max: 8, noNaN: true }),
      fc.double({ min: 0.2, max: 8, noNaN: true }),
      (a, b) => {
        const [low, high] = [useAt(Math.min(a, b)), useAt(Math.max(a, b))];
        low.forEach((use, index) => expect(use).toBeLessThanOrEqual((high[index] ?? 0) * (1 + 1e-6)));
      }
    ),
    { numRuns: 40 }
  );
});

test('a memo changes no figure, over any series of edits', () => {
  fc.assert(
    fc.property(fc.array(workbooks, { minLength: 2, maxLength: 4 }), (series) => {
      const memo = new CaseMemo();
      for (const workbook of series)
        expect(JSON.stringify(estimate(coreInput(workbook), memo))).toBe(JSON.stringify(of(workbook)));
    }),
    { numRuns: 20 }
  );
});

test('the lines of cash add up to the cost of the year, and those of emissions to theirs', () => {
  fc.assert(
    fc.property(workbooks, (workbook) => {
      for (const { perYear } of of(workbook).scenarios) {
        const { total, ...lines } = perYear.co2eKg;
        const sum = Object.values(lines).reduce((a, b) => a + b, 0);
        // Lines may cancel, so the bound goes by their size and not by that of what is left.
        const size = (values: readonly number[]) => values.reduce((a, b) => a + Math.abs(b), 1);
        expect(Math.abs(sum - total)).toBeLessThanOrEqual(1e-12 * size(Object.values(lines)));
        const { total: cost, carbon: _carbon, recovery: _recovery, ...costs } = perYear.cost;
        const money = Object.values(costs).reduce((a, b) => a + Number(b), 0);
        expect(Math.abs(money - Number(cost))).toBeLessThanOrEqual(
          1e-12 * size(Object.values(costs).map(Number))
        );
      }
    }),
    runs
  );
});
