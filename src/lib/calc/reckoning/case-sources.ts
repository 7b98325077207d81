import type { CaseSources } from '../case/conditions.ts';
import type { Absorbent, Agent, CaseRow, EstimateInput, FlowPlan, Machine, Scenario } from '../input.ts';
import { ownEntry } from '../own-entry.ts';

/** What each case of an input is made of, by scenario and row. */
export interface SourcesOfCases {
  readonly machineOf: (scenario: Scenario) => Machine;
  readonly absorbentById: (id: string) => Absorbent;
  readonly planOf: (scenario: Scenario, row: CaseRow) => FlowPlan;
  /** The agent given, the scenario's switch applied; null where the technique is not volatile. */
  readonly agentOf: (scenario: Scenario, row: CaseRow) => Agent | null;
  readonly sourcesOf: (scenario: Scenario, row: CaseRow) => CaseSources;
}

export function sourcesOfCases(input: EstimateInput): SourcesOfCases {
  const { site, accounting, reference } = input;
  const machineById = byId(input.machines, 'machine');
  const planById = byId(input.flowPlans, 'flow plan');
  const absorbentById = byId(input.absorbents, 'absorbent');
  const machineOf = (scenario: Scenario) => machineById(scenario.machine);
  const planOf = (scenario: Scenario, row: CaseRow) =>
    planById(ownEntry(scenario.flowPlanByCase, row.id) ?? scenario.flowPlan);
  const agentOf = (scenario: Scenario, row: CaseRow) =>
    row.technique === 'volatile' && row.agent !== null
      ? (scenario.agentSwitch[row.agent] ?? row.agent)
      : null;
  const sourcesOf = (scenario: Scenario, row: CaseRow): CaseSources => {
    const machine = machineOf(scenario);
    return {
      row,
      plan: planOf(scenario, row),
      machine,
      agent: agentOf(scenario, row),
      absorbent: absorbentById(machine.absorbent),
      site,
      bodyModel: accounting.bodyModel,
      reference
    };
  };
  return { machineOf, absorbentById, planOf, agentOf, sourcesOf };
}

function byId<T extends { readonly id: string }>(list: readonly T[], what: string): (id: string) => T {
  const entries = new Map(list.map((entry) => [entry.id, entry]));
  return (id) => {
    const found = entries.get(id);
    if (found === undefined)
      throw new Error(`The input has no ${what} “${id}”; a workbook is checked before it gets here.`);
    return found;
  };
}
