/** A worker that solves cases, so that the page stays free for the user. */
import type { CaseGiven } from '#lib/calc/case/conditions.ts';
import { packCases } from '#lib/calc/known-cases/packed-cases.ts';
import type { PackedCases } from '#lib/calc/known-cases/packed-cases.ts';
import { solveCases } from '#lib/calc/reckoning/cases-ahead.ts';
import type { ReferenceSet } from '#lib/calc/reference/reference-set.ts';
import { referenceOf } from '#lib/workbook/core-input.ts';
import type { OfReference } from '#lib/workbook/core-input.ts';
import type { Port } from './worker-port.ts';
import { serve } from './worker-port.ts';

/** First the constants that what follows rests on, then cases. */
export type CasesTask =
  { readonly reference: OfReference } | { readonly cases: readonly Omit<CaseGiven, 'reference'>[] };

export type CasesPort = Port<CasesTask, PackedCases>;

let reference: ReferenceSet | null = null;

serve<CasesTask, PackedCases>((task, reply) => {
  if ('reference' in task) reference = referenceOf(task.reference);
  else if (reference !== null) {
    const set = reference;
    const packed = packCases(solveCases(task.cases.map((given) => ({ ...given, reference: set }))));
    reply(packed, [packed.numbers.buffer]);
  }
});
