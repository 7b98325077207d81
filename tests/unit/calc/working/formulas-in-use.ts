/**
 * Every formula of the core, met in the working of some figure of the workbooks that take every branch, or of the ways
 * to pay, which no workbook has yet, or of what a sheet asks beside the estimate.
 */
import { givenOf } from '#lib/calc/case/conditions.ts';
import { explainer } from '#lib/calc/estimate/explain.ts';
import { lastingCut } from '#lib/calc/estimate/under-every-set.ts';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { agentAtFlowFigures, recordedAgentAtFlow } from '#lib/calc/reckoning/agent-at-flow.ts';
import { ownCaseSources } from '#lib/calc/reckoning/own-case.ts';
import { recorder, workingOf } from '#lib/calc/working/recorder.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { everyBranch } from '../../../fixtures/every-branch.ts';
import { waysToPay } from '../../../fixtures/ways-to-pay.ts';
import type { AnyFormula, Recorded } from './recorded.ts';
import { allUnder, formulaOf, recordAll, valuesInto } from './recorded.ts';

export const recordings: readonly Recorded[] = everyBranch.map(recordAll);

/** Figures of agents at flows, which a sheet asks for and no estimate holds. */
function agentAtFlow() {
  const input = coreInput(everyBranch[0]!);
  const row = input.caseMix.find(({ technique }) => technique === 'volatile')!;
  const given = givenOf(ownCaseSources(input, input.scenarios[0]!, row));
  return agentAtFlowFigures.map((figure) =>
    workingOf(recordedAgentAtFlow(input, { given, agent: row.agent!, flowLPerMin: 1, figure }))
  );
}

/** A case with the model's own error on it, as uncertainty runs draw it. */
function withError() {
  const input = {
    ...coreInput(everyBranch[0]!),
    modelError: { uptakeFactor: 1.1, spillFactor: 0.9 }
  };
  const row = input.caseMix.find(({ technique }) => technique === 'volatile')!;
  return explainer(input)(`${input.scenarios[0]!.id}.cases.${row.id}.liquidMl`);
}

/** A lasting cut of agents, which a sheet asks for and no estimate holds. */
function lastingCutOfAgents() {
  const input = coreInput(everyBranch[0]!);
  const { asOnePulseKg, asPulsesKg } = lastingCut(recorder, input, {
    scenarioId: 'everything',
    memo: new CaseMemo()
  });
  return [workingOf(asOnePulseKg), workingOf(asPulsesKg)];
}

const steps = [
  ...recordings.flatMap((recorded) => recorded.steps),
  // The first set goes by rules of its own where a measurement or purchases are carried over.
  ...recordAll({ ...everyBranch[0]!, referenceSet: '2026-1' }).steps,
  ...allUnder(agentAtFlow()).filter((working) => working.kind === 'step'),
  ...allUnder(lastingCutOfAgents()).filter((working) => working.kind === 'step'),
  ...allUnder([withError()]).filter((working) => working.kind === 'step'),
  ...allUnder(waysToPay(recorder).map(workingOf)).filter((working) => working.kind === 'step')
];

/** Each formula with one set of values that it was given, which says what is a list, a number or an amount. */
export const formulasInUse: ReadonlyMap<string, { formula: AnyFormula; sample: Record<string, unknown> }> =
  new Map(steps.map((step) => [formulaOf(step).id, { formula: formulaOf(step), sample: valuesInto(step) }]));

export const methodIds: ReadonlySet<string> = new Set(
  recordings.flatMap(({ methods }) => methods.map(({ method }) => method.id))
);
