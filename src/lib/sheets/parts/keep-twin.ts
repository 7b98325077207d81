/** A scenario's twin without the machine, made a scenario of the workbook. */
import { twinOf } from '#lib/calc/attribution/levers.ts';
import type { Scenario } from '#lib/calc/input.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { freshId, fullSentence, roomIn, type RowsChanged } from '#lib/workbook/edit-rows.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

export type TwinKept =
  | Exclude<RowsChanged, { readonly workbook: Workbook }>
  | { readonly workbook: Workbook; readonly id: string; readonly name: string };

/** The mark stands in the name, so that it goes wherever the name goes. */
const nameOf = (scenarioName: string): string => {
  const mark = ' without the machine (made by the tool)';
  return scenarioName.slice(0, 200 - mark.length) + mark;
};

/** Puts the twin last, so that every other scenario keeps its colour, or says why there is none to put. */
export function keepTwin(workbook: Workbook, scenarioId: string): TwinKept {
  const original = workbook.scenarios.find(({ id }) => id === scenarioId);
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
    workbook: { ...workbook, scenarios: [...workbook.scenarios, kept] },
    id,
    name: kept.name
  };
}
