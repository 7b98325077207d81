import { expect, it } from 'vitest';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { mostlyOwn } from '#lib/workbook/mostly-own.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

const demo = demoWorkbook();

it('the demo is not a department’s own, whatever it is called', () => {
  expect(mostlyOwn(demo)).toBe(false);
  expect(mostlyOwn({ ...demo, title: 'North Fjord', currency: 'SEK', priceYear: 2027 })).toBe(false);
});

it('a few changes do not make it one: the case numbers alone are less than half', () => {
  const caseMix = demo.caseMix.map((row) => ({ ...row, casesPerYear: row.casesPerYear + 1 }));
  expect(mostlyOwn({ ...demo, caseMix })).toBe(false);
});

it('it is one when case numbers and minutes are, whatever stayed of ages and targets', () => {
  const caseMix = demo.caseMix.map((row) => ({
    ...row,
    casesPerYear: row.casesPerYear + 1,
    minutes: row.minutes + 7
  }));
  expect(mostlyOwn({ ...demo, caseMix })).toBe(true);
});

it('case groups put in anew count as own, cells of 0 as neither', () => {
  const caseMix = demo.caseMix.map((row) => ({ ...row, id: `own-${row.id}` }));
  expect(mostlyOwn({ ...demo, caseMix } satisfies Workbook)).toBe(true);
  // Nothing but a machine of price 0 and no case: nothing is known to be own.
  expect(mostlyOwn(blankWorkbook())).toBe(false);
});
