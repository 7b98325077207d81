/**
 * What a case log's flow and millilitres say of today's practice: a flow plan for each group by its mean flow, and the
 * measured use of its cases, each with what it does to the year before anything is taken over.
 */
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { ScenarioEstimate } from '#lib/calc/estimate-types.ts';
import { explainer } from '#lib/calc/estimate/explain.ts';
import type { EstimateInput, FlowPlan, Phase } from '#lib/calc/input.ts';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { phaseLimits } from '#lib/calc/limits.ts';
import { ownPractice } from '#lib/calc/reckoning/own-practice.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { recorder, workingOf } from '#lib/calc/working/recorder.ts';
import type { Working } from '#lib/calc/working/working.ts';
import type { CaseGroup } from '#lib/files/case-log/group-cases.ts';
import type { ImportPreview } from '#lib/files/import/import-request.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { freshId } from '#lib/workbook/edit-rows.ts';
import type { SourceNote } from '#lib/workbook/source-note.ts';
import { sourceNoteOf, withSourceNote } from '#lib/workbook/source-notes.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { limits } from '#lib/workbook/workbook.ts';

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

/** What a group's mean flow says of its plan of today. */
export interface FlowProposal {
  readonly rowId: string;
  readonly group: CaseGroup;
  readonly logLPerMin: number;
  /** The plan of today, and the mean flow of a case on it; null where none can be told. */
  readonly plan: FlowPlan | null;
  readonly planLPerMin: number | null;
  /** The phases that would have the log's mean flow; null where nothing is proposed, as the sentence says. */
  readonly phases: readonly Phase[] | null;
  /** What is proposed, or why nothing is. */
  readonly sentence: string;
}

/** Flows are proposed in these steps, L/min, so that groups of about one flow share a plan. */
const flowStepLPerMin = 0.1;
const inSteps = (flowLPerMin: number): number =>
  Math.min(
    phaseLimits.flowLPerMin.to,
    Math.max(flowStepLPerMin, Math.round(flowLPerMin / flowStepLPerMin) / Math.round(1 / flowStepLPerMin))
  );

/** Phases with the minutes that each has in a case; one that is longer than the case is cut from the end. */
function timed(phases: readonly Phase[], caseMinutes: number): readonly { phase: Phase; minutes: number }[] {
  const fixed = phases.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0);
  let left = caseMinutes;
  return phases.map((phase) => {
    const planned = phase.minutes ?? Math.max(0, caseMinutes - fixed);
    const minutes = Math.max(0, Math.min(planned, left));
    left -= minutes;
    return { phase, minutes };
  });
}

/**
 * Phases whose mean flow over a case is F: the open phase takes what the others leave of it,
 * (F · T − Σ F_i t_i) / t_open, so that the start stays as it is. Where that leaves it nothing, or the case ends before
 * it, all flows are changed by one factor.
 */
export function phasesAtMeanFlow(
  phases: readonly Phase[],
  { meanLPerMin, caseMinutes }: { readonly meanLPerMin: number; readonly caseMinutes: number }
): readonly Phase[] {
  const parts = timed(phases, caseMinutes);
  const litresOf = (some: typeof parts): number =>
    some.reduce((sum, { phase, minutes }) => sum + phase.flowLPerMin * minutes, 0);
  const open = parts.find(({ phase }) => phase.minutes === null);
  const others = litresOf(parts.filter((part) => part !== open));
  const openLPerMin =
    open === undefined || open.minutes <= 0 ? NaN : (meanLPerMin * caseMinutes - others) / open.minutes;
  if (openLPerMin >= flowStepLPerMin && openLPerMin <= phaseLimits.flowLPerMin.to)
    return phases.map((phase) =>
      phase.minutes === null ? { ...phase, flowLPerMin: inSteps(openLPerMin) } : phase
    );
  const factor = (meanLPerMin * caseMinutes) / litresOf(parts);
  return phases.map((phase) => ({ ...phase, flowLPerMin: inSteps(phase.flowLPerMin * factor) }));
}

/** A proposal for each group with a mean flow, of a workbook into which the log's rows have come. */
export function flowProposals(
  workbook: Workbook,
  rows: readonly RowOfLog[],
  memo = new CaseMemo()
): readonly FlowProposal[] {
  const cases = new Map(todayOf(workbook, memo).cases.map((one) => [one.caseId, one]));
  return rows.flatMap(({ rowId, group }): FlowProposal[] => {
    const row = workbook.caseMix.find(({ id }) => id === rowId);
    if (row === undefined || row.technique === 'regional' || group.meanFlowLPerMin === null) return [];
    const one = cases.get(rowId);
    const plan = workbook.flowPlans.find(({ id }) => id === one?.flowPlan) ?? null;
    const logLPerMin = group.meanFlowLPerMin.mean;
    const of = { rowId, group, logLPerMin, plan, planLPerMin: one?.meanFlowLPerMin ?? null };
    if (plan === null) return [{ ...of, phases: null, sentence: 'Today’s case cannot be computed.' }];
    if (plan.phases.some((phase) => phase.flowAsNeeded))
      return [
        {
          ...of,
          phases: null,
          sentence: 'Its flow follows what the patient takes, so a mean flow cannot be put into it.'
        }
      ];
    const phases = phasesAtMeanFlow(plan.phases, { meanLPerMin: logLPerMin, caseMinutes: row.minutes });
    return areAlike(phases, plan.phases)
      ? [{ ...of, phases: null, sentence: 'The plan has the log’s flow already.' }]
      : [{ ...of, phases, sentence: changeInWords(plan.phases, phases) }];
  });
}

