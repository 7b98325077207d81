/** An estimate makes its parts when they are read; in whatever order that happens, it says the same. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { Estimate, ScenarioEstimate } from '#lib/calc/estimate-types.ts';
import type { EstimateInput } from '#lib/calc/input.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { randomWorkbook } from '../fixtures/random-workbook.ts';

const parts = [
  'perYear',
  'cases',
  'againstBaseline',
  'monitoring',
  'monitoringGaps',
  'vapourOnOwnPlan',
  'failed'
] as const satisfies readonly (keyof ScenarioEstimate)[];

/** One thing read of an estimate: a part of a scenario, or of the whole. */
const reading: fc.Arbitrary<(of: Estimate) => unknown> = fc
  .oneof(
    { weight: 5, arbitrary: fc.record({ scenario: fc.nat(3), part: fc.constantFrom(...parts) }) },
    { weight: 1, arbitrary: fc.constantFrom('warnings' as const, 'monitoring' as const) }
  )
  .map(
    (what) => (of: Estimate) =>
      typeof what === 'string' ? of[what] : of.scenarios[what.scenario]?.[what.part]
  );

/** Inputs in which rows, and cases of one machine, may be out of range, as no checked workbook has them. */
const inputs: fc.Arbitrary<EstimateInput> = fc
  .record({
    workbook: randomWorkbook({ rows: 4 }).filter(({ caseMix }) => caseMix.length > 0),
    badRow: fc.option(fc.nat(3)),
    badMachine: fc.option(fc.nat(3))
  })
  .map(({ workbook, badRow, badMachine }) => {
    const input = coreInput(workbook);
    return {
      ...input,
      caseMix: input.caseMix.map((row, index) => (index === badRow ? { ...row, weightKg: -1 } : row)),
      machines: input.machines.map((machine, index) =>
        index === badMachine ? { ...machine, circuitVolumeL: 99 } : machine
      )
    };
  });

test('an estimate is the same in whatever order it is read, with cases that fail', () => {
  const seen = { failed: 0 };
  fc.assert(
    fc.property(inputs, fc.array(reading, { minLength: 1, maxLength: 12 }), (input, readings) => {
      const whole = estimate(input);
      const read = estimate(input);
      for (const of of readings) of(read);
      expect(JSON.stringify(read)).toBe(JSON.stringify(whole));
      if (whole.scenarios.some(({ failed }) => failed.length > 0)) seen.failed += 1;
    }),
    { numRuns: 50 }
  );
  expect(seen.failed).toBeGreaterThan(10);
});
