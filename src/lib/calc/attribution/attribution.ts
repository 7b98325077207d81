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
import { Step } from './step.ts';
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
    /** From lawful practice to the scenario; null where the two are not told apart from today. */
    againstLawful: kept((scenario: Scenario) => {
      const { lawful, whole } = runsOf()(scenario);
      return lawful === null ? null : new Step(r, { from: lawful(), to: whole(), factors: factors() });
    }),
    increments: once(() => incrementsOf(r, input, { runsOf: runsOf(), factors: factors() }))
  };
}
