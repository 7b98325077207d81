/** How figures of a finished uncertainty run came about. */
import { explainer } from '#lib/calc/estimate/explain.ts';
import type { ExplainedRun } from '#lib/calc/what-if/explain-draws.ts';
import { explainDrawn } from '#lib/calc/what-if/explain-draws.ts';
import type { Working } from '#lib/calc/working/working.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { wholeCells } from '#lib/workbook/numeric-cells.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { RunResult } from './draws.svelte.ts';

/** What a working calls the cells and the options of the workbook that was drawn. */
export interface NamesOfRun {
  readonly unitOf: (workbook: Workbook, cell: string) => string;
  readonly nameOf: (workbook: Workbook, cells: readonly string[]) => string;
  readonly optionName: (workbook: Workbook, id: string) => string;
}

/** Explains the figures of a run by name, as `explainDrawn` takes them; the last run is kept until there is another. */
export function runExplainer(names: NamesOfRun): (result: RunResult, figure: string) => Working {
  let last: { readonly of: RunResult; readonly run: ExplainedRun } | null = null;
  return (result, figure) => {
    if (last?.of !== result) {
      const { summary, workbook } = result;
      const input = coreInput(workbook);
      const run: ExplainedRun = {
        input,
        summary,
        explain: explainer(input),
        wholeCells: wholeCells(workbook),
        unitOf: (cell) => names.unitOf(workbook, cell),
        nameOf: (cells) => names.nameOf(workbook, cells),
        optionName: (id) => names.optionName(workbook, id)
      };
      last = { of: result, run };
    }
    return explainDrawn(last.run, figure);
  };
}
