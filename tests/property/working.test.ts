import fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomWorkbook } from '../fixtures/random-workbook.ts';
import { notReplayed, notTheEstimates, recordAll } from '../unit/calc/working/recorded.ts';

test('in 50 random workbooks every figure has a working that replays bit for bit and ends in what is shown', () => {
  let figures = 0;
  fc.assert(
    fc.property(randomWorkbook({ rows: 4 }), (workbook) => {
      const recorded = recordAll(workbook);
      figures += recorded.figures.length;
      expect(notReplayed(recorded.steps)).toEqual([]);
      expect(notTheEstimates(recorded)).toEqual([]);
    }),
    { numRuns: 50 }
  );
  expect(figures).toBeGreaterThan(5000);
}, 240_000);
