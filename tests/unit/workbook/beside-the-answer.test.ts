import { expect, it } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Field } from '#lib/workbook/field.ts';
import { siteFields, theatreGroupFields } from '#lib/workbook/fields.ts';
import { numericCells } from '#lib/workbook/numeric-cells.ts';
import { rangeFault } from '#lib/workbook/range-fault.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

const demo = demoWorkbook();
const cellsBeside = (fields: Readonly<Record<string, Field>>): string[] =>
  Object.entries(fields).flatMap(([key, field]) => (field.besideTheAnswer === true ? [key] : []));
const ofTheatres = cellsBeside(theatreGroupFields);
const ofSite = cellsBeside(siteFields);

const withCells = (site: object, theatres: object = {}): Workbook => ({
  ...demo,
  site: { ...demo.site, ...site },
  theatreGroups: demo.theatreGroups.map((group) => ({ ...group, ...theatres })),
  accounting: { ...demo.accounting, counterfactual: 'replaced-at-end-of-life' }
});
/** The estimate, with what stands beside the answer apart: theatre air, and the ledger’s lines outside the total. */
function figures(site: object, theatres: object = {}) {
  const { scenarios, ...rest } = estimate(coreInput(withCells(site, theatres)));
  const apart = scenarios.map((scenario) => {
    const { theatreAir, ledger, ...others } = { ...scenario };
    return {
      beside: [theatreAir, ledger.filter(({ isInTotal }) => !isInTotal)],
      others: [others, ledger.filter(({ isInTotal }) => isInTotal)]
    };
  });
  return {
    beside: JSON.stringify(apart.map(({ beside }) => beside)),
    answer: JSON.stringify([rest, apart.map(({ others }) => others)])
  };
}
const now = figures({});

it('cells beside the answer are offered no range', () => {
  expect(ofTheatres).toEqual(['roomVolumeM3', 'airChangesPerH', 'scavengingPercent', 'airMixingPercent']);
  const paths = numericCells(demo).map(({ path }) => path);
  for (const key of ofTheatres) expect(paths).not.toContain(`theatreGroups.main.${key}`);
});

it.each(ofTheatres)('%s changes what stands beside the answer and nothing else', (key) => {
  const changed = figures({}, { [key]: 42 });
  expect(changed.beside).not.toBe(now.beside);
  expect(changed.answer).toBe(now.answer);
});

it('cells of the recovery room, of contracts and of medical air change what stands beside the answer and nothing else', () => {
  const given = { recoveryRoomVolumeM3: 200, recoveryAirChangesPerH: 6, recoveryHoursPerYear: 2000 };
  const before = figures(given);
  expect(before.answer).toBe(now.answer);
  expect(ofSite).toEqual([
    'electricityMarketKgCo2ePerKWh',
    'medicalAirKWhPerM3',
    ...Object.keys(given),
    'recoveryGivenOffPercent'
  ]);
  for (const key of ofSite) {
    const changed = figures({ ...given, [key]: 1.5 });
    expect(changed.beside, key).not.toBe(before.beside);
    expect(changed.answer, key).toBe(now.answer);
  }
});

it('every other number of the site and of its theatres changes the answer', () => {
  for (const site of [
    { theatreTemperatureC: 25 },
    { ambientPressureKPa: 80 },
    { electricityPricePerKWh: '0.9' },
    { electricityKgCo2ePerKWh: 0.9 },
    { departmentFootprintTonnes: 777 }
  ])
    expect(figures(site).answer, JSON.stringify(site)).not.toBe(now.answer);
  for (const theatres of [{ theatres: 9 }, { machineAgeYears: 7 }, { staffedHoursPerTheatre: 1 }])
    expect(figures({}, theatres).answer, JSON.stringify(theatres)).not.toBe(now.answer);
});

it('a file with a range on one of them still opens', () => {
  const roomVolumeM3 = { low: 100, high: 120 };
  expect(rangeFault(demo, 'theatreGroups.main.roomVolumeM3', roomVolumeM3)).toBeNull();
});
