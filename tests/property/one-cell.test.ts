/** What must hold when one cell of a workbook changes, whichever it is. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { EstimateInput } from '#lib/calc/input.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { CheckedMemo, casesOf } from '../fixtures/checked-memo.ts';
import { changedCells } from '../fixtures/one-changed-cell.ts';
import { randomWorkbook } from '../fixtures/random-workbook.ts';

const textOf = (input: EstimateInput, memo?: CaseMemo): string => JSON.stringify(estimate(input, memo));

test('results of cases kept from before the change alter no bit of the estimate after it', () => {
  const seen = { edits: 0, withEffect: 0 };
  fc.assert(
    fc.property(
      randomWorkbook({ rows: 3 }).chain((workbook) =>
        fc.record({ workbook: fc.constant(workbook), changes: changedCells(workbook, { count: 12 }) })
      ),
      ({ workbook, changes }) => {
        // Every figure of an estimate is made from the results of its cases, so that those are held after each edit …
        const memo = new CheckedMemo();
        const before = casesOf(coreInput(workbook), memo);
        for (const { path, value, workbook: changed } of changes) {
          const after = casesOf(coreInput(changed), memo);
          if (memo.stale.length > 0)
            expect.fail(`${path} set to ${String(value)}: kept from before are ${memo.stale.join(', ')}.`);
          seen.edits += 1;
          if (after !== before) seen.withEffect += 1;
        }
        // … and the whole estimate after the last.
        const last = changes.at(-1);
        if (last !== undefined && textOf(coreInput(last.workbook), memo) !== textOf(coreInput(last.workbook)))
          expect.fail(
            `${last.path} set to ${String(last.value)}: the estimate is another with results kept from before.`
          );
      }
    ),
    // A workbook takes minutes to shrink, and the message names the cell.
    { numRuns: 30, endOnFailure: true }
  );
  // An edit that acts on nothing, as of a machine that no scenario uses, proves nothing: enough do act.
  expect(seen.edits).toBeGreaterThan(200);
  expect(seen.withEffect).toBeGreaterThan(seen.edits / 4);
});
