/** What a case log's mean flow says of today's practice: a flow plan for each group, proposed and taken over. */
import { cutPhase, restOfCase } from '#lib/calc/case/phase-minutes.ts';
import type { FlowPlan, Phase } from '#lib/calc/input.ts';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { phaseLimits } from '#lib/calc/limits.ts';
import type { CaseGroup } from '#lib/files/case-log/group-cases.ts';
import { freshId } from '#lib/workbook/edit-rows.ts';
import type { SourceNote } from '#lib/workbook/source-note.ts';
import { withSourceNote } from '#lib/workbook/source-notes.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { limits } from '#lib/workbook/workbook.ts';
import type { RowOfLog } from './rows-of-log.ts';
import { todayOf } from './year-with-log.ts';

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

/** Phases with the minutes that each has in a case, by the rules of the case model. */
function timed(phases: readonly Phase[], caseMinutes: number): readonly { phase: Phase; minutes: number }[] {
  const fixedOf = (some: readonly Phase[]): readonly number[] =>
    some.flatMap(({ minutes }) => (minutes === null ? [] : [minutes]));
  return phases.map((phase, at) => ({
    phase,
    minutes:
      phase.minutes === null
        ? restOfCase.compute({ caseMinutes, otherMinutes: fixedOf(phases) })
        : cutPhase.compute({
            plannedMinutes: phase.minutes,
            caseMinutes,
            earlierMinutes: fixedOf(phases.slice(0, at))
          })
  }));
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
