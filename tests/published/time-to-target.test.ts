/**
 * Minutes to one MAC and end-tidal courses at low flow: Horwitz M, Jakobsson JG. Minerva Anestesiol 2016;82:180-5;
 * Lerou JGC, Verheijen R, Booij LHDJ. Br J Anaesth 2002;88:24-37; a study of desflurane beside nitrous oxide whose
 * journal its abstract does not show.
 */
import { expect, test } from 'vitest';
import { publishedChecks } from '#lib/calc/published/published-checks.ts';
import { referenceSet2026Second } from '#lib/calc/reference/reference-set-2026-2.ts';
import { referenceSet2026Third } from '#lib/calc/reference/reference-set-2026-3.ts';
import type { ReferenceSet } from '#lib/calc/reference/reference-set.ts';
import { testArea } from '../fixtures/published-area.ts';

testArea(
  'time to target',
  {
    'time-1-0.5': 15.2,
    'time-1-1': 6.2,
    'time-2-0.5': 8.5,
    'time-2-1': 3.7,
    'time-3-mean': 0.95,
    'time-3-peak': 0.96,
    'time-4-4': 8.3,
    'time-4-6': 5.2
  },
  { 'time-2-1': 5.8, 'time-3-peak': 0.822, 'time-4-4': 24.86, 'time-4-6': 18.27 },
  // Not reached within the hour that is run.
  ['time-4-4.two-fat']
);

test('a fixed dial beside nitrous oxide: following its uptake brings the model nearer to what was measured', () => {
  const figures = (reference: ReferenceSet) =>
    publishedChecks(reference)
      .filter(({ id }) => id.startsWith('time-4'))
      .map(({ model }) => model.eger);
  const [slow, fast] = figures(referenceSet2026Second);
  const [slowFollowed, fastFollowed] = figures(referenceSet2026Third);
  // Reported: measured are 8.3 and 5.2 min, and the model is still later than 50 % more allows.
  expect(slow).toBeCloseTo(42.2, 1);
  expect(fast).toBeCloseTo(32, 1);
  expect(slowFollowed).toBeCloseTo(14.7, 1);
  expect(fastFollowed).toBeCloseTo(10.4, 1);
});
