/** No agent is lost: what is delivered is metabolised, caught or vented, in any workbook. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { departmentWorkbook } from '../fixtures/department.ts';

const department = departmentWorkbook();

test('of each agent, delivered = metabolised + caught + vented, and nothing is below 0', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.integer({ min: 0, max: 2000 }),
      fc.option(fc.double({ min: 0.1, max: 200, noNaN: true })),
      fc.option(fc.double({ min: 0, max: 100, noNaN: true })),
      fc.constantFrom('2026-1', '2026-2'),
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
        for (const { agentFate, perYear } of scenarios)
          for (const [agent, fate] of Object.entries(agentFate)) {
            const { deliveredKg, metabolisedKg, caughtKg, ventedKg, caughtAndLostKg } = fate;
            for (const kg of Object.values(fate)) expect(kg).toBeGreaterThanOrEqual(0);
            expect(Math.abs(metabolisedKg + caughtKg + ventedKg - deliveredKg)).toBeLessThanOrEqual(
              1e-9 * deliveredKg
            );
            expect(caughtAndLostKg).toBeLessThanOrEqual(ventedKg * (1 + 1e-9) + 1e-12);
            expect(Object.keys(perYear.agents)).toContain(agent);
          }
      }
    ),
    { numRuns: 20 }
  );
});
