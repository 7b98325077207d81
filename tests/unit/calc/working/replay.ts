import { describe, expect, test } from 'vitest';
import { explain } from '#lib/calc/estimate/explain.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import { everyBranch } from '../../../fixtures/every-branch.ts';
import { recordings } from './formulas-in-use.ts';
import { bits, notReplayed, notTheEstimates, recordAll } from './recorded.ts';

const demo = demoWorkbook();
const ofTheDemo = recordAll(demo);
const recorded = [
  ['the demo', demo, ofTheDemo] as const,
  ...everyBranch.map((workbook, index) => {
    const { warmingSet, warmingHorizonYears } = workbook.accounting;
    return [`${warmingSet} over ${warmingHorizonYears} years`, workbook, recordings[index]!] as const;
  })
];

describe.each(recorded)('every figure of %s', (_, workbook, recorded) => {
  test('is of a workbook that parses', () => {
    expect(parseWorkbook(JSON.parse(JSON.stringify(workbook))).kind).toBe('workbook');
    expect(recorded.estimate.scenarios.flatMap(({ failed }) => failed)).toEqual([]);
  });

  test('has a working whose every step, recomputed from its recorded inputs, gives the recorded bits', () => {
    expect(recorded.figures.length).toBeGreaterThan(1000);
    expect(recorded.steps.length).toBeGreaterThan(3000);
    expect(notReplayed(recorded.steps)).toEqual([]);
  });

  test('is the value at the root of its working', () => {
    expect(notTheEstimates(recorded)).toEqual([]);
  });
});

test('one figure asked alone has the working that it has among all', () => {
  const input = coreInput(demo);
  for (const { path, working } of ofTheDemo.figures.filter((_, index) => index % 97 === 0)) {
    const alone = explain(input, path);
    expect(bits(alone.value)).toBe(bits(working.value));
    expect(alone.kind).toBe(working.kind);
  }
});
