/** The cases of a scenario, each times its count, are its year: what they use, cost and emit. */
import type { TheatreGroup } from '#lib/calc/input.ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { CaseEstimate } from '#lib/calc/estimate-types.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { randomWorkbook } from '../fixtures/random-workbook.ts';

test('cases times their count give the year, where every case follows the plan', () => {
  fc.assert(
    fc.property(randomWorkbook({ rows: 4 }), (drawn) => {
      // Purchases belong to no case, and what is measured below what is metabolised vents 0 in a case, not in the sum.
      const [first] = drawn.theatreGroups as readonly [TheatreGroup];
      const workbook = {
        ...drawn,
        scenarios: drawn.scenarios.map((scenario) => ({
          ...scenario,
          adoptionPercent: 100,
          adoptionFirstYearsPercent: null,
          // A group is told of by one case: it changes its technique altogether, or not at all.
          intravenousPercentByCase: Object.fromEntries(
            Object.keys(scenario.intravenousPercentByCase).map((row) => [row, 100])
          ),
          regionalPercentByCase: {},
          // All theatres are alike, so that a case is the same in each.
          moves: scenario.moves
            .slice(0, 1)
            .map((move) => ({ ...move, theatreGroup: first.id, theatres: null, payment: null }))
        })),
        // Machines are made, and scavenging pumps run, whatever the cases.
        machines: drawn.machines.map((machine) => ({ ...machine, manufactureKgCo2ePerUnit: null })),
        theatreGroups: [{ ...first, scavengingPumpKW: null }],
        caseMix: drawn.caseMix.map((row) => ({ ...row, measuredMlPerCase: null, theatreGroups: {} })),
        agents: drawn.agents.map((supply) => ({ ...supply, scaleToPurchases: false })),
        gases: { ...drawn.gases, nitrousOxideBoughtKgPerYear: null }
      };
      for (const { id, perYear, cases, failed } of estimate(coreInput(workbook)).scenarios) {
        // A row that fails is left out of both.
        expect(cases.length + failed.length).toBe(workbook.caseMix.length);
        const counts = new Map(workbook.caseMix.map((row) => [row.id, row.casesPerYear]));
        const ofYear = (of: (one: CaseEstimate) => number): number =>
          cases.reduce((sum, one) => sum + (counts.get(one.caseId) ?? NaN) * of(one), 0);
        const alike = (of: (one: CaseEstimate) => number, year: number, what: string): void => {
          const off = Math.abs(ofYear(of) - year);
          expect(off, `${id}, ${what}`).toBeLessThanOrEqual(1e-11 * Math.max(1e-6, Math.abs(year)));
        };
        for (const { agent } of workbook.agents)
          alike(
            (one) => (one.agent === agent ? one.liquidMl : 0),
            perYear.agents[agent]?.liquidMl ?? 0,
            agent
          );
        alike((one) => one.oxygenL / 1000, perYear.oxygenM3, 'oxygen');
        alike((one) => one.airL / 1000, perYear.airM3, 'air');
        alike((one) => one.absorbentKg, perYear.absorbentKg, 'absorbent');
        alike((one) => one.co2eKg, perYear.co2eKg.total, 'emissions');
        const { agents, gases, absorbent, drugs } = perYear.cost;
        alike(
          (one) => Number(one.cost),
          Number(agents) + Number(gases) + Number(absorbent) + Number(drugs),
          'cost'
        );
      }
    }),
    { numRuns: 40 }
  );
});
