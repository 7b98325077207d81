import { expect, it } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Field } from '#lib/workbook/field.ts';
import { theatreGroupFields } from '#lib/workbook/fields.ts';
import { numericCells } from '#lib/workbook/numeric-cells.ts';
import { rangeFault } from '#lib/workbook/range-fault.ts';

const demo = demoWorkbook();
const unused = Object.entries<Field>(theatreGroupFields).filter(([, field]) => field.notUsedYet === true);

it('cells that no figure rests on say so, and are offered no range', () => {
  expect(unused.map(([key]) => key)).toEqual(['roomVolumeM3', 'airChangesPerH', 'scavengingPercent']);
  for (const [key, field] of unused) {
    expect(field.words).toContain('Not used yet');
    expect(numericCells(demo).map(({ path }) => path)).not.toContain(`theatreGroups.main.${key}`);
  }
});

it('they are all that nothing rests on: every other number of the site and of its theatres changes the estimate', () => {
  const figures = (site: object, theatres: object = {}) =>
    JSON.stringify(
      estimate(
        coreInput({
          ...demo,
          site: { ...demo.site, ...site },
          theatreGroups: demo.theatreGroups.map((group) => ({ ...group, ...theatres })),
          accounting: { ...demo.accounting, counterfactual: 'replaced-at-end-of-life' }
        })
      )
    );
  const now = figures({});
  for (const [key] of unused) expect(figures({}, { [key]: 42 }), key).toBe(now);
  for (const site of [
    { theatreTemperatureC: 25 },
    { ambientPressureKPa: 80 },
    { electricityPricePerKWh: '0.9' },
    { electricityKgCo2ePerKWh: 0.9 },
    { departmentFootprintTonnes: 777 }
  ])
    expect(figures(site), JSON.stringify(site)).not.toBe(now);
  for (const theatres of [{ theatres: 9 }, { machineAgeYears: 7 }, { staffedHoursPerTheatre: 1 }])
    expect(figures({}, theatres), JSON.stringify(theatres)).not.toBe(now);
});

it('a file with a range on one of them still opens', () => {
  const roomVolumeM3 = { low: 100, high: 120 };
  expect(rangeFault(demo, 'theatreGroups.main.roomVolumeM3', roomVolumeM3)).toBeNull();
});
