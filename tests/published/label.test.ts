/**
 * Sevoflurane and low flow: the US prescribing information allows at most 2 MAC-hours at 1 to below 2 L/min, and does
 * not recommend less than 1 L/min. Exact: the clause has no tolerance.
 */
import { expect, test } from 'vitest';
import { sevofluraneCaution } from '#lib/calc/case/sevoflurane-caution.ts';
import { estimateCase } from '#lib/calc/case/estimate-case.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { caseOf } from '../fixtures/circle-cases.ts';

test.each([
  [2.0, 3.0, 'outside'],
  [1.0, 2.0, 'within'],
  [1.5, 2.4, 'exceeds'],
  [0.99, 0.01, 'not-recommended'],
  [0.99, 5, 'not-recommended']
] as const)('label-1: %s L/min for %s MAC-hours is %s', (flowLPerMin, macHours, standing) => {
  expect(sevofluraneCaution({ flowLPerMin, macHours })).toBe(standing);
});

const hold = { vaporiser: 'hold', dialPercent: null } as const;
const cautionOf = (agent: 'sevoflurane' | 'isoflurane', flowLPerMin: number, minutes: number) =>
  estimateCase(plain, {
    ...caseOf({ agent, minutes }, [
      { ...hold, minutes: 5, flowLPerMin: 6 },
      { ...hold, minutes: null, flowLPerMin }
    ])
  }).warnings.find(({ code }) => code.startsWith('sevoflurane-'))?.sentence;

test('a case says so where it is beyond the clause, and that local policy decides', () => {
  expect(cautionOf('sevoflurane', 2, 400)).toBeUndefined();
  expect(cautionOf('sevoflurane', 1, 120)).toBeUndefined();
  expect(cautionOf('sevoflurane', 1, 130)).toMatch(/2\.08 MAC-hours at 1 to below 2 L\/min.*local policy/);
  expect(cautionOf('sevoflurane', 0.5, 65)).toMatch(
    /1\.0\d* MAC-hours below 1 L\/min|1 MAC-hours below 1 L\/min/
  );
  expect(cautionOf('isoflurane', 0.5, 65)).toBeUndefined();
});
