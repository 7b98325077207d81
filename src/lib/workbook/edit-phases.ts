/** Phases in and out of a flow plan. */
import type { Phase } from '#lib/calc/input.ts';
import type { RowsChanged } from './edit-rows.ts';
import { keptOf } from './kept-by-path.ts';
import type { Workbook } from './workbook.ts';
import { limits } from './workbook.ts';

const newPhase: Phase = {
  name: 'New phase',
  minutes: 5,
  flowLPerMin: 2,
  flowAsNeeded: false,
  vaporiser: 'hold',
  dialPercent: null
};

/** The workbook with the phases of one plan changed by a function of the list; kept texts of the plan's cells go. */
function withPhases(
  workbook: Workbook,
  planId: string,
  change: (phases: readonly Phase[]) => readonly Phase[]
): RowsChanged {
  const plan = workbook.flowPlans.find((each) => each.id === planId);
  if (plan === undefined) return { sentence: `There is no flow plan “${planId}”.` };
  const phases = change(plan.phases);
  if (phases.length > limits.phases)
    return { sentence: `A flow plan holds at most ${limits.phases} phases; nothing was added.` };
  if (phases.filter((phase) => phase.minutes === null).length !== 1)
    return { sentence: 'Exactly one phase lasts for the rest of the case; it cannot be deleted or doubled.' };
  // Phases are known by their place, so what was kept for a place is void once places change.
  const moved = (path: string) => path.startsWith(`flowPlans.${planId}.phases.`);
  return {
    workbook: {
      ...workbook,
      ...keptOf(workbook, (path) => !moved(path)),
      flowPlans: workbook.flowPlans.map((each) => (each.id === planId ? { ...each, phases } : each))
    }
  };
}

/** Puts new phases of 5 minutes into a plan before the position `at`. */
export function insertPhases(
  workbook: Workbook,
  { plan, at, count }: { plan: string; at: number; count: number }
): RowsChanged {
  const added = Array.from({ length: count }, () => newPhase);
  return withPhases(workbook, plan, (phases) => [...phases.slice(0, at), ...added, ...phases.slice(at)]);
}

/** Takes phases out of a plan. */
export function deletePhases(
  workbook: Workbook,
  { plan, rows }: { plan: string; rows: readonly number[] }
): RowsChanged {
  return withPhases(workbook, plan, (phases) => phases.filter((_, index) => !rows.includes(index)));
}

/** Puts a copy of each of these phases below the last of them; a copy of the open phase lasts 5 minutes. */
export function duplicatePhases(
  workbook: Workbook,
  { plan, rows }: { plan: string; rows: readonly number[] }
): RowsChanged {
  return withPhases(workbook, plan, (phases) => {
    const at = Math.max(...rows) + 1;
    const copies = rows
      .flatMap((row) => phases[row] ?? [])
      .map((phase) => ({ ...phase, minutes: phase.minutes ?? 5 }));
    return [...phases.slice(0, at), ...copies, ...phases.slice(at)];
  });
}

/** Moves phases of a plan by some places; a block that would leave the plan stays at its edge. */
export function movePhases(
  workbook: Workbook,
  { plan, rows, by }: { plan: string; rows: readonly number[]; by: number }
): RowsChanged {
  return withPhases(workbook, plan, (phases) => {
    const moving = phases.filter((_, index) => rows.includes(index));
    const rest = phases.filter((_, index) => !rows.includes(index));
    const at = Math.min(Math.max(Math.min(...rows) + by, 0), rest.length);
    return [...rest.slice(0, at), ...moving, ...rest.slice(at)];
  });
}
