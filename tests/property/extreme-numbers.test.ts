/** Numbers at the ends of what their cells take: every figure is a number, and what lies beyond is refused. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { writeCell } from '#lib/calc/cell-path.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { editCells } from '#lib/workbook/edit-cells.ts';
import { leastNumber } from '#lib/workbook/field.ts';
import { withRange } from '#lib/workbook/edit-ranges.ts';
import { assumedRange, numericCellAt, numericCells } from '#lib/workbook/numeric-cells.ts';
import type { NumericCell } from '#lib/workbook/numeric-cells.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';

const demo = { ...demoWorkbook(), ranges: {} };
const cells = numericCells(demo);

/** The ends of a cell's limits, and the least number on either side of 0. */
function extremes({ field }: NumericCell): readonly (number | string)[] {
  if (field.kind === 'money')
    return ['0', '0.0000000001', '999999999999999', ...(field.signed ? ['-999999999999999'] : [])];
  const { min, max, aboveMin, belowMax, whole } = field;
  const step = whole ? 1 : leastNumber;
  return [aboveMin ? min + step : min, belowMax ? max - step : max, -step, step].filter(
    (value) => (aboveMin ? value > min : value >= min) && (belowMax ? value < max : value <= max)
  );
}

function faultsIn(value: unknown, path: string): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path}: ${value}`];
  if (typeof value === 'string') return /^(NaN|-?Infinity)$/.test(value) ? [`${path}: ${value}`] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => faultsIn(inner, `${path}.${key}`));
}

test('no figure is other than a number, whichever cells are at the ends of their limits', () => {
  let computed = 0;
  const change = fc
    .constantFrom(...cells)
    .chain((cell) => fc.constantFrom(...extremes(cell)).map((value) => ({ path: cell.path, value })));
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 12 }), (changes) => {
      const workbook = changes.reduce((done, { path, value }) => writeCell(done, path, value), demo);
      // Cells that do not fit together, such as 100 % oxygen with nitrous oxide, are refused: nothing is computed.
      const parsed = parseWorkbook(workbook);
      if (parsed.kind !== 'workbook') return;
      computed++;
      expect(faultsIn(estimate(coreInput(parsed.workbook)), 'estimate')).toEqual([]);
    }),
    { numRuns: 120 }
  );
  expect(computed).toBeGreaterThan(40);
});

describe('a number nearer to 0 than a millionth', () => {
  test.each([5e-324, -5e-324, 1e-300, 9.9e-7])('%s is refused in a workbook’s file, in any cell', (value) => {
    const numbers = cells.filter((cell) => cell.field.kind === 'number');
    const parsed = parseWorkbook(numbers.reduce((done, { path }) => writeCell(done, path, value), demo));
    const said = new Map(
      parsed.kind === 'refused' ? parsed.issues.map(({ path, sentence }) => [path, sentence]) : []
    );
    expect([...said.keys()].sort()).toEqual(numbers.map(({ path }) => path).sort());
    for (const sentence of said.values())
      expect(sentence).toContain('A number other than 0 has to be at least 0.000001 away from it.');
  });

  test('is refused where it is typed, and 0 and a millionth are taken', () => {
    const typed = (text: string) => editCells(demo, [{ path: 'machines.m-old.leakMlPerMin', text }], 'de-DE');
    expect(typed('1E-20').refused[0]?.sentence).toContain('at least 0,000001 away');
    expect(typed('0').refused).toEqual([]);
    expect(typed('0,000001').refused).toEqual([]);
  });

  test('is refused as the end of an amount’s range, and none is assumed that a file could not hold', () => {
    const path = 'agents.sevoflurane.bottlePrice';
    const given = withRange(demo, path, { low: 1e-300, high: 200 }, 'en-GB');
    expect('sentence' in given && given.sentence).toContain('at least 0.000001 away');
    for (const [cell, value] of [
      ['machines.m-old.leakMlPerMin', 1.1e-6],
      [path, '0.0000011']
    ] as const) {
      const small = writeCell(demo, cell, value);
      const assumed = assumedRange(numericCellAt(small, cell) as NumericCell);
      const ranged = withRange(small, cell, assumed, 'en-GB');
      if ('sentence' in ranged) throw new Error(ranged.sentence);
      expect(parseWorkbook(ranged.workbook).kind).toBe('workbook');
    }
  });

  test('is refused as the end of a range', () => {
    const path = 'machines.m-old.leakMlPerMin';
    const parsed = parseWorkbook({ ...demo, ranges: { [path]: { low: 1e-300, high: 200 } } });
    expect(parsed.kind === 'refused' && parsed.issues[0]?.path).toBe(`ranges.${path}.low`);
  });
});
