import { describe, expect, test } from 'vitest';
import { explain } from '#lib/calc/estimate/explain.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import { everyBranchRecorded, lookThrough } from './formulas-in-use.ts';
import { bits, recordAll } from './recorded.ts';

const demo = demoWorkbook();

describe.each([
  ['the demo', lookThrough(demo)] as const,
  ...everyBranchRecorded.map((recorded) => {
    const { warmingSet, warmingHorizonYears } = recorded.workbook.accounting;
    return [`${warmingSet} over ${warmingHorizonYears} years`, recorded] as const;
  })
])('every figure of %s', (_, recorded) => {
  test('is of a workbook that parses', () => {
    expect(parseWorkbook(JSON.parse(JSON.stringify(recorded.workbook))).kind).toBe('workbook');
    expect(recorded.failed).toEqual([]);
  });

  test('has a working whose every step, recomputed from its recorded inputs, gives the recorded bits', () => {
    expect(recorded.figures).toBeGreaterThan(1000);
    expect(recorded.steps).toBeGreaterThan(3000);
    expect(recorded.notReplayed).toEqual([]);
  });

  test('is the value at the root of its working', () => {
    expect(recorded.notTheEstimates).toEqual([]);
  });
});

test('one figure asked alone has the working that it has among all', () => {
  const input = coreInput(demo);
  const { figures } = recordAll(demo);
  for (const { path, working } of figures.filter((_, index) => index % 97 === 0)) {
    const alone = explain(input, path);
    expect(bits(alone.value)).toBe(bits(working.value));
    expect(alone.kind).toBe(working.kind);
  }
});
