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
import type { StepWorking, Working } from '#lib/calc/working/working.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { everyBranch } from '../../../fixtures/every-branch.ts';
import { waysToPay } from '../../../fixtures/ways-to-pay.ts';
import type { AnyFormula, Recorded } from './recorded.ts';
import { allUnder, formulaOf, notReplayed, notTheEstimates, recordAll, valuesInto } from './recorded.ts';
import { saidBy } from './same-working.ts';

/** The first set goes by rules of its own where a measurement or purchases are carried over. */
function yearsUnderFirstSet() {
  const input = coreInput({ ...everyBranch[0]!, referenceSet: '2026-1' });
  const explain = explainer(input);
  return input.scenarios.flatMap(({ id }) =>
    ['co2eKg.total', 'cost.total'].map((figure) => explain(`${id}.perYear.${figure}`))
  );
}

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

/** An input of a formula with a unit that something came into it with. Formulas may share the record of their inputs. */
export interface UnitInUse {
  readonly formula: AnyFormula;
  readonly name: string;
  readonly unit: string;
}

const inUse = new Map<string, { formula: AnyFormula; sample: Record<string, unknown> }>();
const units = new Map<AnyFormula['inputs'], Map<string, Map<string, UnitInUse>>>();
const methods = new Set<string>();

/** The same records of inputs and the same units come again and again: each of them is kept once. */
function meetUnits({ inputs, formula }: StepWorking): void {
  const ofFormula = units.get(formula.inputs) ?? new Map<string, Map<string, UnitInUse>>();
  units.set(formula.inputs, ofFormula);
  for (const [name, input] of Object.entries(inputs)) {
    const known = ofFormula.get(name) ?? new Map<string, UnitInUse>();
    ofFormula.set(name, known);
    for (const { unit } of Array.isArray(input) ? (input as readonly Working[]) : [input as Working])
      if (!known.has(unit)) known.set(unit, { formula: formula as unknown as AnyFormula, name, unit });
  }
}

/** Takes from workings what is asked of formulas, and lets the workings go: all of them at once are gigabytes. */
function meet({ steps, methods: met }: Pick<Recorded, 'steps' | 'methods'>): void {
  const lastOf = new Map<string, StepWorking>();
  for (const step of steps) {
    lastOf.set(step.formula.id, step);
    meetUnits(step);
  }
  for (const [id, step] of lastOf) inUse.set(id, { formula: formulaOf(step), sample: valuesInto(step) });
  for (const { method } of met) methods.add(method.id);
}

const alone = (workings: readonly Working[]): Pick<Recorded, 'steps' | 'methods'> => ({
  steps: allUnder(workings).filter((working) => working.kind === 'step'),
  methods: []
});

/** What became of the recording of a workbook's figures, and its leaves: those that say the same once. */
export interface LookedThrough extends Pick<Recorded, 'leaves'> {
  readonly workbook: Workbook;
  readonly failed: readonly unknown[];
  readonly figures: number;
  readonly steps: number;
  readonly notReplayed: readonly string[];
  readonly notTheEstimates: readonly string[];
}

export function lookThrough(workbook: Workbook): LookedThrough {
  const recorded = recordAll(workbook);
  meet(recorded);
  return {
    workbook,
    leaves: [...new Map(recorded.leaves.map((leaf) => [saidBy(leaf), leaf])).values()],
    failed: recorded.estimate.scenarios.flatMap(({ failed }) => failed),
    figures: recorded.figures.length,
    steps: recorded.steps.length,
    notReplayed: notReplayed(recorded.steps),
    notTheEstimates: notTheEstimates(recorded)
  };
}

/** Every figure of the workbooks that take every branch. */
export const everyBranchRecorded: readonly LookedThrough[] = everyBranch.map(lookThrough);
meet(alone(yearsUnderFirstSet()));
meet(alone(agentAtFlow()));
meet(alone(lastingCutOfAgents()));
meet(alone([withError()]));
meet(alone(waysToPay(recorder).map(workingOf)));

/** Each formula with one set of values that it was given, which says what is a list, a number or an amount. */
export const formulasInUse: ReadonlyMap<string, { formula: AnyFormula; sample: Record<string, unknown> }> =
  inUse;

export const unitsInUse: readonly UnitInUse[] = [...units.values()].flatMap((ofFormula) =>
  [...ofFormula.values()].flatMap((known) => [...known.values()])
);

export const methodIds: ReadonlySet<string> = methods;
