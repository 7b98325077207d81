import type { FailedCell } from '../estimate-types.ts';
import type { Scenario } from '../input.ts';
import type { Against } from './against.ts';

export interface AskedScenarios {
  readonly against: (scenario: Scenario) => Against;
  /** What could not be computed in the scenarios asked for so far: it is missing from every total of theirs. */
  readonly failed: () => readonly FailedCell[];
}

/** Scenarios against today out of one reckoning, with word of what failed in those that were asked for, and only those. */
export function askedScenarios(reckoning: {
  readonly against: (scenario: Scenario) => Against;
  readonly failed: (scenario: Scenario) => readonly FailedCell[];
}): AskedScenarios {
  const asked = new Set<Scenario>();
  return {
    against: (scenario) => {
      asked.add(scenario);
      return reckoning.against(scenario);
    },
    failed: () => [...asked].flatMap((scenario) => reckoning.failed(scenario))
  };
}
