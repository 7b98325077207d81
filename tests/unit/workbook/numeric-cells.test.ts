import { describe, expect, test } from 'vitest';
import { writeCell } from '#lib/calc/cell-path.ts';
import type { NumericCell } from '#lib/workbook/numeric-cells.ts';
import { assumedRange, numericCellAt, numericCells } from '#lib/workbook/numeric-cells.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';

const demo = demoWorkbook();
const cell = (path: string, value?: unknown): NumericCell => {
  const found = numericCellAt(value === undefined ? demo : writeCell(demo, path, value), path);
  if (found === null) throw new Error(`${path} holds no number.`);
  return found;
};

describe('the range of a cell that was given none', () => {
  test.each([
    ['a number', 'caseMix.lap-chole.minutes', 100, { low: 80, high: 120 }],
    ['an amount of money', 'agents.sevoflurane.bottlePrice', '50', { low: 40, high: 60 }],
    ['an amount below 0', 'scenarios.closed.yearlyExtraCost', '-100', { low: -120, high: -80 }],
    ['nothing', 'scenarios.closed.capturePercent', 0, { low: 0, high: 0 }]
  ])('is a fifth either way of %s', (_, path, value, range) => {
    const assumed = assumedRange(cell(path, value));
    expect(assumed.low).toBeCloseTo(range.low, 12);
    expect(assumed.high).toBeCloseTo(range.high, 12);
  });

  test('ends where the cell’s own limits do', () => {
    expect(assumedRange(cell('scenarios.closed.adoptionPercent', 90))).toEqual({ low: 72, high: 100 });
    expect(assumedRange(cell('caseMix.lap-chole.inspiredOxygenPercent', 25))).toEqual({ low: 21, high: 30 });
  });
});

describe('cells with a number in them', () => {
  const paths = numericCells({ ...demo, site: { ...demo.site, baseYear: 2025 } }).map(({ path }) => path);

  test('are those of every list, money among them, each once', () => {
    expect(paths).toEqual(
      expect.arrayContaining([
        'site.theatreTemperatureC',
        'agents.sevoflurane.bottlePrice',
        'caseMix.hip.minutes',
        'flowPlans.usual.phases.1.flowLPerMin',
        'machines.m-closed.unitPrice',
        'scenarios.closed.adoptionPercent',
        'theatreGroups.main.monitors.capnography'
      ])
    );
    expect(new Set(paths).size).toBe(paths.length);
  });

  test('are not those that are empty, or say how the tool is set', () => {
    for (const path of [
      'caseMix.hip.measuredMlPerCase',
      'site.facilityLevel',
      'site.lawfulSharePercent',
      'site.baseYear',
      'priceYear',
      'sampling.draws',
      'accounting.appraisalYears',
      'accounting.paybackLimitYears'
    ])
      expect(paths).not.toContain(path);
  });
});
