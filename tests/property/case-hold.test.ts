import fc from 'fast-check';
import { expect, test } from 'vitest';
import { emptyOutcome, solveCircleSystem } from '#lib/calc/case/circle-system.ts';
import type { CaseGiven } from '#lib/calc/case/case-given.ts';
import { heldCase } from '../fixtures/case-arbitrary.ts';
import { circleOf } from '../fixtures/circle-cases.ts';

/** Highest end-tidal share of the target while the vaporiser is open; once it had to close, nothing is held. */
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

test('sevoflurane and desflurane in adults never rise more than 2 % above the target while it is held', () => {
  fc.assert(
    fc.property(
      heldCase.filter(
        ({ row, agent }) => row.weightKg >= 40 && (agent === 'sevoflurane' || agent === 'desflurane')
      ),
      (given) => {
        expect(overshoot(given)).toBeLessThanOrEqual(1.02);
      }
    ),
    { numRuns: 500 }
  );
}, 120_000);

/**
 * The inspired share that is needed falls as the vessel-rich tissues fill, and the circuit follows it with the mixing
 * time. Where these tissues fill fast (small children) or blood takes up much (isoflurane, halothane, enflurane) the
 * overshoot is larger: up to 3.7 % in adults and 6.7 % in infants. The bound says so; it is not what one would wish.
 */
test('no agent rises more than 7 % above the target while it is held, at any size', () => {
  fc.assert(
    fc.property(heldCase, (given) => {
      expect(overshoot(given)).toBeLessThanOrEqual(1.07);
    }),
    { numRuns: 2000 }
  );
}, 120_000);
