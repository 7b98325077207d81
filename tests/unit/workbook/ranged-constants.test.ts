/** Ranges of published figures in a workbook: which may stand, what they are called, and how they go along. */
import { describe, expect, test } from 'vitest';
import { importColumns, previewImport } from '#lib/files/import/preview-import.ts';
import { readCsv } from '#lib/files/read/csv-in.ts';
import { writeTableCsv } from '#lib/files/write/csv-out.ts';
import { constantPath } from '#lib/calc/reference/ranged-constant.ts';
import { withOverride, withoutOverrides } from '#lib/sheets/parts/own-figures.ts';
import { cellName } from '#lib/workbook/cell-name.ts';
import { withRange } from '#lib/workbook/edit-ranges.ts';
import { mapColumns } from '#lib/workbook/match-headings.ts';
import { moveToReferenceSet } from '#lib/workbook/move-reference-set.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import { findReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { departmentWorkbook } from '../../fixtures/department.ts';

const warming = constantPath('warming.AR6.100.sevoflurane');
const department: Workbook = { ...departmentWorkbook(), referenceSet: '2026-2', ranges: {} };
const ranged = (path: string, low: number, high: number, of: Workbook = department): Workbook => {
  const changed = withRange(of, path, { low, high }, 'en-GB');
  if ('sentence' in changed) throw new Error(changed.sentence);
  return changed.workbook;
};
const refusal = (path: string, low: number, high: number): string => {
  const changed = withRange(department, path, { low, high }, 'en-GB');
  return 'sentence' in changed ? changed.sentence : '';
};

test('a range of a published figure stands in a file and comes back', () => {
  const workbook = ranged(warming, 120, 270);
  const parsed = parseWorkbook(JSON.parse(JSON.stringify(workbook)));
  expect(parsed).toMatchObject({
    kind: 'workbook',
    workbook: { ranges: { [warming]: { low: 120, high: 270 } } }
  });
});

test('it goes out as CSV and comes in again', () => {
  const workbook = ranged(warming, 120, 270);
  const read = readCsv(writeTableCsv('ranges', workbook, 'en-GB'));
  if (read.kind !== 'table') throw new Error(read.kind);
  const { workbook: back, refusedRows } = previewImport(department, {
    table: 'ranges',
    file: read.table,
    mapping: mapColumns(read.table.headers, importColumns('ranges', department)),
    mode: 'replace',
    locale: 'en-GB'
  });
  expect(refusedRows).toEqual([]);
  expect(back.ranges).toEqual(workbook.ranges);
});

describe('it is refused', () => {
  test.each([
    ['where it leaves out the figure in force', warming, 200, 300, /has to hold .* own value, 195/],
    ['beyond what is plausible', warming, 100, 20000, /10,?000/],
    [
      'for no figure of the set',
      constantPath('warming.AR9.sevoflurane'),
      1,
      2,
      /is no published figure of reference set 2026-2/
    ],
    ['for a figure that is computed from others', constantPath('oxygen.co2e'), 0.1, 0.2, /computed from/],
    [
      'for a figure that acts nowhere',
      constantPath('blood-gas-of-patients.sevoflurane'),
      0.7,
      0.8,
      /acts in no figure/
    ]
  ])('%s', (_, path, low, high, sentence) => {
    expect(refusal(path, low, high)).toMatch(sentence);
  });
});

test('it is called after the figure', () => {
  expect(cellName(department, warming)).toBe(
    'Evidence: Warming potential of sevoflurane over 100 years, set AR6'
  );
});

describe('it goes along', () => {
  const own = { constant: 'warming.AR6.100.sevoflurane', value: 400, unit: 'kg CO2e/kg', reason: 'Ours.' };

  test('with a figure of one’s own, and back with the published one', () => {
    const workbook = withOverride(ranged(warming, 120, 270), own);
    expect(workbook.ranges[warming]).toEqual({ low: 325, high: 475 });
    expect(withoutOverrides(workbook, [own.constant]).ranges[warming]).toEqual({ low: 120, high: 270 });
  });

  test('with the figure of another set, and stays behind where the other set lacks it', () => {
    const set = findReferenceSet('2026-1')!;
    const oxygen = constantPath('body.oxygen-consumption.coefficient');
    const workbook = ranged(oxygen, 7, 9.1, ranged(constantPath('insufflation.plateau'), 18, 22));
    const moved = moveToReferenceSet(workbook, set).workbook;
    expect(moved.ranges).toEqual({ [oxygen]: { low: 9.5, high: 11.6 } });
    expect(parseWorkbook(JSON.parse(JSON.stringify(moved))).kind).toBe('workbook');
  });

  test('untouched where the figure lies within it', () => {
    const workbook = ranged(warming, 120, 270);
    expect(withOverride(workbook, { ...own, value: 200 }).ranges).toBe(workbook.ranges);
  });
});

test('a file of a set that is not known here keeps its ranges', () => {
  const workbook = { ...ranged(warming, 120, 270), referenceSet: '2031-4' };
  expect(parseWorkbook(JSON.parse(JSON.stringify(workbook))).kind).toBe('unknown-reference');
});
