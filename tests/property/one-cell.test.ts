/** What must hold when one cell of a workbook changes, whichever it is. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leversOf, variantOf } from '#lib/calc/attribution/levers.ts';
import type { CaseResult } from '#lib/calc/case/case-result.ts';
import type { CaseGiven, CaseSources } from '#lib/calc/case/conditions.ts';
import { givenOf } from '#lib/calc/case/conditions.ts';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { EstimateInput, Lever } from '#lib/calc/input.ts';
import { reckon } from '#lib/calc/reckoning/reckoning.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { changedCells } from '../fixtures/one-changed-cell.ts';
import { randomWorkbook } from '../fixtures/random-workbook.ts';

const textOf = (input: EstimateInput, memo?: CaseMemo): string => JSON.stringify(estimate(input, memo));

/** A memo that computes each case anew when it is asked for it, and notes those that were kept with other figures. */
class CheckedMemo extends CaseMemo {
  readonly stale: string[] = [];
  override result(sources: CaseSources, compute: (given: CaseGiven) => CaseResult): CaseResult {
    const kept = super.result(sources, compute);
    const { row, plan, machine, agent } = sources;
    if (JSON.stringify(kept) !== JSON.stringify(compute(givenOf(sources))))
      this.stale.push([row.id, plan.id, machine.id, agent].join(' '));
    return kept;
  }
}

const setsOf = (levers: readonly Lever[]): readonly (readonly Lever[])[] =>
  levers.reduce<readonly (readonly Lever[])[]>(
    (sets, lever) => [...sets, ...sets.map((set) => [...set, lever])],
    [[]]
  );

/** What the cases of all scenarios come to, as text, and every case asked for that attribution asks for besides. */
function casesOf(input: EstimateInput, memo: CaseMemo): string {
  const reckoning = reckon(plain, input, memo);
  for (const scenario of input.scenarios)
    for (const on of setsOf(leversOf(input, scenario)))
      reckoning.failed(variantOf(input, scenario, on).scenario);
  return JSON.stringify(
    estimate(input, memo).scenarios.map(({ perYear, cases, againstBaseline, failed }) => [
      perYear,
      cases,
      againstBaseline,
      failed
    ])
  );
}

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
