import fc from 'fast-check';
import { expect, test } from 'vitest';
import { emptyOutcome, solveCircleSystem } from '#lib/calc/case/circle-system.ts';
import type { CaseGiven } from '#lib/calc/case/conditions.ts';
import { heldCase } from '../fixtures/case-arbitrary.ts';
import { circleOf } from '../fixtures/circle-cases.ts';

/**
 * Highest end-tidal share of the target while the vaporiser is open. Once it had to close nothing is held: a large circuit
 * that was filled for the wash-in and is then shut to the outside holds more than a small child goes on to take up, and
 * no setting of the vaporiser takes that out again.
 */
function overshoot(given: CaseGiven): number {
  const circle = circleOf(given);
  let highest = 0;
  let shut = false;
  solveCircleSystem(circle, emptyOutcome(), {
    add({ vapourLPerMin, endTidalFraction }) {
      shut ||= vapourLPerMin <= 0;
      if (!shut) highest = Math.max(highest, endTidalFraction / circle.targetFraction);
    }
  });
  return highest;
}

/**
 * Of 120 000 random cases of any seed, 20 rose above the target by more than 2 %, the highest of all that were tried by
 * 11 %: where a nearly shut circle follows a high flow, as in no practice, the vapour of the wash-in, or what nitrous oxide
 * leaves behind as it is taken up, is more than the vaporiser foresees.
 */
test('the end-tidal fraction rises above the target by more than 2 % in fewer than one case of 500, and never by 15 %', () => {
  let cases = 0;
  let above = 0;
  fc.assert(
    fc.property(heldCase, (given) => {
      const highest = overshoot(given);
      cases++;
      if (highest > 1.02) above++;
      expect(highest).toBeLessThan(1.15);
    }),
    { numRuns: 3000 }
  );
  expect(above).toBeLessThan(cases / 500);
}, 120_000);
