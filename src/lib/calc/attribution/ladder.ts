/** A scenario's levers made one after the other, in an order of the user's. */
import type { Lever } from '../input.ts';
import type { YearFactors } from '../money/time-factors.ts';
import type { Reckoner } from '../working/reckoner.ts';
import type { LeverRuns } from './lever-runs.ts';
import { Step } from './step.ts';

export interface Rung {
  readonly lever: Lever;
  /** From the run with the levers before it to the run with this one as well. */
  readonly step: Step;
}

/**
 * The rungs from today's practice to the whole scenario. What a lever brings here hangs on its place.
 * @param order levers in the order wanted; those that the scenario does not use are passed over, and those that are not
 *   named come last, so that the rungs always lead to the whole.
 */
export function ladderOf(
  r: Reckoner,
  runs: LeverRuns,
  { order, factors }: { order: readonly Lever[]; factors: readonly YearFactors[] }
): Rung[] {
  const named = [...new Set(order)].filter((lever) => runs.levers.includes(lever));
  const inOrder = [...named, ...runs.levers.filter((lever) => !named.includes(lever))];
  return inOrder.map((lever, place) => {
    const before = inOrder.slice(0, place);
    return {
      lever,
      step: new Step(r, { from: runs.with(before), to: runs.with([...before, lever]), factors })
    };
  });
}
