/** No agent is lost: what is delivered is metabolised, caught or vented, in any workbook, year and theatre group. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Agent, TheatreGroup } from '#lib/calc/input.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { agentFates } from '#lib/calc/emissions/agent-fate.ts';
import { referenceSets } from '#lib/calc/reference/reference-sets.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { departmentWorkbook } from '../fixtures/department.ts';

const department = departmentWorkbook();
const [main] = department.theatreGroups as readonly [TheatreGroup];
/** Machines come to the first of two groups alone. */
const theatreGroups = [main, { ...main, id: 'day', name: 'Day surgery', theatres: 2 }];

test('of each agent, delivered = metabolised + caught + vented, and nothing is below 0', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.integer({ min: 0, max: 2000 }),
      fc.option(fc.double({ min: 0.1, max: 200, noNaN: true })),
      fc.option(fc.double({ min: 0, max: 100, noNaN: true })),
      fc.constantFrom(...referenceSets.map(({ id }) => id)),
      fc.boolean(),
      (
        capturePercent,
        casesPerYear,
        measuredMlPerCase,
        caughtLostPercent,
        referenceSet,
        scaleToPurchases
      ) => {
        const { scenarios } = estimate(
          coreInput({
            ...department,
            referenceSet,
            theatreGroups,
            agents: department.agents.map((supply) => ({ ...supply, scaleToPurchases })),
            caseMix: department.caseMix.map((row, index) =>
              index === 0 ? { ...row, casesPerYear, measuredMlPerCase } : row
            ),
            scenarios: department.scenarios.map((scenario) => ({
              ...scenario,
              capturePercent,
              caughtLostPercent
            }))
          })
        );
        for (const { agentFate, agentFateByGroup, perYear } of scenarios)
          for (const [agent, fate] of Object.entries(agentFate)) {
            const { deliveredKg, metabolisedKg, caughtKg, ventedKg, caughtAndLostKg } = fate;
            for (const kg of Object.values(fate)) expect(kg).toBeGreaterThanOrEqual(0);
            expect(Math.abs(metabolisedKg + caughtKg + ventedKg - deliveredKg)).toBeLessThanOrEqual(
              1e-9 * deliveredKg
            );
            expect(caughtAndLostKg).toBeLessThanOrEqual(ventedKg * (1 + 1e-9) + 1e-12);
            expect(Object.keys(perYear.agents)).toContain(agent);
            const groups = Object.values(agentFateByGroup).flatMap((of) => of[agent as Agent] ?? []);
            for (const key of agentFates)
              expect(Math.abs(groups.reduce((sum, of) => sum + of[key], 0) - fate[key])).toBeLessThanOrEqual(
                1e-9 * deliveredKg
              );
            for (const of of groups)
              expect(
                Math.abs(of.metabolisedKg + of.caughtKg + of.ventedKg - of.deliveredKg)
              ).toBeLessThanOrEqual(1e-9 * of.deliveredKg);
          }
      }
    ),
    { numRuns: 20 }
  );
});
