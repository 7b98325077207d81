/** A worker that solves cases, so that the page stays free for the user. */
import { solveCases } from '#lib/calc/reckoning/cases-ahead.ts';
import type { CasePlace } from '#lib/calc/reckoning/cases-ahead.ts';
import type { EstimateInput } from '#lib/calc/input.ts';
import type { PackedCases } from '#lib/calc/known-cases/packed-cases.ts';
import { packCases } from '#lib/calc/known-cases/packed-cases.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** First the workbook that what follows is about, then cases in it. */
export type CasesTask = { readonly workbook: Workbook } | { readonly places: readonly CasePlace[] };

/** What is used of a worker, from its outside. */
export type CasesWorker = Pick<Worker, 'postMessage' | 'onmessage' | 'onerror' | 'terminate'>;

let input: EstimateInput | null = null;

globalThis.onmessage = ({ data }: MessageEvent<CasesTask>) => {
  if ('workbook' in data) input = coreInput(data.workbook);
  else if (input !== null) {
    const packed = packCases(solveCases(input, data.places));
    globalThis.postMessage(packed satisfies PackedCases, { transfer: [packed.numbers.buffer] });
  }
};
