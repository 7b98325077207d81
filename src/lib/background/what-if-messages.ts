/** What crosses between the page and the workers that draw and solve: plain data, no functions, no Decimals. */
import type { TurningInput } from '#lib/calc/money/turning-inputs.ts';
import type { RunSlice } from '#lib/calc/uncertainty/run.ts';
import type { ComparedWith } from '#lib/calc/what-if/changed-cell.ts';
import type { RunSummary } from '#lib/calc/what-if/draws.ts';
import type { Answer, Unasked } from '#lib/calc/what-if/questions.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { Port } from './worker-port.ts';

export type Ask =
  /** Set up an uncertainty run; what follows is about it. */
  | { readonly kind: 'set-up'; readonly workbook: Workbook }
  | { readonly kind: 'slice'; readonly from: number; readonly to: number }
  | { readonly kind: 'sum-up'; readonly slices: readonly RunSlice[] }
  /** Answer every break-even question of a scenario, then look for the cells that turn the answer. */
  | {
      readonly kind: 'questions';
      readonly workbook: Workbook;
      readonly scenarioId: string;
      /** Asked of the scenario as a whole, where not given, or of the step from its twin. */
      readonly comparedWith?: ComparedWith;
      readonly discounted: boolean;
    };

export type Reply =
  | { readonly kind: 'slice'; readonly slice: RunSlice }
  | { readonly kind: 'summary'; readonly summary: RunSummary }
  | { readonly kind: 'answer'; readonly answer: Answer | Unasked }
  | { readonly kind: 'looked-at'; readonly done: number; readonly of: number }
  | { readonly kind: 'turning'; readonly cells: readonly TurningInput[] };

export type WhatIfPort = Port<Ask, Reply>;
