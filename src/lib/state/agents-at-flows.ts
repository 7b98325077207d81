/** What each agent takes at each flow, of one case, and how each figure came about. */
import type { CaseGiven } from '#lib/calc/case/conditions.ts';
import type { Agent, EstimateInput } from '#lib/calc/input.ts';
import type { AgentAtFlow, AgentAtFlowFigure } from '#lib/calc/reckoning/agent-at-flow.ts';
import { agentsAtFlows, recordedAgentAtFlow } from '#lib/calc/reckoning/agent-at-flow.ts';
import { workingOf } from '#lib/calc/working/recorder.ts';
import type { Working } from '#lib/calc/working/working.ts';

export const everyAgentAtFlows = (input: EstimateInput, given: CaseGiven): readonly AgentAtFlow[] =>
  agentsAtFlows(input, given);

export const workingAtFlow = (
  input: EstimateInput,
  at: {
    readonly given: CaseGiven;
    readonly agent: Agent;
    readonly flowLPerMin: number;
    readonly figure: AgentAtFlowFigure;
  }
): Working => workingOf(recordedAgentAtFlow(input, at));
