/** What adoption does to a year, whatever the workbook: nothing at 0 %, and in proportion between 0 and 100 %. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { ScenarioYear } from '#lib/calc/estimate-types.ts';
import type { Scenario } from '#lib/calc/input.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { randomWorkbook } from '../fixtures/random-workbook.ts';

const baselineOf = ({ scenarios }: Workbook): Scenario => {
  const found = scenarios.find(({ baseline }) => baseline);
  if (found === undefined) throw new Error('There is no baseline.');
  return found;
};

/** The years of scenarios beside today, by place. */
const yearsOf = (workbook: Workbook, scenarios: readonly Scenario[]): readonly ScenarioYear[] =>
  estimate(coreInput({ ...workbook, scenarios: [baselineOf(workbook), ...scenarios] })).scenarios.map(
    ({ perYear }) => perYear
  );

/** Every figure of a year as a number, money too, by its path; what depends on no scenario is left out. */
function figuresOf(year: ScenarioYear): Map<string, number> {
  const figures = new Map<string, number>();
  const visit = (value: unknown, path: string): void => {
    if (typeof value === 'object' && value !== null)
      for (const [key, inner] of Object.entries(value)) visit(inner, `${path}.${key}`);
    else if (value !== null && !path.endsWith('estimateOverPurchase')) figures.set(path, Number(value));
  };
  visit(year, 'perYear');
  return figures;
}

/** Another scenario on the machine of today, with its capture and its yearly cost, and one that saves no recovery. */
const onTodaysMachine = (workbook: Workbook, other: Scenario): Scenario => {
  const today = baselineOf(workbook);
  return {
    ...other,
    id: 'other',
    baseline: false,
    moves: [],
    spares: 0,
    capturePercent: today.capturePercent,
    caughtLostPercent: today.caughtLostPercent,
    captureFeePerYear: today.captureFeePerYear,
    canisterPrice: today.canisterPrice,
    canisterHoldsG: today.canisterHoldsG,
    scavengingPumpHoursPerWeek: today.scavengingPumpHoursPerWeek,
    nitrousOxideSupply: today.nitrousOxideSupply,
    yearlyExtraCost: today.yearlyExtraCost,
    recoveryMinutesSavedPerCase: 0
  };
};

/** A workbook with more than today in it. */
const workbooks = randomWorkbook({ rows: 4 }).filter(({ scenarios }) => scenarios.length > 1);
const runs = { numRuns: 40 };
const inOneGroup = (workbook: Workbook): Workbook => ({
  ...workbook,
  theatreGroups: workbook.theatreGroups.slice(0, 1),
  caseMix: workbook.caseMix.map((row) => ({ ...row, theatreGroups: {} })),
  scenarios: workbook.scenarios.map((scenario) => ({ ...scenario, moves: [] }))
});

test('at adoption 0 %, with machine, capture and supply of today, every yearly figure is today’s to the bit', () => {
  fc.assert(
    // In one group of theatres: shares of several are multiplied, and so hold to rounding alone.
    fc.property(workbooks.map(inOneGroup), (workbook) => {
      const today = baselineOf(workbook);
      // A plan like today’s under another name, so that every case group has one to follow.
      const plan =
        workbook.flowPlans.find(({ id }) => !Object.values(today.plans).includes(id)) ??
        workbook.flowPlans[0];
      if (plan === undefined) throw new Error('There is no flow plan.');
      const own = { ...plan, id: 'own-plan' };
      const nobody = {
        ...onTodaysMachine(workbook, today),
        plans: Object.fromEntries(workbook.machines.map(({ id }) => [id, own.id])),
        flowPlanByCase: {},
        adoptionPercent: 0
      };
      const [now, then] = yearsOf({ ...workbook, flowPlans: [...workbook.flowPlans, own] }, [nobody]);
      expect(JSON.stringify(then)).toBe(JSON.stringify(now));
    }),
    { ...runs, seed: 20262 }
  );
});

test('the same to rounding where some groups stay on today’s plan, or would get another agent', () => {
  fc.assert(
    fc.property(workbooks, (workbook) => {
      const other = workbook.scenarios.find(({ baseline }) => !baseline);
      if (other === undefined) throw new Error('There is today alone.');
      const nobody = { ...onTodaysMachine(workbook, other), adoptionPercent: 0 };
      const [now, then] = yearsOf(workbook, [nobody]).map(figuresOf);
      expectAlike(then, now, (path) => Math.abs(now?.get(path) ?? 0));
    }),
    { ...runs, seed: 20263 }
  );
});

test('every yearly figure is in proportion to adoption', () => {
  fc.assert(
    fc.property(workbooks, fc.double({ min: 1, max: 99, noNaN: true }), (drawn, adoptionPercent) => {
      // A liquid that is measured or scaled to less than what is metabolised would vent less than nothing, and vents 0.
      const workbook = {
        ...drawn,
        caseMix: drawn.caseMix.map((row) => ({ ...row, measuredMlPerCase: null })),
        agents: drawn.agents.map((supply) => ({ ...supply, scaleToPurchases: false }))
      };
      const other = workbook.scenarios.find(({ baseline }) => !baseline);
      if (other === undefined) throw new Error('There is today alone.');
      const at = (percent: number): Scenario => ({ ...other, id: `at-${percent}`, adoptionPercent: percent });
      const [, none, some, all] = yearsOf(workbook, [at(0), at(adoptionPercent), at(100)]).map(figuresOf);
      const share = adoptionPercent / 100;
      const paths = new Set([...(none?.keys() ?? []), ...(all?.keys() ?? [])]);
      const between = new Map(
        [...paths].map((path) => [path, (1 - share) * (none?.get(path) ?? 0) + share * (all?.get(path) ?? 0)])
      );
      expectAlike(some, between, (path) => Math.abs(none?.get(path) ?? 0) + Math.abs(all?.get(path) ?? 0));
    }),
    { ...runs, seed: 20264 }
  );
});

/** Figures that are not there are 0, as of an agent that nobody gets. Lines of a total may cancel: it is held to their size. */
function expectAlike(
  actual: ReadonlyMap<string, number> | undefined,
  expected: ReadonlyMap<string, number> | undefined,
  sizeOf: (path: string) => number
): void {
  const paths = new Set([...(actual?.keys() ?? []), ...(expected?.keys() ?? [])]);
  for (const path of paths) {
    const lines = path.endsWith('.total')
      ? [...paths].filter((each) => each.startsWith(path.slice(0, -5)))
      : [path];
    const size = lines.reduce((sum, line) => sum + sizeOf(line), 0);
    const off = Math.abs((actual?.get(path) ?? 0) - (expected?.get(path) ?? 0));
    expect(off, path).toBeLessThanOrEqual(1e-11 * Math.max(1e-6, size));
  }
}
