import type { EstimateInput, Scenario } from '../input.ts';
import { baselineOf } from '../baseline-of.ts';
import { plain } from '../working/plain.ts';
import { fleetOf } from './standing.ts';

type Asked = Pick<EstimateInput, 'machines' | 'scenarios' | 'theatreGroups' | 'caseMix' | 'accounting'>;

/** Theatre group id → theatres in which another machine stands when all has settled; groups that keep theirs are absent. */
export function theatresMovedBy(input: Asked, scenario: Scenario): ReadonlyMap<string, number> {
  const periods = fleetOf(plain, input, baselineOf(input)).periods(scenario);
  const moved = new Map<string, number>();
  for (const { group, hasCome, theatres } of (periods.at(-1) ?? periods[0]).standings)
    if (hasCome) moved.set(group.id, (moved.get(group.id) ?? 0) + plain.value(theatres));
  return moved;
}
