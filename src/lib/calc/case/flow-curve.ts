import { plain } from '../working/plain.ts';
import type { CaseGiven } from './case-given.ts';
import { estimateCase } from './estimate-case.ts';

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
  const at = (flowLPerMin: number) => {
    const phases = given.plan.phases.map((phase) =>
      phase.minutes === null ? { ...phase, flowLPerMin } : phase
    );
    return estimateCase(plain, { ...given, plan: { ...given.plan, phases } });
  };
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
  return { points, floorMl: plain.value(highest.floorMl), neededFlowLPerMin };
}
