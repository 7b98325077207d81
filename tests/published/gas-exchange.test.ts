/**
 * Gas exchange of an anaesthetised adult: Briesenick L et al. Anesth Analg 2023, doi 10.1213/ane.0000000000006343; Br J
 * Anaesth 2003;91:793-6, doi 10.1093/bja/aeg270.
 */
import { expect, test } from 'vitest';
import { isAccepted, publishedChecks } from '#lib/calc/published/published-checks.ts';
import { referenceSet2026Second } from '#lib/calc/reference/reference-set-2026-2.ts';
import { testArea } from '../fixtures/published-area.ts';

testArea(
  'gas exchange',
  { 'vco2-1-oxygen': 183, 'vco2-1-co2': 157.5, 'vco2-2-30': 38, 'vco2-2-60': 46, 'vco2-2-90': 63 },
  { 'vco2-1-oxygen': 242.0, 'vco2-1-co2': 193.6, 'vco2-2-30': 76, 'vco2-2-60': 76, 'vco2-2-90': 76 }
);

test('as the second set has it, all lie within their tolerance of what was measured', () => {
  const rows = publishedChecks(referenceSet2026Second).filter(({ area }) => area === 'gas exchange');
  expect(rows).toHaveLength(5);
  for (const check of rows)
    expect(isAccepted(check, check.model.eger), `${check.id}: ${check.model.eger}`).toBe(true);
});
