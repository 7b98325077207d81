/**
 * How a scenario is taken apart: which levers it uses, and the scenario that is left with some of them off. All that
 * knows which fields of a scenario a lever stands for is here.
 */
import type { EstimateInput, Lever, Scenario } from '../input.ts';
import { baselineOf } from '../baseline-of.ts';
import { planToday, planUnder } from '../fleet/plan-followed.ts';
import { levers } from '../input.ts';
import { changesTechnique } from '../fleet/technique-shares.ts';

/** What the levers of a scenario are told from. */
export type Levered = Pick<EstimateInput, 'scenarios' | 'caseMix' | 'theatreGroups'>;

type Field = keyof Scenario;

/** A scenario with some of its levers off. */
export interface Variant {
  readonly scenario: Scenario;
  /** Path of the cell that a field has its value from, where that is not the scenario’s own cell of this name. */
  readonly cells: Readonly<Partial<Record<Field, string>>>;
}

const fieldsOf: Readonly<Record<Lever, readonly Field[]>> = {
  agent: ['agentSwitch'],
  technique: ['intravenousPercentByCase', 'regionalPercentByCase'],
  flow: ['plans', 'flowPlanByCase'],
  machine: ['machinesStay', 'avoidedPurchases'],
  adoption: ['adoptionPercent'],
  capture: [
    'capturePercent',
    'caughtLostPercent',
    'captureDevicePrice',
    'captureFeePerYear',
    'canisterPrice',
    'canisterHoldsG'
  ],
  'nitrous-oxide': ['nitrousOxideSupply'],
  scavenging: ['scavengingPumpHoursPerWeek']
};
/** What belongs to the lever that the user names. */
const namedFields: readonly Field[] = ['oneOffCost', 'yearlyExtraCost', 'recoveryMinutesSavedPerCase'];

/** A colon stands in no id of a workbook, so no scenario of the user's can have the id of a variant. */
const mark = ':';
export const twinIdOf = (scenarioId: string): string => `${scenarioId}${mark}without-machine`;
export const isTwinId = (id: string): boolean => id.endsWith(twinIdOf(''));
/** The id of the scenario whose twin has this id. */
export const scenarioOfTwin = (twinId: string): string => twinId.slice(0, twinId.lastIndexOf(mark));

/** Whether the scenario has a twin: one that brings machines. */
export const bringsMachines = ({ moves, machinesStay }: Scenario): boolean =>
  !machinesStay && moves.some(({ theatres }) => theatres !== 0);

/** The levers that a scenario uses, in the order of `levers`; of the baseline none. */
export function leversOf(input: Levered, scenario: Scenario): Lever[] {
  const today = baselineOf(input);
  if (scenario === today) return [];
  const isUsed: Readonly<Record<Lever, boolean>> = {
    agent: [...Object.keys(scenario.agentSwitch), ...Object.keys(today.agentSwitch)].some(
      (agent) => givenInstead(scenario, agent) !== givenInstead(today, agent)
    ),
    technique: input.caseMix.some((row) => changesTechnique(scenario, row)),
    flow: changesPlan(input, scenario),
    machine:
      bringsMachines(scenario) || scenario.avoidedPurchases.length > 0 || today.avoidedPurchases.length > 0,
    adoption: bringsMachines(scenario) && scenario.adoptionWithoutMachinePercent !== null,
    capture: fieldsOf.capture.some((field) => Number(scenario[field]) !== Number(today[field])),
    'nitrous-oxide': scenario.nitrousOxideSupply !== today.nitrousOxideSupply,
    scavenging: scenario.scavengingPumpHoursPerWeek !== today.scavengingPumpHoursPerWeek
  };
  const bears = namedFields.some((field) => Number(scenario[field]) !== Number(offValue(today, field)));
  return levers.filter((lever) => isUsed[lever] || (bears && lever === scenario.extraCostLever));
}

const givenInstead = ({ agentSwitch }: Scenario, agent: string): string =>
  (agentSwitch as Readonly<Record<string, string>>)[agent] ?? agent;

/** Whether a case group follows another plan than today's in some theatre. */
function changesPlan(input: Levered, scenario: Scenario): boolean {
  const today = baselineOf(input);
  return input.theatreGroups.some((group) => {
    const coming = scenario.moves.filter(({ theatreGroup }) => theatreGroup === group.id);
    const places = [group.machine, ...coming.map(({ machine }) => machine)].map((planOf) => ({
      group,
      planOf
    }));
    return places.some((place) =>
      input.caseMix.some(
        ({ id }) => planUnder(scenario, id, { place, today }) !== planToday(today, id, place)
      )
    );
  });
}

/** What a field holds where its lever is off: what today's practice has. Today saves no recovery minutes, by definition. */
const offValue = (today: Scenario, field: Field): unknown => {
  if (field === 'recoveryMinutesSavedPerCase') return 0;
  // No plan named for a machine: today's of the theatre is followed on it.
  if (field === 'plans') return {};
  return field === 'machinesStay' ? true : today[field];
};

/**
 * The scenario with only these of its levers on. Off means as today, and of adoption the share that would follow without
 * the machine. With the machine off the plan stays: it is followed from the same year in the theatres that would have
 * moved, and each case raises it to what today's machine needs.
 *
 * With all its levers on it is the scenario itself; with none of them it equals today's practice in every figure.
 */
export function variantOf(input: Levered, scenario: Scenario, on: readonly Lever[]): Variant {
  const today = baselineOf(input);
  const used = leversOf(input, scenario);
  if (used.every((lever) => on.includes(lever))) return { scenario, cells: {} };
  const values: Partial<Scenario> = {};
  const cells: Partial<Record<Field, string>> = {};
  for (const lever of used) {
    if (on.includes(lever)) continue;
    for (const field of [...fieldsOf[lever], ...(lever === scenario.extraCostLever ? namedFields : [])]) {
      // Where it is only for the cost named after it that adoption is a lever, its share stays.
      if (lever === 'adoption' && field === 'adoptionPercent') {
        if (!bringsMachines(scenario) || scenario.adoptionWithoutMachinePercent === null) continue;
        Object.assign(values, { [field]: scenario.adoptionWithoutMachinePercent });
        cells[field] = `scenarios.${scenario.id}.adoptionWithoutMachinePercent`;
      } else {
        Object.assign(values, { [field]: offValue(today, field) });
        cells[field] = `scenarios.${today.id}.${field}`;
      }
    }
  }
  const id = `${scenario.id}${mark}${on.filter((lever) => used.includes(lever)).join('+')}`;
  return { scenario: { ...scenario, ...values, id, baseline: false }, cells };
}

/** The levers of the twin: all that the scenario uses but the machine and the adoption that it brings. */
export const twinLevers = (input: Levered, scenario: Scenario): Lever[] =>
  leversOf(input, scenario).filter((lever) => lever !== 'machine' && lever !== 'adoption');

/**
 * The scenario's twin without the machine: the same agents, the same plan raised to what today's machines need, and the
 * share that would follow there. null where the scenario changes no machine.
 */
export function twinOf(input: Levered, scenario: Scenario): Variant | null {
  if (!bringsMachines(scenario)) return null;
  const { scenario: twin, cells } = variantOf(input, scenario, twinLevers(input, scenario));
  return { scenario: { ...twin, id: twinIdOf(scenario.id), baseline: false }, cells };
}
