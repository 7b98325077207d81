import { expect, test } from 'vitest';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { explainer } from '#lib/calc/estimate/explain.ts';
import { figurePaths } from '#lib/calc/estimate/figure-paths.ts';
import { recorder } from '#lib/calc/working/recorder.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { everyBranch } from '../../../fixtures/every-branch.ts';
import { differenceFinder } from '../working/same-working.ts';

test.each([
  ['the demo', demoWorkbook()] as const,
  ...everyBranch.map((workbook, index) => [`workbook ${index} of every branch`, workbook] as const)
])('in %s a case that is recorded when looked at has the working of one recorded at once', (_, workbook) => {
  const input = coreInput(workbook);
  const atOnce = explainer(input);
  const memo = new CaseMemo();
  const result = estimate(input, memo);
  const whenLookedAt = explainer(input, recorder, memo);
  const paths = figurePaths(result).filter(
    (path, index) => path.endsWith('.perYear.co2eKg.total') || (path.includes('.cases.') && index % 11 === 0)
  );
  expect(paths.length).toBeGreaterThan(5);
  const difference = differenceFinder();
  for (const path of paths) expect(difference(whenLookedAt(path), atOnce(path)), path).toBeNull();
});

test('asking for a total of many cases runs none of them again until one is looked at', () => {
  const demo = demoWorkbook();
  const [row] = demo.caseMix;
  const caseMix = Array.from({ length: 60 }, (_, index) => ({
    ...row!,
    id: `row-${index}`,
    minutes: 40 + index
  }));
  const input = coreInput({ ...demo, caseMix, ranges: {} });
  const memo = new CaseMemo();
  const shown = estimate(input, memo).scenarios[0]!.perYear.cost.total;
  const before = memo.computed;
  let steps = 0;
  const counting = {
    ...recorder,
    result: (...given: Parameters<typeof recorder.result>) => {
      steps++;
      return recorder.result(...given);
    }
  } as typeof recorder;
  const working = explainer(input, counting, memo)('today.perYear.cost.total');
  expect(String(working.value)).toBe(shown);
  expect(steps).toBe(0);
  expect(memo.computed).toBe(before);
});
