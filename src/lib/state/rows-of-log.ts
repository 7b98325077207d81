import type { CaseGroup } from '#lib/files/case-log/group-cases.ts';
import type { ImportPreview } from '#lib/files/import/import-request.ts';

/** A group of the log and the row that its figures go to. */
export interface RowOfLog {
  readonly rowId: string;
  readonly group: CaseGroup;
}

/** The rows to which an import brings the groups; groups that are not taken are left out. */
export const rowsOfLog = (
  groups: readonly CaseGroup[],
  { keyOfLine }: Pick<ImportPreview, 'keyOfLine'>
): readonly RowOfLog[] =>
  groups.flatMap((group, index) => {
    const rowId = keyOfLine?.get(index + 1);
    return rowId === undefined ? [] : [{ rowId, group }];
  });
