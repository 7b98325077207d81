import { expect, it } from 'vitest';
import { firstSteps, hasAlternative, hasCases } from '#lib/sheets/parts/first-steps.ts';
import { sheetAt } from '#lib/sheets/frame/sheet-list.ts';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';

it('an empty workbook has every step before it, a full one none', () => {
  expect(firstSteps(blankWorkbook()).map(({ done }) => done)).toEqual(Array(6).fill(false));
  expect(firstSteps(demoWorkbook()).every(({ done }) => done)).toBe(true);
});

it('each step leads to a sheet that there is, by its own name', () => {
  for (const { route, sheet } of firstSteps(blankWorkbook())) expect(sheetAt(route).title).toBe(sheet);
});

it('case groups without a case in the year, and today alone, are nothing to compare', () => {
  const demo = demoWorkbook();
  expect(hasCases({ caseMix: demo.caseMix.map((row) => ({ ...row, casesPerYear: 0 })) })).toBe(false);
  expect(hasCases(demo)).toBe(true);
  expect(hasAlternative({ scenarios: demo.scenarios.slice(0, 1) })).toBe(false);
  expect(hasAlternative(demo)).toBe(true);
});
