import type { CaseLogPlan, GroupedCases } from './group-cases.ts';
import { CaseLogError, groupCases } from './group-cases.ts';
import { csvRows, UnreadableLogError } from './csv-rows.ts';
import type { LogColumn, LogEncoding, LogPieces } from './open-case-log.ts';

export type ReadCaseLog =
  | { readonly kind: 'grouped'; readonly cases: GroupedCases }
  | { readonly kind: 'refused'; readonly sentence: string }
  | { readonly kind: 'cancelled' };

export interface CaseLogRun {
  readonly plan: CaseLogPlan;
  /** As `openCaseLog` found them; a column in use that may identify somebody is refused … */
  readonly columns: readonly LogColumn[];
  /** … unless the user has said of it (counted from 0) that it does not. */
  readonly allowed: readonly number[];
  readonly encoding?: LogEncoding;
}

/**
 * Groups a log as it streams by: of a million rows no more than one piece is in memory at a time. Never throws for what
 * is in the file.
 * @param progress is told the bytes read so far, after each piece
 */
export async function readCaseLog(
  pieces: LogPieces,
  { plan, columns, allowed, encoding = 'utf-8' }: CaseLogRun,
  {
    progress = () => undefined,
    signal
  }: { readonly progress?: (bytesRead: number) => void; readonly signal?: AbortSignal } = {}
): Promise<ReadCaseLog> {
  const refusal = refusalOf(plan, columns, allowed);
  if (refusal !== null) return { kind: 'refused', sentence: refusal };
  const grouper = groupCases(plan);
  const take = (row: readonly string[], line: number) => {
    // A delimiter or a line end that was not meant as one would move the cells to other headings.
    if (row.length > columns.length && row.slice(columns.length).some((cell) => cell.trim() !== ''))
      grouper.leaveOut('The line has more cells than there are headings.', line);
    else grouper.add(row, line);
  };
  try {
    let isFirst = true;
    for await (const { rows, lines, bytesRead } of csvRows(pieces(), encoding)) {
      for (let index = isFirst ? 1 : 0; index < rows.length; index++)
        take(rows[index] as readonly string[], lines[index] as number);
      if (rows.length > 0) isFirst = false;
      progress(bytesRead);
      if (signal?.aborted === true) return { kind: 'cancelled' };
    }
    return { kind: 'grouped', cases: grouper.finish() };
  } catch (error) {
    if (error instanceof CaseLogError || error instanceof UnreadableLogError)
      return { kind: 'refused', sentence: error.message };
    throw error;
  }
}

function refusalOf(
  plan: CaseLogPlan,
  columns: readonly LogColumn[],
  allowed: readonly number[]
): string | null {
  if (plan.groupBy.length === 0)
    return 'Choose the column that names a group of alike cases, such as the procedure or the specialty.';
  const { minutes, start, end } = plan.columns;
  if (minutes === undefined && (start === undefined || end === undefined))
    return 'Choose the column with the minutes, or those with start and end: without them nothing can be computed.';
  if (plan.columns.agent === undefined && plan.columns.technique === undefined)
    return 'Choose the column with the agent or the one with the technique.';
  if (plan.columns.date === undefined && start === undefined && plan.daysCovered === null)
    return 'Choose the column with the date, or say how many days the log covers.';
  const used = [...plan.groupBy, ...Object.values(plan.columns)];
  const identifying = used.find(
    (column) => columns[column]?.identifyingBecause != null && !allowed.includes(column)
  );
  return identifying === undefined
    ? null
    : `${columns[identifying]?.identifyingBecause} It is not read unless you say that it identifies nobody.`;
}
