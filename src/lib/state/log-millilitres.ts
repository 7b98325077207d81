/** What a case log's millilitres say of today's practice: the measured use of each group, against the model's. */
import type { EstimateInput } from '#lib/calc/input.ts';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { ownPractice } from '#lib/calc/reckoning/own-practice.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { recorder, workingOf } from '#lib/calc/working/recorder.ts';
import type { Working } from '#lib/calc/working/working.ts';
import type { CaseGroup } from '#lib/files/case-log/group-cases.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { sourceNoteOf, withSourceNote } from '#lib/workbook/source-notes.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { RowOfLog } from './rows-of-log.ts';

/** The workbook with the measured use of the log's rows as it stood before, where it stood there, with its note. */
export function withoutLogMillilitres(
  workbook: Workbook,
  before: Workbook,
  rows: readonly RowOfLog[]
): Workbook {
  const ofLog = new Set(rows.map(({ rowId }) => rowId));
  const earlier = new Map(before.caseMix.map((row) => [row.id, row.measuredMlPerCase]));
  const changed: Workbook = {
    ...workbook,
    caseMix: workbook.caseMix.map((row) =>
      ofLog.has(row.id) ? { ...row, measuredMlPerCase: earlier.get(row.id) ?? null } : row
    )
  };
  return [...ofLog].reduce((to, rowId) => {
    const path = `caseMix.${rowId}.measuredMlPerCase`;
    return withSourceNote(to, path, sourceNoteOf(before, path));
  }, changed);
}

/** A group's measured use against the model's, on its plan of today. */
export interface MeasuredOfLog {
  readonly rowId: string;
  readonly group: CaseGroup;
  readonly measuredMl: number;
  readonly modelMl: number;
  /** Spill of this practice against the model's, k; null where the reference set has no such factor. */
  readonly factor: number | null;
  readonly warnings: readonly string[];
  readonly working: (figure: 'modelMl' | 'factor') => Working;
}

/** What the measured use in the rows of the log says, of a workbook that has it. */
export function measuredOfLog(
  workbook: Workbook,
  rows: readonly RowOfLog[],
  memo = new CaseMemo()
): readonly MeasuredOfLog[] {
  const input = coreInput(workbook);
  return rows.flatMap(({ rowId, group }): MeasuredOfLog[] => {
    const measuredMl = input.caseMix.find(({ id }) => id === rowId)?.measuredMlPerCase ?? null;
    if (measuredMl === null || group.liquidMl === null) return [];
    const one = { rowId, measuredMl };
    const practice = ownPractice(plain, input, one, memo);
    if (practice === null) return [];
    return [
      {
        ...one,
        group,
        modelMl: plain.value(practice.modelMl),
        factor: practice.factor === null ? null : plain.value(practice.factor),
        warnings: practice.warnings,
        working: (figure) => workingOf(recordedPractice(input, one)[figure])
      }
    ];
  });
}

function recordedPractice(
  input: EstimateInput,
  one: { readonly rowId: string; readonly measuredMl: number }
) {
  const { modelMl, factor } = ownPractice(recorder, input, one) ?? {};
  if (modelMl === undefined || factor === undefined || factor === null)
    throw new Error(`Nothing was measured of “${one.rowId}”.`);
  return { modelMl, factor };
}
