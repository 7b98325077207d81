/** What stands beside a year's emissions, in any workbook: sets, manufacture, intensity and purchases. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { inventoryClasses } from '#lib/calc/line-names.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { randomWorkbook } from '../fixtures/random-workbook.ts';

const runs = { numRuns: 15 };
const of = (workbook: Workbook) => estimate(coreInput(workbook));
const near = (actual: number, expected: number, scale = expected): void => {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-9 * Math.abs(scale) + 1e-9);
};

test('a set of potentials changes no litre, no money, nothing of what is made, and no purchase', () => {
  fc.assert(
    fc.property(randomWorkbook({ rows: 3 }), (workbook) => {
      const counted = (warmingSet: 'AR6' | 'AR5') => {
        const accounting = { ...workbook.accounting, warmingSet, warmingHorizonYears: 100 } as const;
        const { scenarios, reconciliation } = of({ ...workbook, accounting });
        return {
          reconciliation,
          years: scenarios.map(({ perYear: { cost, co2eKg, ...amounts } }) => {
            const { carbon: _, ...cash } = cost;
            return { amounts, cash, manufacture: co2eKg.manufacture };
          })
        };
      };
      expect(counted('AR5')).toEqual(counted('AR6'));
    }),
    runs
  );
});

test('what is made joins the total and nothing else, each line with a class of its own', () => {
  fc.assert(
    fc.property(randomWorkbook({ rows: 3 }), (workbook) => {
      const without = of({
        ...workbook,
        agents: workbook.agents.map((supply) => ({ ...supply, manufactureKgCo2ePerKg: null })),
        machines: workbook.machines.map((machine) => ({ ...machine, manufactureKgCo2ePerUnit: null })),
        site: { ...workbook.site, consumablesKgCo2ePerCase: null }
      });
      for (const [index, { perYear, ledger }] of of(workbook).scenarios.entries()) {
        const before = without.scenarios[index];
        const made = ledger.filter(({ kind }) => kind.startsWith('making'));
        const sum = made.reduce((all, { co2eKg }) => all + (co2eKg ?? NaN), 0);
        near(perYear.co2eKg.manufacture, sum);
        expect(before?.perYear.co2eKg.manufacture).toBe(0);
        near(perYear.co2eKg.total, (before?.perYear.co2eKg.total ?? NaN) + sum);
        expect(ledger.filter((line) => !made.includes(line))).toEqual(before?.ledger);
        for (const { kind } of ledger) expect(inventoryClasses[kind].class).toMatch(/direct$/);
      }
    }),
    runs
  );
});

test('what a case and an hour emit, times all of them, is the year', () => {
  fc.assert(
    fc.property(randomWorkbook({ rows: 3 }), (workbook) => {
      const rows = coreInput(workbook).caseMix;
      for (const { perYear, intensity, failed } of of(workbook).scenarios) {
        // A case that could not be computed is in no total.
        if (failed.length > 0) continue;
        const cases = rows.reduce((sum, { casesPerYear }) => sum + casesPerYear, 0);
        const hours = rows.reduce((sum, { casesPerYear, minutes }) => sum + (casesPerYear * minutes) / 60, 0);
        const { co2eKgPerCase, co2eKgPerHour } = intensity.year;
        if (cases > 0) near((co2eKgPerCase ?? NaN) * cases, perYear.co2eKg.total);
        else expect([co2eKgPerCase, co2eKgPerHour]).toEqual([null, null]);
        if (hours > 0) near((co2eKgPerHour ?? NaN) * hours, perYear.co2eKg.total);
      }
    }),
    runs
  );
});

test('nothing is told of purchases that are not given, and what is lost is never more than was bought', () => {
  fc.assert(
    fc.property(randomWorkbook({ rows: 3 }), (workbook) => {
      const { agents, nitrousOxide } = of(workbook).reconciliation;
      for (const [agent, { purchasedMl, estimateOverPurchase, finding }] of Object.entries(agents)) {
        const supply = workbook.agents.find((each) => each.agent === agent);
        const isGiven = supply?.bottlesBoughtPerYear !== null;
        expect(purchasedMl !== null).toBe(isGiven);
        expect(finding === 'not-given').toBe(!isGiven);
        if (estimateOverPurchase !== null) expect(isGiven).toBe(true);
      }
      const { boughtKg, lostKg, lostPercent } = nitrousOxide;
      expect(lostKg === null).toBe(boughtKg === null);
      if (lostPercent !== null) {
        expect(lostPercent).toBeGreaterThanOrEqual(0);
        expect(lostPercent).toBeLessThanOrEqual(100);
      }
    }),
    runs
  );
});
