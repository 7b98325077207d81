/** What a page asks of one case: its figures, its course, its use at other flows, each with its working. */
import type { CaseCourse, CourseQuantity } from '#lib/calc/case/case-course.ts';
import { caseCourse, recordedInCourse } from '#lib/calc/case/case-course.ts';
import type { CaseWarning } from '#lib/calc/case/case-result.ts';
import type { CaseConditions, CaseGiven } from '#lib/calc/case/conditions.ts';
import { givenOf } from '#lib/calc/case/conditions.ts';
import { estimateCase, floorOfCase } from '#lib/calc/case/estimate-case.ts';
import type { FlowCurve } from '#lib/calc/case/flow-curve.ts';
import { flowCurve, recordedAtFlow } from '#lib/calc/case/flow-curve.ts';
import type { Agent, EstimateInput, FlowPlan } from '#lib/calc/input.ts';
import { ownCaseSources } from '#lib/calc/reckoning/own-case.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { recorderOver, workingOf } from '#lib/calc/working/recorder.ts';
import type { Reckoner } from '#lib/calc/working/reckoner.ts';
import type { Working } from '#lib/calc/working/working.ts';

export interface OneCase {
  readonly plan: FlowPlan;
  readonly agent: Agent | null;
  readonly given: CaseGiven;
}

/** A case of a row under a scenario; null where there is no such scenario or row. */
export function oneCase(
  input: EstimateInput,
  { scenarioId, rowId }: { scenarioId: string; rowId: string }
): OneCase | null {
  const scenario = input.scenarios.find(({ id }) => id === scenarioId);
  const row = input.caseMix.find(({ id }) => id === rowId);
  if (scenario === undefined || row === undefined) return null;
  const sources = ownCaseSources(input, scenario, row);
  return { plan: sources.plan, agent: sources.agent, given: givenOf(sources) };
}

/** Whether two cases are the same, so that one course stands for both. */
export const areAlike = (a: CaseGiven, b: CaseGiven): boolean =>
  (Object.keys(a.conditions) as (keyof CaseConditions)[]).every(
    (name) => a.conditions[name] === b.conditions[name]
  );

/** The same case under some other conditions. */
export const under = (given: CaseGiven, changed: Partial<CaseConditions>): CaseGiven => ({
  ...given,
  conditions: { ...given.conditions, ...changed }
});

const quantities = (r: Reckoner, given: CaseGiven) => {
  const { liquidMl, minutesToTarget, warnings } = estimateCase(r, given);
  return { liquidMl, minutesToTarget, floorMl: floorOfCase(r, given), warnings };
};
export type TriedFigure = 'liquidMl' | 'minutesToTarget' | 'floorMl';

/** @throws OutOfRangeError as `estimateCase`. */
export function figuresOf(
  given: CaseGiven
): Readonly<Record<TriedFigure, number | null>> & { readonly warnings: readonly CaseWarning[] } {
  const { liquidMl, minutesToTarget, floorMl, warnings } = quantities(plain, given);
  return {
    liquidMl: plain.value(liquidMl),
    minutesToTarget: plain.value(minutesToTarget),
    floorMl: plain.value(floorMl),
    warnings
  };
}

/**
 * How a figure came about under conditions that are not the workbook's in every cell.
 * @param changed what is said of a cell that was changed, by its path
 */
export function workingOfFigure(
  given: CaseGiven,
  figure: TriedFigure,
  changed: Readonly<Record<string, string>>
): Working {
  const r = recorderOver((path) => (path in changed ? { words: changed[path] ?? '' } : null));
  return workingOf(quantities(r, given)[figure]);
}

export const courseOf = (given: CaseGiven): CaseCourse => caseCourse(given);

export const workingInCourse = (
  given: CaseGiven,
  place: { quantity: CourseQuantity; point: number }
): Working => workingOf(recordedInCourse(given, place));

export const curveOf = (given: CaseGiven): FlowCurve => flowCurve(given);

export type CurveFigure = 'meanFlowLPerMin' | 'liquidMl' | 'constantDialMl' | 'floorMl';

export const workingInCurve = (
  given: CaseGiven,
  { flowLPerMin, figure }: { flowLPerMin: number; figure: CurveFigure }
): Working => workingOf(recordedAtFlow(given, flowLPerMin)[figure]);
