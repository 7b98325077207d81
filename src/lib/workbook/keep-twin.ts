/** A scenario's twin without the machine, made a scenario of the workbook. */
import { twinOf } from '#lib/calc/attribution/levers.ts';
import type { Scenario } from '#lib/calc/input.ts';
import { coreInput } from './core-input.ts';
import { freshId, fullSentence, roomIn, type RowsChanged } from './edit-rows.ts';
import type { Workbook } from './workbook.ts';

export type TwinKept =
  | Exclude<RowsChanged, { readonly workbook: Workbook }>
  | { readonly workbook: Workbook; readonly id: string; readonly name: string };

/** The mark stands in the name, so that it goes wherever the name goes. */
const nameOf = (scenarioName: string): string => {
  const mark = ' without the machine (made by the tool)';
  return scenarioName.slice(0, 200 - mark.length) + mark;
};

/** Puts the twin right after its scenario, or says why there is none to put. */
export function keepTwin(workbook: Workbook, scenarioId: string): TwinKept {
  const at = workbook.scenarios.findIndex(({ id }) => id === scenarioId);
  const original = workbook.scenarios[at];
  const twin = original === undefined ? null : twinOf(coreInput(workbook), original);
  if (original === undefined || twin === null)
    return { sentence: 'This scenario changes no machine, so it has no twin without one.' };
  if (roomIn(workbook, 'scenarios') < 1) return { sentence: fullSentence('scenarios') };
  const id = freshId(
    `${scenarioId} without machine`,
    workbook.scenarios.map((scenario) => scenario.id)
  );
  const kept: Scenario = {
    ...twin.scenario,
    id,
    name: nameOf(original.name),
    baseline: false,
    // It stands on today's machines, so there is nothing left to follow without.
    adoptionWithoutMachinePercent: null
  };
  return {
    workbook: { ...workbook, scenarios: workbook.scenarios.toSpliced(at + 1, 0, kept) },
    id,
    name: kept.name
  };
}
