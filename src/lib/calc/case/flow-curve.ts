import { plain } from '../working/plain.ts';
import type { LeafInstead } from '../working/recorder.ts';
import { recorderOver } from '../working/recorder.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { CaseGiven } from './conditions.ts';
import type { CaseResult } from './case-result.ts';
import { estimateCase, floorOfCase } from './estimate-case.ts';

export interface FlowCurvePoint {
  /** Fresh gas flow of the plan's open phase. */
  readonly flowLPerMin: number;
  /** Mean over the case, wash-in included. */
  readonly meanFlowLPerMin: number;
  readonly liquidMl: number;
  readonly constantDialMl: number;
  /** null: not reached. */
  readonly minutesToTarget: number | null;
}

export interface FlowCurve {
  /** In order of flow. Empty where no volatile agent is given. */
  readonly points: readonly FlowCurvePoint[];
  /** The liquid that would be used if nothing spilled; null where no volatile agent is given. */
  readonly floorMl: number | null;
  /** Least feasible flow, at which the curve begins. */
  readonly neededFlowLPerMin: number;
}

const HIGHEST_FLOW_L_PER_MIN = 6;
const POINTS = 25;

/**
 * Agent used by one case against the flow of the plan's open phase, its other phases kept: from the least feasible flow
 * to 6 L/min, in equal ratios. Each point is `estimateCase` at that flow.
 * @throws OutOfRangeError where an input is outside what the model allows.
 */
export function flowCurve(given: CaseGiven): FlowCurve {
  const at = (flowLPerMin: number) => caseAtFlow(plain, given, flowLPerMin);
  const highest = at(HIGHEST_FLOW_L_PER_MIN);
  const { neededFlowLPerMin } = highest;
  if (highest.method === 'none') return { points: [], floorMl: null, neededFlowLPerMin };
  const top = Math.max(HIGHEST_FLOW_L_PER_MIN, 2 * neededFlowLPerMin);
  const points = Array.from({ length: POINTS }, (_, i): FlowCurvePoint => {
    const flowLPerMin = neededFlowLPerMin * (top / neededFlowLPerMin) ** (i / (POINTS - 1));
    const { meanFlowLPerMin, liquidMl, constantDialMl, minutesToTarget } = at(flowLPerMin);
    return {
      flowLPerMin,
      meanFlowLPerMin: plain.value(meanFlowLPerMin),
      liquidMl: plain.value(liquidMl),
      constantDialMl: plain.value(constantDialMl),
      minutesToTarget: plain.value(minutesToTarget)
    };
  });
  return { points, floorMl: plain.value(floorOfCase(plain, given)), neededFlowLPerMin };
}

/** The case with the flow of its plan's open phase as asked. */
export function caseAtFlow(r: Reckoner, given: CaseGiven, flowLPerMin: number): CaseResult {
  const phases = given.conditions.phases.map((phase) =>
    phase.minutes === null ? { ...phase, flowLPerMin, flowAsNeeded: false } : phase
  );
  return estimateCase(r, { ...given, conditions: { ...given.conditions, phases } });
}

/**
 * A recorder for the case at a flow: the flow of the open phase is the one asked, not the plan's.
 * @param instead what else is not as the workbook has it
 */
export function recorderAtFlow(
  { conditions, cells }: CaseGiven,
  instead: (path: string) => LeafInstead | null = () => null
): Reckoner {
  const open = conditions.phases.findIndex(({ minutes }) => minutes === null);
  const cell = `flowPlans.${cells.plan}.phases.${open}.flowLPerMin`;
  const words = 'The flow at which this point of the curve is computed, in place of the plan’s own.';
  return recorderOver((path) => (path === cell ? { words } : instead(path)));
}

/** The case at one point of the curve, with its working. */
export function recordedAtFlow(
  given: CaseGiven,
  flowLPerMin: number
): CaseResult & { readonly floorMl: Quantity } {
  const r = recorderAtFlow(given);
  return { ...caseAtFlow(r, given, flowLPerMin), floorMl: floorOfCase(r, given) };
}
