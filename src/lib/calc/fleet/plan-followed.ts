/** Which flow plan cases follow in a theatre: the one rule that cases, levers and checks share. */
import type { Scenario, TheatreGroup } from '../input.ts';
import { ownEntry } from '../own-entry.ts';

type Plans = Pick<Scenario, 'plans' | 'flowPlanByCase'>;

/** A theatre as far as the plan depends on it. */
export interface PlanPlace {
  readonly group: Pick<TheatreGroup, 'machine'>;
  /** Id of the machine whose plan is followed there; with machines that stay, of the one that would have come. */
  readonly planOf: string;
}

/**
 * Id of today's plan in a theatre: the row's own, else that of the machine that stands there today, whatever comes in its
 * place, else the first that is named for any machine. undefined: the workbook names none.
 */
export const planToday = (today: Plans, rowId: string, { group }: PlanPlace): string | undefined =>
  ownEntry(today.flowPlanByCase, rowId) ??
  ownEntry(today.plans, group.machine) ??
  Object.values(today.plans)[0];

/** Id of the plan of a scenario in a theatre: the row's own, else that of the machine there, else today's. */
export const planUnder = (
  scenario: Plans,
  rowId: string,
  { place, today }: { place: PlanPlace; today: Plans }
): string | undefined =>
  ownEntry(scenario.flowPlanByCase, rowId) ??
  ownEntry(scenario.plans, place.planOf) ??
  planToday(today, rowId, place);
