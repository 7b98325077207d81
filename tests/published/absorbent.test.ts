/**
 * How long soda lime lasts: Jorgensen B, Jorgensen S. Acta Anaesthesiol Scand 1977;21:437-44; Baum J et al. Anaesthesiol
 * Reanim 1993;18:108-13; Japanese grants database, project 15790834.
 */
import { expect, test } from 'vitest';
import { isAccepted, publishedChecks } from '#lib/calc/published/published-checks.ts';
import { referenceSet2026Second } from '#lib/calc/reference/reference-set-2026-2.ts';
import { testArea } from '../fixtures/published-area.ts';

testArea(
  'absorbent',
  {
    'abs-1': 240,
    'abs-2-42.7': 42.7,
    'abs-2-62.3': 62.3,
    'abs-3': 2,
    'abs-4-1': 7.7,
    'abs-4-2': 6.8,
    'abs-4-3': 5.1
  },
  { 'abs-2-42.7': 26.37, 'abs-2-62.3': 26.37 }
);

test('with gas exchange under anaesthesia, as the second set has it, soda lime lasts as long as was measured', () => {
  const rows = publishedChecks(referenceSet2026Second).filter(({ id }) => /^abs-[23]/.test(id));
  expect(rows).toHaveLength(3);
  for (const check of rows)
    expect(isAccepted(check, check.model.eger), `${check.id}: ${check.model.eger}`).toBe(true);
});
