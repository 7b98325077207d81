import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';

const demo = demoWorkbook();
const row = demo.caseMix.find(({ technique }) => technique === 'volatile')!;
const measuredMl = 31;
const cases = (workbook: typeof demo) =>
  Object.fromEntries(
    estimate(coreInput(workbook)).scenarios.map(({ id, cases }) => [
      id,
      cases.find(({ caseId }) => caseId === row.id)!
    ])
  );
const modelled = cases(demo);
const measured = cases({
  ...demo,
  caseMix: demo.caseMix.map((each) => (each === row ? { ...each, measuredMlPerCase: measuredMl } : each))
});

test('what was measured takes the place of today’s liquid, and of nothing else', () => {
  const { today } = measured;
  expect(today).toMatchObject({ method: 'measured', liquidMl: measuredMl });
  expect(today!.takenUpMl).toBe(modelled['today']!.takenUpMl);
  expect(today!.floorMl).toBe(modelled['today']!.floorMl);
});

test('another plan keeps what it takes up and leaves, and its spill goes by measured over the model’s spill of today', () => {
  const { closed } = measured;
  const [today, then] = [modelled['today']!, modelled['closed']!];
  expect(closed!.method).toBe('scaled-to-measured');
  const factor = (measuredMl - today.takenUpMl - today.leftMl) / today.spilledMl;
  expect(closed!.liquidMl).toBeCloseTo(then.takenUpMl + then.leftMl + factor * then.spilledMl, 9);
});
