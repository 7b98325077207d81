/**
 * What a case log's flow and millilitres say of today's practice, each with what it does to the year before anything is
 * taken over.
 */
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import type { CaseGroup } from '#lib/files/case-log/group-cases.ts';
import type { ImportPreview } from '#lib/files/import/import-request.ts';
import type { SourceNote } from '#lib/workbook/source-note.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { FlowProposal } from './log-flow.ts';
import { flowProposals, withLogFlows } from './log-flow.ts';
import type { MeasuredOfLog } from './log-millilitres.ts';
import { measuredOfLog, withoutLogMillilitres } from './log-millilitres.ts';
import { rowsOfLog } from './rows-of-log.ts';
import type { YearWithLog } from './year-with-log.ts';
import { yearWithLog } from './year-with-log.ts';

/** What of a log is taken over beside its rows. */
export interface LogParts {
  readonly flow: boolean;
  readonly millilitres: boolean;
}

/** The workbooks that a reader chooses from: the log's rows alone, with its flow, with its millilitres, with both. */
export const takenOfLog = ['rows', 'flow', 'millilitres', 'both'] as const;
export type TakenOfLog = (typeof takenOfLog)[number];

export interface AskedOfLog {
  readonly before: Workbook;
  readonly groups: readonly CaseGroup[];
  /** An import of the groups that is not taken over yet. */
  readonly preview: Pick<ImportPreview, 'workbook' | 'keyOfLine'>;
  /** The scenario whose saving is told. */
  readonly scenarioId: string;
  /** Kept as the note of each flow that is new. */
  readonly source: SourceNote;
}

/** What is waited for between one year and the next. */
export interface StepsOfLog {
  /** Waits until the page has drawn, and says whether to go on. */
  readonly goesOn: () => Promise<boolean>;
  /** Has the cases of a workbook solved aside where there are many. */
  readonly solve: (workbook: Workbook, memo: CaseMemo) => Promise<void>;
}

export interface LogAgainstToday {
  readonly flows: readonly FlowProposal[];
  /** Proposals for which the list of plans has no room. */
  readonly noRoom: readonly FlowProposal[];
  readonly measured: readonly MeasuredOfLog[];
  /** The same where the log's flow is today's plan. */
  readonly measuredOnLogPlan: readonly MeasuredOfLog[];
  /** Those that differ. */
  readonly years: readonly {
    readonly taken: TakenOfLog;
    readonly workbook: Workbook;
    readonly year: YearWithLog;
  }[];
}

/**
 * What a log says of today beyond its rows.
 * @returns null where it was not to go on
 */
export async function logAgainstToday(
  { before, groups, preview, scenarioId, source }: AskedOfLog,
  { goesOn, solve }: StepsOfLog
): Promise<LogAgainstToday | null> {
  const memo = new CaseMemo();
  const rows = rowsOfLog(groups, preview);
  const withMl = preview.workbook;
  const alone = withoutLogMillilitres(withMl, before, rows);
  const hasMl = withMl.caseMix.some(
    ({ measuredMlPerCase }, at) => measuredMlPerCase !== alone.caseMix[at]?.measuredMlPerCase
  );
  await solve(alone, memo);
  if (!(await goesOn())) return null;
  const flows = flowProposals(alone, rows, memo);
  const hasFlow = flows.some(({ phases }) => phases !== null);
  const { workbook: withFlow, noRoom } = withLogFlows(alone, flows, source);
  const both = withLogFlows(withMl, flows, source).workbook;
  const workbooks = { rows: alone, flow: withFlow, millilitres: withMl, both };
  const isThere = { rows: true, flow: hasFlow, millilitres: hasMl, both: hasFlow && hasMl };
  const years: LogAgainstToday['years'][number][] = [];
  for (const taken of takenOfLog.filter((each) => isThere[each])) {
    const workbook = workbooks[taken];
    await solve(workbook, memo);
    if (!(await goesOn())) return null;
    years.push({ taken, workbook, year: yearWithLog(workbook, scenarioId, memo) });
  }
  return {
    flows,
    noRoom,
    measured: hasMl ? measuredOfLog(withMl, rows, memo) : [],
    measuredOnLogPlan: hasMl ? measuredOfLog(both, rows, memo) : [],
    years
  };
}