function todayOf(workbook: Workbook, memo: CaseMemo): ScenarioEstimate {
  const input = coreInput(workbook);
  const today = estimate(input, memo).scenarios.find((_, at) => input.scenarios[at]?.baseline === true);
  if (today === undefined) throw new Error('The workbook has no baseline.');
  return today;
}

const areAlike = (a: readonly Phase[], b: readonly Phase[]): boolean =>
  JSON.stringify(a) === JSON.stringify(b);

function changeInWords(before: readonly Phase[], after: readonly Phase[]): string {
  const changed = after.filter((phase, at) => phase.flowLPerMin !== before[at]?.flowLPerMin);
  return changed.length === 1 && changed[0]?.minutes === null
    ? `“${changed[0].name}” at ${changed[0].flowLPerMin} L/min, the phases before it as they are`
    : `all phases by one factor: ${after.map(({ name, flowLPerMin }) => `“${name}” ${flowLPerMin} L/min`).join(', ')}`;
}

/** The workbook with the proposed plans as today's, and the proposals for which the list of plans had no room. */
export function withLogFlows(
  workbook: Workbook,
  proposals: readonly FlowProposal[],
  source: SourceNote
): { readonly workbook: Workbook; readonly noRoom: readonly FlowProposal[] } {
  const flowPlans = [...workbook.flowPlans];
  const planOf: Record<string, string> = {};
  const noRoom: FlowProposal[] = [];
  const noted: string[] = [];
  for (const proposal of proposals) {
    const { rowId, plan, phases } = proposal;
    if (plan === null || phases === null) continue;
    let found = flowPlans.find((each) => areAlike(each.phases, phases));
    if (found === undefined) {
      if (flowPlans.length >= limits.flowPlans) {
        noRoom.push(proposal);
        continue;
      }
      const open = phases.find(({ minutes }) => minutes === null)?.flowLPerMin ?? 0;
      const name = `${plan.name}, ${open} L/min by the log`.slice(0, 200);
      const taken = flowPlans.map(({ id }) => id);
      found = { id: freshId(name, taken), name, phases };
      flowPlans.push(found);
      for (const [at, phase] of phases.entries())
        if (phase.flowLPerMin !== plan.phases[at]?.flowLPerMin)
          noted.push(`flowPlans.${found.id}.phases.${at}.flowLPerMin`);
    }
    planOf[rowId] = found.id;
  }
  if (Object.keys(planOf).length === 0) return { workbook, noRoom };
  const changed: Workbook = {
    ...workbook,
    flowPlans,
    scenarios: workbook.scenarios.map((scenario) =>
      scenario.baseline
        ? { ...scenario, flowPlanByCase: { ...scenario.flowPlanByCase, ...planOf } }
        : scenario
    )
  };
  return { workbook: noted.reduce((to, path) => withSourceNote(to, path, source), changed), noRoom };
}

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

/** A figure of a year, by its path in the estimate. */
export interface FigureOfYear {
  readonly path: string;
  readonly kind: 'liquid' | 'money' | 'mass';
  readonly words: string;
  /** mL, kg, or money as a number to be shown. */
  readonly value: number;
}

export interface YearWithLog {
  readonly figures: readonly FigureOfYear[];
  readonly working: (path: string) => Working;
}

/**
 * What a reader weighs of a workbook's year: today's liquid by agent, cost and CO2e, and what a scenario saves.
 * @param scenarioId the scenario whose saving is told; of the baseline none is
 */
export function yearWithLog(workbook: Workbook, scenarioId: string, memo = new CaseMemo()): YearWithLog {
  const input = coreInput(workbook);
  const { scenarios } = estimate(input, memo);
  const today = todayOf(workbook, memo);
  const chosen = input.scenarios.findIndex(({ id, baseline }) => id === scenarioId && !baseline);
  const { agents, cost, co2eKg } = today.perYear;
  const of = `${today.id}.perYear`;
  return {
    figures: [
      ...Object.entries(agents).map(([agent, { liquidMl }]): FigureOfYear => ({
        path: `${of}.agents.${agent}.liquidMl`,
        kind: 'liquid',
        words: `${agent.charAt(0).toUpperCase()}${agent.slice(1)}, today`,
        value: liquidMl
      })),
      { path: `${of}.cost.total`, kind: 'money', words: 'Cost, today', value: Number(cost.total) },
      { path: `${of}.co2eKg.total`, kind: 'mass', words: 'CO₂e, today', value: co2eKg.total },
      ...scenarios.flatMap((scenario, at): FigureOfYear[] =>
        at === chosen
          ? [
              {
                path: `${scenario.id}.againstBaseline.yearlySaving`,
                kind: 'money',
                words: `Saving of “${input.scenarios[at]?.name ?? ''}”`,
                value: Number(scenario.againstBaseline.yearlySaving)
              }
            ]
          : []
      )
    ],
    working: (path) => explainer(input, recorder, memo)(path)
  };
}

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
