import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimateCase } from '#lib/calc/case/estimate-case.ts';
import { emptyOutcome, solveCircleSystem, solveFloor } from '#lib/calc/case/circle-system.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { modelCase } from '#lib/calc/case/case-model.ts';
import { LEAST_FOLLOWED_PERCENT } from '#lib/calc/case/nitrous-oxide.ts';
import { anyCase, heldCase } from '../fixtures/case-arbitrary.ts';
import { circleOf } from '../fixtures/circle-cases.ts';

const volatileCase = anyCase.filter(({ conditions }) => conditions.technique === 'volatile');

test('delivered vapour is taken up, spilled or left, to 1e-9 of what was delivered', () => {
  const outcome = emptyOutcome();
  fc.assert(
    fc.property(volatileCase, (given) => {
      const circle = circleOf(given);
      solveCircleSystem(circle, outcome);
      expect(Math.abs(outcome.balanceErrorL)).toBeLessThanOrEqual(1e-9 * outcome.deliveredL);
      expect(outcome.takenUpL).toBeGreaterThanOrEqual(0);
      expect(outcome.spilledL).toBeGreaterThanOrEqual(-1e-9 * outcome.deliveredL);
      expect(outcome.minutesBelowWhileOff).toBeLessThanOrEqual(outcome.minutesBelowTarget);
      solveFloor(circle, outcome);
      expect(Math.abs(outcome.balanceErrorL)).toBeLessThanOrEqual(1e-9 * Math.abs(outcome.deliveredL));
    }),
    { numRuns: 2000 }
  );
}, 120_000);

test('so is the liquid of an estimate', () => {
  fc.assert(
    fc.property(volatileCase, (given) => {
      const { liquidMl, takenUpMl, spilledMl, leftMl } = estimateCase(plain, given);
      const parts = plain.value(takenUpMl) + plain.value(spilledMl) + plain.value(leftMl);
      expect(Math.abs(plain.value(liquidMl) - parts)).toBeLessThanOrEqual(1e-9 * plain.value(liquidMl));
    }),
    { numRuns: 500 }
  );
}, 120_000);

test('nitrous oxide given is taken up, spilled or left, to 1e-9, and is what the estimate counts', () => {
  fc.assert(
    fc.property(
      anyCase.filter(
        ({ conditions, reference }) =>
          conditions.technique !== 'regional' &&
          conditions.nitrousOxidePercent >= LEAST_FOLLOWED_PERCENT &&
          reference.constants.has('nitrous-oxide.drawn-in-share')
      ),
      (given) => {
        const outcome = modelCase(plain, given).nitrousOxide?.outcome ?? emptyOutcome();
        const { deliveredL, takenUpL, spilledL, leftInCircuitL, leftInLungL, balanceErrorL } = outcome;
        expect(Math.abs(balanceErrorL)).toBeLessThanOrEqual(1e-9 * deliveredL);
        for (const part of [takenUpL, leftInCircuitL, leftInLungL]) expect(part).toBeGreaterThanOrEqual(0);
        expect(spilledL).toBeGreaterThanOrEqual(-1e-9 * deliveredL);
        const counted = plain.value(estimateCase(plain, given).nitrousOxideL);
        expect(Math.abs(deliveredL - counted)).toBeLessThanOrEqual(1e-6 * counted + 1e-9);
      }
    ),
    { numRuns: 500 }
  );
}, 120_000);

test('a plan that no limit binds delivers the floor and what it spills', () => {
  const outcome = emptyOutcome();
  const floor = emptyOutcome();
  fc.assert(
    fc.property(heldCase, (given) => {
      const circle = circleOf(given);
      // So much gas and so high a dial that the target is held from the first minute.
      const phases = circle.phases.map((phase) => ({ ...phase, flowLPerMin: 500, dialFraction: 0.95 }));
      solveCircleSystem({ ...circle, phases }, outcome);
      solveFloor(circle, floor);
      fc.pre(outcome.switches === 0);
      const kept = outcome.deliveredL - outcome.spilledL;
      expect(Math.abs(kept - floor.deliveredL)).toBeLessThanOrEqual(1e-3 * floor.deliveredL);
      expect(outcome.deliveredL).toBeGreaterThanOrEqual(floor.deliveredL);
    }),
    { numRuns: 1000 }
  );
}, 120_000);
