/** What must hold when one cell of a workbook changes, whichever it is. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { changedCells } from '../fixtures/one-changed-cell.ts';
import { randomWorkbook } from '../fixtures/random-workbook.ts';

const textOf = (workbook: Workbook, memo?: CaseMemo): string =>
  JSON.stringify(estimate(coreInput(workbook), memo));

test('results of cases kept from before the change alter no bit of the estimate after it', () => {
  const seen = { edits: 0, withEffect: 0 };
  fc.assert(
    fc.property(
      randomWorkbook({ rows: 3 }).chain((workbook) =>
        fc.record({ workbook: fc.constant(workbook), changes: changedCells(workbook, { count: 12 }) })
      ),
      ({ workbook, changes }) => {
        const memo = new CaseMemo();
        const before = textOf(workbook, memo);
        for (const { path, value, workbook: changed } of changes) {
          const fresh = textOf(changed);
          if (textOf(changed, memo) !== fresh)
            expect.fail(
              `${path} set to ${String(value)}: the estimate is another with results kept from before.`
            );
          seen.edits += 1;
          if (fresh !== before) seen.withEffect += 1;
        }
      }
    ),
    // A workbook takes minutes to shrink, and the message names the cell.
    { numRuns: 30, endOnFailure: true }
  );
  // An edit that acts on nothing, as of a machine that no scenario uses, proves nothing: enough do act.
  expect(seen.edits).toBeGreaterThan(200);
  expect(seen.withEffect).toBeGreaterThan(seen.edits / 4);
});
