/** A scenario beside its twin on today's machines, and what the machine adds. */
import type { Against } from '../reckoning/against.ts';
import type { YearFactors } from '../money/time-factors.ts';
import type { Reckoner } from '../working/reckoner.ts';
import type { LeverRuns } from './lever-runs.ts';
import { Step } from './step.ts';

export interface WithTwin {
  /** The run with machine and adoption off. */
  readonly twin: Against;
  /** The whole less the twin. */
  readonly machineAdds: Step;
}

/** null where the scenario changes no machine. */
export function withTwin(r: Reckoner, runs: LeverRuns, factors: readonly YearFactors[]): WithTwin | null {
  if (runs.twin === null) return null;
  const twin = runs.twin();
  return { twin, machineAdds: new Step(r, { from: twin, to: runs.whole(), factors }) };
}
