/** What each scenario is made of, and how the alternatives of a workbook compare: each part made when it is asked for. */
import type { EstimateInput, Lever, Scenario } from '../input.ts';
import { timeFactors } from '../money/time-factors.ts';
import { kept, once } from '../working/kept.ts';
import type { Reckoner } from '../working/reckoner.ts';
import { incrementsOf } from './increments.ts';
import { ladderOf } from './ladder.ts';
import type { RunsFrom } from './lever-runs.ts';
import { leverRuns } from './lever-runs.ts';
import { partsOf } from './parts.ts';
import { withTwin } from './twin.ts';

export type Attribution = ReturnType<typeof attribution>;

/** @param start makes the one reckoning that all runs come out of; see `leverRuns`. */
export function attribution(r: Reckoner, input: EstimateInput, start: (r: Reckoner) => RunsFrom) {
  const runsOf = once(() => leverRuns(r, input, start));
  const factors = once(() => timeFactors(r, input.accounting));
  return {
    parts: kept((scenario: Scenario) => partsOf(r, runsOf()(scenario))),
    ladder: (scenario: Scenario, order: readonly Lever[]) =>
      ladderOf(r, runsOf()(scenario), { order, factors: factors() }),
    twin: kept((scenario: Scenario) => withTwin(r, runsOf()(scenario), factors())),
    increments: once(() => incrementsOf(r, input, { runsOf: runsOf(), factors: factors() }))
  };
}
