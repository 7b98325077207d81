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
  brings:
    'Nitrous oxide is followed: it fills the circuit and is taken up, which leaves less gas to spill and concentrates the agent; where the flow follows the need, its use is what that takes. A set of MAC and the solubility in blood can be chosen.',
  records: [...nitrousOxideUptake, ...choiceOfGroups, ...oneWorkEach(referenceSet2026Second)]
});
