/** The cases of each scenario, one of each row: what a case uses on the scenario's plan and machine. */
import { OutOfRangeError } from '../case/out-of-range-error.ts';
import type { CaseMethod, CaseUse } from '../case/case-result.ts';
import type { CaseSources } from '../case/conditions.ts';
import type { FailedCell } from '../estimate-types.ts';
import type { Agent, CaseRow, EstimateInput, FlowPlan, Machine, Scenario } from '../input.ts';
import { kept } from '../working/kept.ts';
import type { Reckoner } from '../working/reckoner.ts';
import { scaledToMeasured } from '../year/reconciliation.ts';
import type { SourcesOfCases } from './case-sources.ts';

/** One case on a scenario's own plan and machine. */
export interface CaseReckoning<C extends CaseUse> {
  readonly row: CaseRow;
  readonly plan: FlowPlan;
  readonly machine: Machine;
  readonly agent: Agent | null;
  readonly method: CaseMethod;
  readonly result: C;
}

export interface ScenarioCases<C extends CaseUse> {
  readonly caseOf: (scenario: Scenario, row: CaseRow) => CaseReckoning<C>;
  /** Whether a case of the row is the same in a scenario as today. */
  readonly sameAsToday: (scenario: Scenario, row: CaseRow) => boolean;
  /** Rows that can be computed, today and in the scenario; the others are left out of its totals and named. */
  readonly rowsOf: (scenario: Scenario) => readonly CaseRow[];
  /** The rows that are left out of a scenario's totals, each with its reason. */
  readonly failedIn: (scenario: Scenario) => readonly FailedCell[];
}

/**
 * @param today the baseline of the input
 * @param modelled the model's figures of a case
 */
export function scenarioCases<C extends CaseUse>(
  r: Reckoner,
  input: EstimateInput,
  {
    today,
    sources,
    modelled
  }: { today: Scenario; sources: SourcesOfCases; modelled: (sources: CaseSources) => C }
): ScenarioCases<C> {
  const { planOf, agentOf, sourcesOf } = sources;

  const sameAsToday = (scenario: Scenario, row: CaseRow): boolean =>
    scenario === today ||
    (scenario.machine === today.machine &&
      planOf(scenario, row) === planOf(today, row) &&
      agentOf(scenario, row) === agentOf(today, row));

  const casesOf = kept((scenario: Scenario) => kept((row: CaseRow) => reckonCase(scenario, row)));
  const caseOf = (scenario: Scenario, row: CaseRow) => casesOf(scenario)(row);

  function reckonCase(scenario: Scenario, row: CaseRow): CaseReckoning<C> {
    if (scenario !== today && sameAsToday(scenario, row)) return caseOf(today, row);
    const made = sourcesOf(scenario, row);
    const { plan, machine, agent } = made;
    const model = modelled(made);
    const as = (method: CaseMethod, result: C): CaseReckoning<C> => ({
      row,
      plan,
      machine,
      agent,
      method,
      result
    });
    if (agent === null || row.measuredMlPerCase === null) return as(model.method, model);
    const measuredMl = r.cell(row.measuredMlPerCase, 'mL', 'caseMix', row.id, 'measuredMlPerCase');
    // What was measured takes the place of the liquid alone: where the agent went stays the model's own figure.
    if (scenario === today) return as('measured', { ...model, liquidMl: measuredMl });
    const todayModelMl = modelled(sourcesOf(today, row)).liquidMl;
    // Where the model gives nothing for today there is no ratio to carry over.
    if (!(r.value(todayModelMl) > 0)) return as(model.method, model);
    const liquidMl = r.apply(scaledToMeasured, { modelMl: model.liquidMl, measuredMl, todayModelMl });
    return as('scaled-to-measured', { ...model, liquidMl });
  }

  /** Why the case of a row cannot be computed; null where it can. */
  const faultIn = (scenario: Scenario, row: CaseRow): FailedCell | null => {
    try {
      caseOf(scenario, row);
      return null;
    } catch (error) {
      if (!(error instanceof OutOfRangeError || error instanceof RangeError)) throw error;
      return { path: `caseMix.${row.id}`, sentence: error.message };
    }
  };
  const sorted = kept((scenario: Scenario): { rows: readonly CaseRow[]; failed: readonly FailedCell[] } => {
    // What cannot be compared with today is in no total of a scenario either.
    const before = scenario === today ? { rows: input.caseMix, failed: [] } : sorted(today);
    const faults = before.rows.map((row) => faultIn(scenario, row));
    return {
      rows: before.rows.filter((_, index) => faults[index] === null),
      failed: [...before.failed, ...faults.filter((fault) => fault !== null)]
    };
  });

  return {
    caseOf,
    sameAsToday,
    rowsOf: (scenario) => sorted(scenario).rows,
    failedIn: (scenario) => sorted(scenario).failed
  };
}
