/** What the law already asks of today's practice: that is no saving of any scenario. */
import type { Agent, EstimateInput, Scenario } from '../input.ts';
import type { AgentRestriction } from '../reference/agent-restrictions.ts';
import { agentRestrictions, yearOf } from '../reference/agent-restrictions.ts';
import type { Variant } from './levers.ts';
import { baselineOf } from '../baseline-of.ts';

type Asked = Pick<EstimateInput, 'site' | 'priceYear' | 'accounting' | 'caseMix' | 'scenarios' | 'agents'>;

export interface RestrictionOfToday extends AgentRestriction {
  /** False where it comes after the price year, within the appraisal. */
  readonly inForce: boolean;
}

const givenToday = ({ agentSwitch }: Scenario, agent: Agent): Agent => agentSwitch[agent] ?? agent;

/**
 * The statements of the hospital's jurisdiction about agents that today's practice gives, in force in the price year or
 * coming within the appraisal; none where no jurisdiction is given.
 */
export function restrictionsOfToday(
  input: Asked,
  among: readonly AgentRestriction[] = agentRestrictions
): RestrictionOfToday[] {
  const { site, priceYear, accounting, caseMix } = input;
  const today = baselineOf(input);
  const given = new Set<string>(
    caseMix.flatMap(({ technique, agent, casesPerYear }) =>
      technique === 'volatile' && agent !== null && casesPerYear > 0 ? [givenToday(today, agent)] : []
    )
  );
  return among
    .filter(({ jurisdiction, agent }) => jurisdiction === site.jurisdiction && given.has(agent))
    .filter((restriction) => yearOf(restriction) <= priceYear + accounting.appraisalYears)
    .map((restriction) => ({ ...restriction, inForce: yearOf(restriction) <= priceYear }));
}

/** Why there is no lawful practice to compare with, or that there is one. */
export type LawfulPracticeState =
  'nothing-restricted' | 'not-given' | 'restricted-itself' | 'not-on-prices' | 'given';

const restrictedByLaw = (input: Asked, among?: readonly AgentRestriction[]): ReadonlySet<string> =>
  new Set(
    restrictionsOfToday(input, among).flatMap(({ kind, inForce, agent }) =>
      kind === 'law' && inForce ? [agent] : []
    )
  );

export function lawfulPracticeState(input: Asked, among?: readonly AgentRestriction[]): LawfulPracticeState {
  const restricted = restrictedByLaw(input, among);
  const { lawfulAgentInstead: instead } = input.site;
  if (restricted.size === 0) return 'nothing-restricted';
  if (instead === null) return 'not-given';
  if (restricted.has(instead)) return 'restricted-itself';
  return input.agents.some(({ agent }) => agent === instead) ? 'given' : 'not-on-prices';
}

/**
 * Today's practice as the law allows it: the agent named in the site's cell in place of those that a law in force
 * restricts, for the share of the cases that are not exempt. null where nothing is restricted, or no agent can be given.
 */
export function lawfulPracticeOf(input: Asked, among?: readonly AgentRestriction[]): Variant | null {
  const { lawfulAgentInstead: instead, lawfulSharePercent } = input.site;
  if (lawfulPracticeState(input, among) !== 'given' || instead === null) return null;
  const today = baselineOf(input);
  const restricted = restrictedByLaw(input, among);
  const agentSwitch: Partial<Record<Agent, Agent>> = { ...today.agentSwitch };
  for (const { agent } of input.caseMix)
    if (agent !== null && restricted.has(givenToday(today, agent))) agentSwitch[agent] = instead;
  return {
    // A colon stands in no id of a workbook.
    scenario: {
      ...today,
      id: `${today.id}:lawful`,
      baseline: false,
      agentSwitch,
      adoptionPercent: lawfulSharePercent,
      adoptionFirstYearsPercent: null
    },
    cells: { adoptionPercent: 'site.lawfulSharePercent' }
  };
}
