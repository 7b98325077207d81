import { expect, it } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Field } from '#lib/workbook/field.ts';
import { siteFields } from '#lib/workbook/fields.ts';
import { numericCells } from '#lib/workbook/numeric-cells.ts';
import { rangeFault } from '#lib/workbook/range-fault.ts';

const demo = demoWorkbook();
const unused = Object.entries<Field>(siteFields).filter(([, field]) => field.notUsedYet === true);

it('cells that no figure rests on say so, and are offered no range', () => {
  expect(unused.map(([key]) => key)).toEqual(['roomVolumeM3', 'airChangesPerH', 'scavengingPercent']);
  for (const [key, field] of unused) {
    expect(field.words).toContain('Not used yet');
    expect(numericCells(demo).map(({ path }) => path)).not.toContain(`site.${key}`);
  }
});

it('they are all that nothing rests on: every other number of the site changes the estimate', () => {
  const figures = (site: object) =>
    JSON.stringify(estimate(coreInput({ ...demo, site: { ...demo.site, ...site } })));
  const now = figures({});
  for (const [key] of unused) expect(figures({ [key]: 42 }), key).toBe(now);
  for (const site of [
    { theatres: 9 },
    { theatreTemperatureC: 25 },
    { ambientPressureKPa: 80 },
    { electricityPricePerKWh: '0.9' },
    { electricityKgCo2ePerKWh: 0.9 },
    { departmentFootprintTonnes: 777 }
  ])
    expect(figures(site), JSON.stringify(site)).not.toBe(now);
});

it('a file with a range on one of them still opens', () => {
  const roomVolumeM3 = { low: 100, high: 120 };
  expect(rangeFault(demo, 'site.roomVolumeM3', roomVolumeM3)).toBeNull();
});
