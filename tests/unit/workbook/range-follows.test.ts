import { describe, expect, test } from 'vitest';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { editCells } from '#lib/workbook/edit-cells.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import { rangeFollowedInWords } from '#lib/workbook/range-follows.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

const demo = demoWorkbook();
const path = 'caseMix.lap-chole.minutes';
const withRange = (low: number, high: number): Workbook => ({ ...demo, ranges: { [path]: { low, high } } });
const put = (text: string, workbook: Workbook) => editCells(workbook, [{ path, text }], 'en-GB');

describe('the range of a cell that gets another value', () => {
  test('stays where it holds the value', () => {
    const { workbook, followed } = put('80', withRange(60, 95));
    expect([workbook.ranges[path], followed]).toEqual([{ low: 60, high: 95 }, []]);
  });

  test('moves by as much as the value did, never refuses it, and that is said', () => {
    const { workbook, followed, refused } = put('200', withRange(60, 95));
    expect(refused).toEqual([]);
    expect(workbook.caseMix.find(({ id }) => id === 'lap-chole')?.minutes).toBe(200);
    expect(workbook.ranges[path]).toEqual({ low: 185, high: 220 });
    expect(followed.map((each) => rangeFollowedInWords(workbook, each, 'en-GB'))).toEqual([
      'The range of Case mix, Laparoscopic cholecystectomy: Minutes moved with the value: it is 185 to 220 now.'
    ]);
    expect(parseWorkbook(workbook).kind).toBe('workbook');
  });

  test('moves no further than the field allows, and still holds the value', () => {
    expect(put('1439', withRange(60, 95)).workbook.ranges[path]).toEqual({ low: 1424, high: 1440 });
    const low = put('2', withRange(60, 95)).workbook;
    expect(low.ranges[path]?.low).toBeCloseTo(0.1, 3);
    expect(low.ranges[path]?.high).toBe(22);
    expect(parseWorkbook(low).kind).toBe('workbook');
  });

  test('goes with the value of a cell that is emptied', () => {
    const measured = 'caseMix.lap-chole.measuredMlPerCase';
    const given: Workbook = {
      ...demo,
      caseMix: demo.caseMix.map((row) => (row.id === 'lap-chole' ? { ...row, measuredMlPerCase: 20 } : row)),
      ranges: { [measured]: { low: 15, high: 25 } }
    };
    const { workbook, refused } = editCells(given, [{ path: measured, text: '' }], 'en-GB');
    expect([refused, workbook.ranges]).toEqual([[], {}]);
  });
});
