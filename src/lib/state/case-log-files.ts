/** A log of single anaesthetics from a file, grouped in a worker: loaded when first used. */
import type { CaseLogPlan, GroupedCases } from '#lib/files/case-log/group-cases.ts';
import type { LogEncoding, OpenCaseLog, OpenedCaseLog } from '#lib/files/case-log/open-case-log.ts';
import type { ReadCaseLog } from '#lib/files/case-log/read-case-log.ts';
import type { ReadTable } from '#lib/files/read/read-table.ts';
import type { AskedOfLog, LogAgainstToday, LogParts, StepsOfLog } from './log-against-today.ts';
import type { Watch } from '#lib/background/run-in-worker.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** Looks at a log's first rows: its columns, which may identify somebody, and a plan to start from. */
export async function openLog(
  file: File,
  given: { locale: string; encoding?: LogEncoding }
): Promise<OpenCaseLog> {
  const [{ openCaseLog }, { filePieces }] = await Promise.all([
    import('#lib/files/case-log/open-case-log.ts'),
    import('#lib/files/case-log/file-pieces.ts')
  ]);
  return openCaseLog(filePieces(file), given);
}

/** Groups a log by a plan, in a worker, with progress (0 to 1) and a way to cancel. */
export async function groupLog(
  file: File,
  run: {
    plan: CaseLogPlan;
    columns: OpenedCaseLog['columns'];
    allowed: readonly number[];
    encoding?: LogEncoding;
  },
  watch: Watch
): Promise<ReadCaseLog> {
  const { groupInWorker } = await import('#lib/background/group-in-worker.ts');
  return groupInWorker(file, run, watch);
}

/** The groups as a table that the case mix takes in. */
export async function tableOfGroups(
  cases: GroupedCases,
  workbook: Workbook,
  locale: string
): Promise<ReadTable> {
  const { caseMixTable } = await import('#lib/files/case-log/case-mix-table.ts');
  return caseMixTable(cases, workbook, locale);
}

export type { LogAgainstToday, LogParts } from './log-against-today.ts';

/** What a log says of today beyond its rows: loaded with the first one that is grouped. */
export async function againstToday(asked: AskedOfLog, steps: StepsOfLog): Promise<LogAgainstToday | null> {
  const { logAgainstToday } = await import('./log-against-today.ts');
  return logAgainstToday(asked, steps);
}

/** The workbook that takes this much of a log; null where there is nothing to take. */
export function workbookTaking({ years }: LogAgainstToday, { flow, millilitres }: LogParts): Workbook | null {
  const isWanted = { rows: true, flow, millilitres, both: flow && millilitres };
  // Of those that are there and wanted, the one that takes most comes last.
  return years.findLast(({ taken }) => isWanted[taken])?.workbook ?? null;
}
