import { choiceOfGroups } from './choice-of-groups.ts';
import { nextSet } from './next-set.ts';
import { nitrousOxideUptake } from './nitrous-oxide-uptake.ts';
import { oneWorkEach } from './one-work-each.ts';
import { referenceSet2026Second } from './reference-set-2026-2.ts';
import type { ReferenceSet } from './reference-set.ts';

/**
 * The third set: nitrous oxide fills the circuit, is taken up, and concentrates the agent beside it; sets of
 * MAC and of solubility can be chosen. A citation that named two works names one.
 */
export const referenceSet2026Third: ReferenceSet = nextSet(referenceSet2026Second, {
  id: '2026-3',
  date: '2026-11-28',
  records: [...nitrousOxideUptake, ...choiceOfGroups, ...oneWorkEach(referenceSet2026Second)]
});
