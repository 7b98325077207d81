/** A worker that solves cases, so that the page stays free for the user. */
import type { CaseGiven } from '#lib/calc/case/conditions.ts';
import { packCases } from '#lib/calc/known-cases/packed-cases.ts';
import type { PackedCases } from '#lib/calc/known-cases/packed-cases.ts';
import { solveCases } from '#lib/calc/reckoning/cases-ahead.ts';
import type { ReferenceSet } from '#lib/calc/reference/reference-set.ts';
import { referenceOf } from '#lib/workbook/core-input.ts';
import type { OfReference } from '#lib/workbook/core-input.ts';

/** First the constants that what follows rests on, then cases. */
export type CasesTask =
  { readonly reference: OfReference } | { readonly cases: readonly Omit<CaseGiven, 'reference'>[] };

/** What is used of a worker, from its outside. */
export type CasesWorker = Pick<Worker, 'postMessage' | 'onmessage' | 'onerror' | 'terminate'>;

let reference: ReferenceSet | null = null;

globalThis.onmessage = ({ data }: MessageEvent<CasesTask>) => {
  if ('reference' in data) reference = referenceOf(data.reference);
  else if (reference !== null) {
    const set = reference;
    const packed = packCases(solveCases(data.cases.map((given) => ({ ...given, reference: set }))));
    globalThis.postMessage(packed satisfies PackedCases, { transfer: [packed.numbers.buffer] });
  }
};
