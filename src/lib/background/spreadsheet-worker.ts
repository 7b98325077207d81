/** Writes a workbook as a spreadsheet off the page's thread: of a large one that takes some seconds. */
import { cautionsOf } from '#lib/calc/estimate/low-flow-cautions.ts';
import { warningsOfCells } from '#lib/calc/estimate/warnings-of-cells.ts';
import { reckon } from '#lib/calc/reckoning/reckoning.ts';
import { citation } from '#lib/calc/working/citation.ts';
import { recorder, workingOf } from '#lib/calc/working/recorder.ts';
import { workOn } from './run-in-worker.ts';
import { workbookSheets } from '#lib/files/xlsx/xlsx-out.ts';
import { writeSheets } from '#lib/files/xlsx/write-sheets.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

workOn<Workbook, Uint8Array>(async (workbook, tell) => {
  const input = coreInput(workbook);
  const reckoning = reckon(recorder, input);
  // Parts of the time as they were measured: the cases a third, the formulas a quarter, the bytes the rest.
  workbook.scenarios.forEach((scenario, index, { length }) => {
    tell({ share: (0.35 * index) / length, words: `Computing the cases of “${scenario.name}”` });
    reckoning.cases(scenario);
  });
  tell({ share: 0.35, words: 'Laying out the formulas' });
  const sheets = workbookSheets({
    workbook,
    reckoning,
    cautions: cautionsOf(input, reckoning),
    warnings: warningsOfCells(input),
    workingOf,
    citation
  });
  tell({ share: 0.6, words: 'Writing the file' });
  return writeSheets(sheets, { title: workbook.title, invented: workbook.invented });
});
