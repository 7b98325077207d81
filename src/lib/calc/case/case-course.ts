import { plain } from '../working/plain.ts';
import { recorder } from '../working/recorder.ts';
import type { Quantity } from '../working/reckoner.ts';
import { checkCase } from './check-case.ts';
import type { CaseGiven } from './conditions.ts';
import { modelCase } from './case-model.ts';
import { emptyOutcome, solveCircleSystem } from './circle-system.ts';
import type { CourseSink } from './circle-system.ts';
import { circleInputs, circleReport } from './circle-report.ts';

/** The course of one case. All arrays are of one length, in order of time; a jump is two points at one time. */
export interface CaseCourse {
  readonly minutes: Float64Array;
  readonly flowLPerMin: Float64Array;
  /** Setting that gives the vapour flow at that fresh gas flow. */
  readonly dialPercent: Float64Array;
  readonly vapourMlPerMin: Float64Array;
  readonly inspiredPercent: Float64Array;
  readonly endTidalPercent: Float64Array;
  readonly targetPercent: number;
  /** null: not reached. */
  readonly minutesToTarget: number | null;
  readonly minutesBelowTarget: number;
}

/**
 * The course of dial, inspired and end-tidal fraction and vapour flow over one case, from the very run that its estimate
 * rests on: some six points for each step of the solver, so that they lie close where things change fast. Empty where no
 * volatile agent is given.
 * @throws OutOfRangeError where an input is outside what the model allows.
 */
export function caseCourse(given: CaseGiven): CaseCourse {
  checkCase(given);
  const minutes: number[] = [];
  const flow: number[] = [];
  const dial: number[] = [];
  const vapour: number[] = [];
  const inspired: number[] = [];
  const endTidal: number[] = [];
  const sink: CourseSink = {
    add({ minute, flowLPerMin, vapourLPerMin, inspiredFraction, endTidalFraction }) {
      minutes.push(minute);
      flow.push(flowLPerMin);
      dial.push((100 * vapourLPerMin) / (flowLPerMin + vapourLPerMin));
      vapour.push(1000 * vapourLPerMin);
      inspired.push(100 * inspiredFraction);
      endTidal.push(100 * endTidalFraction);
    }
  };
  const outcome = emptyOutcome();
  const { agent } = given.conditions.technique === 'volatile' ? modelCase(plain, given) : { agent: null };
  if (agent !== null) solveCircleSystem(agent.circle, outcome, sink);
  return {
    minutes: Float64Array.from(minutes),
    flowLPerMin: Float64Array.from(flow),
    dialPercent: Float64Array.from(dial),
    vapourMlPerMin: Float64Array.from(vapour),
    inspiredPercent: Float64Array.from(inspired),
    endTidalPercent: Float64Array.from(endTidal),
    targetPercent: agent === null ? 0 : 100 * agent.circle.targetFraction,
    minutesToTarget: Number.isNaN(outcome.minutesToTarget) ? null : outcome.minutesToTarget,
    minutesBelowTarget: outcome.minutesBelowTarget
  };
}

const quantities = {
  flowLPerMin: ['Fresh gas flow', 'L/min'],
  vapourMlPerMin: ['Vapour that comes in', 'mL/min'],
  dialPercent: ['Setting of the dial that gives the vapour flow', '%'],
  inspiredPercent: ['Inspired agent', '%'],
  endTidalPercent: ['End-tidal agent', '%']
} as const;
export type CourseQuantity = keyof typeof quantities;

/** One figure of the course with its working: the method of the run, how well it was solved, and what went in. */
export function recordedInCourse(
  given: CaseGiven,
  { quantity, point }: { quantity: CourseQuantity; point: number }
): Quantity<number | null> {
  const model = modelCase(recorder, given);
  if (model.agent === null)
    return recorder.assumption(null, quantities[quantity][1], 'No volatile agent is given.');
  const course = caseCourse(given);
  const outcome = emptyOutcome();
  solveCircleSystem(model.agent.circle, outcome);
  const at = Math.round(course.minutes[point] ?? NaN);
  const [yields, unit] = quantities[quantity];
  return recorder.result(course[quantity][point] ?? null, circleInputs(model, model.agent), () => ({
    ...circleReport('vapour-delivered', outcome),
    id: 'case-course',
    yields: `${yields} about minute ${at}`,
    unit
  }));
}
