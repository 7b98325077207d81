import type { Constant } from './constant.ts';
import type { ReferenceSet } from './reference-set.ts';

/**
 * The workplace limits that apply to an agent or to nitrous oxide, in every country on record: its own, and for a
 * halogenated agent those set for all of them together. Each says its averaging time in `conditions`; unit ppm. An
 * empty list means that no limit was found, not that none is in force.
 */
export function exposureLimitsFor(set: ReferenceSet, subject: string): Constant[] {
  const group = subject === 'nitrous-oxide' ? 'nitrous-oxide-over-8-h' : 'halogenated-agents';
  return [...set.constants.values()].filter(
    ({ kind, id }) => kind === 'exposure-limit' && (id.endsWith(`.${subject}`) || id.endsWith(`.${group}`))
  );
}
