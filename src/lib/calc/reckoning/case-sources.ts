import type { CaseSources } from '../case/conditions.ts';
import type {
  Absorbent,
  Agent,
  CaseRow,
  EstimateInput,
  FlowPlan,
  Machine,
  Scenario,
  Technique
} from '../input.ts';
import type { PlanPlace } from '../fleet/plan-followed.ts';
import { planToday, planUnder } from '../fleet/plan-followed.ts';
import { kept } from '../working/kept.ts';

/** How a case is done: by the row with the technique in force, the plan, the machine that stands there, the agent given. */
export interface CaseChoice {
  /** The row of the case mix, with another technique where the scenario gives this case one. */
  readonly row: CaseRow;
  readonly plan: FlowPlan;
  readonly machine: Machine;
  /** null where the technique is not volatile. */
  readonly agent: Agent | null;
}

/** Where a case is done, as far as its choice depends on it. */
export interface CasePlace extends PlanPlace {
  readonly machine: Machine;
}

/** What each case of an input is made of. */
export interface SourcesOfCases {
  readonly absorbentById: (id: string) => Absorbent;
  /** A case that follows the scenario, in a place. */
  readonly following: (
    scenario: Scenario,
    row: CaseRow,
    place: CasePlace,
    technique?: Technique
  ) => CaseChoice;
  /** A case that does what is done today, in a place. */
  readonly asToday: (row: CaseRow, place: CasePlace) => CaseChoice;
  readonly sourcesOf: (choice: CaseChoice) => CaseSources;
}

export function sourcesOfCases(input: EstimateInput, today: Scenario): SourcesOfCases {
  const { site, accounting, reference } = input;
  const planById = byId(input.flowPlans, 'flow plan');
  const absorbentById = byId(input.absorbents, 'absorbent');
  const agentOf = (scenario: Scenario, row: CaseRow): Agent | null =>
    row.technique === 'volatile' && row.agent !== null
      ? (scenario.agentSwitch[row.agent] ?? row.agent)
      : null;
  /** A row where its cases are done by another technique: the same object each time, as cases are known by their row. */
  const doneBy = kept((technique: Technique) => kept((row: CaseRow): CaseRow => ({ ...row, technique })));
  const choice = (
    scenario: Scenario,
    row: CaseRow,
    machine: Machine,
    plan: string | undefined
  ): CaseChoice => {
    if (plan === undefined)
      throw new Error(`“${scenario.id}” has no plan; a workbook is checked before it gets here.`);
    return { row, plan: planById(plan), machine, agent: agentOf(scenario, row) };
  };
  return {
    absorbentById,
    following: (scenario, row, place, technique = row.technique) =>
      choice(
        scenario,
        technique === row.technique ? row : doneBy(technique)(row),
        place.machine,
        planUnder(scenario, row.id, { place, today })
      ),
    asToday: (row, place) => choice(today, row, place.machine, planToday(today, row.id, place)),
    sourcesOf: ({ row, plan, machine, agent }) => ({
      row,
      plan,
      machine,
      agent,
      absorbent: absorbentById(machine.absorbent),
      site,
      accounting,
      reference
    })
  };
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
