/** Where a measurement or purchases adjust an estimate, no patient takes up less, and the parts still add up. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { randomWorkbook } from '../fixtures/random-workbook.ts';

const newSet = (workbook: Workbook): Workbook => ({ ...workbook, referenceSet: '2026-2' });
const scenariosOf = (workbook: Workbook) => estimate(coreInput(workbook)).scenarios;
const runs = { numRuns: 60 };
/** Of what a sum of its parts may differ: rounding. */
const slackOf = (ml: number) => 1e-9 * Math.max(1, ml);

const measuredValues = fc.array(
  fc.option(fc.oneof(fc.double({ min: 0, max: 60, noNaN: true }), fc.constantFrom(0, 1000))),
  { minLength: 6, maxLength: 6 }
);
/** A workbook some of whose volatile groups have a measured use. */
const measuredWorkbook = fc.tuple(randomWorkbook(), measuredValues).map(([workbook, values]): Workbook => ({
  ...newSet(workbook),
  caseMix: workbook.caseMix.map((row, index) => ({
    ...row,
    measuredMlPerCase: row.technique === 'volatile' ? (values[index % values.length] ?? null) : null
  }))
}));

test('a measured use is never below what is taken up and left, in any scenario, and its parts add up', () => {
  fc.assert(
    fc.property(measuredWorkbook, (workbook) => {
      for (const { cases } of scenariosOf(workbook))
        for (const { liquidMl, takenUpMl, spilledMl, leftMl } of cases) {
          expect(liquidMl).toBeGreaterThanOrEqual(takenUpMl + leftMl - slackOf(liquidMl));
          expect(spilledMl).toBeGreaterThanOrEqual(0);
          expect(Math.abs(takenUpMl + spilledMl + leftMl - liquidMl)).toBeLessThanOrEqual(slackOf(liquidMl));
        }
    }),
    runs
  );
});

test('a measured use leaves what patients take up as it is, today and in every scenario', () => {
  fc.assert(
    fc.property(measuredWorkbook, (workbook) => {
      const unmeasured = {
        ...workbook,
        caseMix: workbook.caseMix.map((row) => ({ ...row, measuredMlPerCase: null }))
      };
      const without = scenariosOf(unmeasured);
      scenariosOf(workbook).forEach(({ cases }, i) =>
        cases.forEach(({ takenUpMl, leftMl }, at) =>
          expect([takenUpMl, leftMl]).toEqual([
            without[i]!.cases[at]!.takenUpMl,
            without[i]!.cases[at]!.leftMl
          ])
        )
      );
    }),
    runs
  );
});

const bottles = fc.oneof(fc.double({ min: 0, max: 5000, noNaN: true }), fc.constantFrom(0, 1, 1e6));
const elsewhere = fc.option(fc.constantFrom(0, 1, 7.5, 400));

test('use scaled to purchases is never below what is taken up and left of every case, and meets them if that allows', () => {
  fc.assert(
    fc.property(
      bottles,
      elsewhere,
      fc.option(fc.double({ min: 0, max: 60, noNaN: true })),
      (bought, others, measured) => {
        const demo = newSet(demoWorkbook());
        const workbook: Workbook = {
          ...demo,
          caseMix: demo.caseMix.map((row, index) =>
            index === 0 && row.technique === 'volatile' ? { ...row, measuredMlPerCase: measured } : row
          ),
          agents: demo.agents.map((supply) => ({
            ...supply,
            bottlesBoughtPerYear: bought,
            bottlesUsedElsewherePerYear: others,
            scaleToPurchases: true
          }))
        };
        const today = scenariosOf(workbook).find((_, index) => workbook.scenarios[index]!.baseline)!;
        for (const { agent, bottleMl, unusablePercent } of workbook.agents) {
          const use = today.perYear.agents[agent];
          if (use === undefined) continue;
          let heldMl = 0;
          let fixedMl = 0;
          for (const one of today.cases) {
            const row = workbook.caseMix.find(({ id }) => id === one.caseId)!;
            if (one.agent !== agent) continue;
            heldMl += row.casesPerYear * (one.takenUpMl + one.leftMl);
            fixedMl +=
              row.casesPerYear * (row.measuredMlPerCase === null ? one.takenUpMl + one.leftMl : one.liquidMl);
          }
          const boughtMl = ((bought - (others ?? 0)) * bottleMl * (100 - unusablePercent)) / 100;
          expect(use.liquidMl).toBeGreaterThanOrEqual(heldMl - slackOf(heldMl));
          // No purchases at all are none to scale to.
          if (boughtMl > 0) expect(use.liquidMl / Math.max(boughtMl, fixedMl)).toBeCloseTo(1, 9);
        }
      }
    ),
    runs
  );
});
