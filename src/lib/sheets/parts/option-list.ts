/** What a workbook could do, as options of which one is chosen: today, each scenario, and each twin without the machine. */
import { isTwinId, scenarioOfTwin, twinIdOf } from '#lib/calc/attribution/levers.ts';
import type { AgainstBaseline, Estimate } from '#lib/calc/estimate-types.ts';

export interface Option {
  /** As in the estimate’s `increments`. */
  readonly id: string;
  readonly name: string;
  /** The scenario itself, or the one that it is the twin of. */
  readonly scenarioId: string;
  readonly isTwin: boolean;
  /** 0 for the first scenario that is not today, and for its twin: it sets the colour. null: today. */
  readonly place: number | null;
  readonly against: AgainstBaseline;
  /** Where `against` lies in the estimate. */
  readonly path: string;
}

/** The place of a scenario among those that are not today, 0 first: it sets its colour and dash in every chart. */
export const placeOf = (
  scenarios: readonly { readonly id: string }[],
  { id, baselineId }: { readonly id: string; readonly baselineId: string }
): number => scenarios.filter((each) => each.id !== baselineId).findIndex((each) => each.id === id);

export const twinName = (scenarioName: string): string => `${scenarioName} without the machine`;

/** What an option is called, by its id: a scenario, or its twin. */
export function optionName(
  { scenarios }: { readonly scenarios: readonly { readonly id: string; readonly name: string }[] },
  id: string
): string {
  const nameOf = (scenarioId: string): string =>
    scenarios.find((scenario) => scenario.id === scenarioId)?.name ?? scenarioId;
  return isTwinId(id) ? twinName(nameOf(scenarioOfTwin(id))) : nameOf(id);
}

/**
 * Today first, then each scenario with its twin before it, as the twin is the cheaper. A twin that is the same as a
 * scenario of the workbook, or as another twin, is left out: it stands there already.
 */
export function optionsOf(
  { scenarios, increments }: Pick<Estimate, 'scenarios' | 'increments'>,
  { baselineId, nameOf }: { readonly baselineId: string; readonly nameOf: (scenarioId: string) => string }
): readonly Option[] {
  const repeated = new Set(increments?.money.flatMap(({ sameAs }) => sameAs));
  const [today, ...others] = [
    ...scenarios.filter(({ id }) => id === baselineId),
    ...scenarios.filter(({ id }) => id !== baselineId)
  ];
  if (today === undefined) return [];
  const whole = (scenario: typeof today, place: number | null): Option => ({
    id: scenario.id,
    name: nameOf(scenario.id),
    scenarioId: scenario.id,
    isTwin: false,
    place,
    against: scenario.againstBaseline,
    path: `${scenario.id}.againstBaseline`
  });
  return [
    whole(today, null),
    ...others.flatMap((scenario, place): Option[] => {
      const { id, withoutMachine } = scenario;
      if (withoutMachine === null || repeated.has(twinIdOf(id))) return [whole(scenario, place)];
      const twin: Option = {
        id: twinIdOf(id),
        name: twinName(nameOf(id)),
        scenarioId: id,
        isTwin: true,
        place,
        against: withoutMachine,
        path: `${id}.withoutMachine`
      };
      return [twin, whole(scenario, place)];
    })
  ];
}

/** Ids of today and of the options whose step is taken, in the order of the outlay. */
export const takenOptions = (increments: Estimate['increments']): readonly string[] =>
  (increments?.money ?? []).flatMap(({ option, status }) => (status === 'not-taken' ? [] : [option]));
