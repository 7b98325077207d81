/** How long each phase of a plan lasts in a case. */
import { formula } from '../working/formula.ts';

/** The phase that takes the rest of the case. */
export const restOfCase = formula<{ caseMinutes: number; otherMinutes: readonly number[] }>({
  id: 'case.rest-of-case',
  yields: 'Minutes of the open phase',
  words: 'what the other phases leave of the case; never below 0',
  expression: 'max(0, t - sum(p))',
  inputs: {
    caseMinutes: { symbol: 't', unit: 'min', words: 'minutes of the case' },
    otherMinutes: { symbol: 'p', unit: 'min', words: 'minutes of the other phases' }
  },
  unit: 'min',
  source: 'definition',
  compute: ({ caseMinutes, otherMinutes }) => {
    let sum = 0;
    for (const minutes of otherMinutes) sum += minutes;
    return Math.max(0, caseMinutes - sum);
  }
});

/** A phase of a plan that is longer than the case: cut from the end. */
export const cutPhase = formula<{
  plannedMinutes: number;
  caseMinutes: number;
  earlierMinutes: readonly number[];
}>({
  id: 'case.cut-phase',
  yields: 'Minutes of a phase in a case shorter than the plan',
  words: 'its planned minutes, or what the phases before it leave of the case',
  expression: 'max(0, min(p, t - sum(q)))',
  inputs: {
    plannedMinutes: { symbol: 'p', unit: 'min', words: 'planned minutes' },
    caseMinutes: { symbol: 't', unit: 'min', words: 'minutes of the case' },
    earlierMinutes: { symbol: 'q', unit: 'min', words: 'planned minutes of the phases before it' }
  },
  unit: 'min',
  source: 'definition',
  compute: ({ plannedMinutes, caseMinutes, earlierMinutes }) => {
    let sum = 0;
    for (const minutes of earlierMinutes) sum += minutes;
    return Math.max(0, Math.min(plannedMinutes, caseMinutes - sum));
  }
});
