/** Monitors that one theatre group has and does not need, and another needs and lacks: how they could be placed. */
import type { MonitorItem } from '../input.ts';
import { meets } from './circumstance.ts';
import type { MonitoredPlace, MonitoringQuestion } from './monitoring-needs.ts';
import { rulesAsked } from './monitoring-needs.ts';
import { deviceFor, withoutBuiltIn } from './theatres-missing.ts';

/** Monitors of one kind that could go from a group to another. */
export interface Placing {
  readonly item: MonitorItem;
  readonly from: string;
  readonly to: string;
  readonly number: number;
}

/**
 * The placing of required monitors that leaves fewest theatres without: what a group has beyond the theatres in which it
 * is asked for and not built in, to groups that lack it, in their order. Counts alone matter, so first come, first served
 * leaves as few gaps as any other way. A proposal: no figure of the estimate rests on it.
 */
export function proposedPlacing(question: MonitoringQuestion): Placing[] {
  const groups = new Map(question.places.map(({ group }) => [group.id, group]));
  const required = new Set(
    rulesAsked(question).flatMap(({ rule }) => {
      const device = rule.level === 'required' ? deviceFor(rule.item) : null;
      return device === null || device !== rule.item ? [] : [device];
    })
  );
  return [...required].flatMap((item) => {
    const rules = rulesAsked(question).filter(({ rule }) => rule.level === 'required' && rule.item === item);
    const asks = ({ cases }: MonitoredPlace): boolean =>
      rules.some(({ rule }) => cases.some((row) => meets(row, rule.when) === 'yes'));
    const balance = [...groups.values()].map((group) => {
      const here = question.places.filter((place) => place.group.id === group.id && asks(place));
      const needing = withoutBuiltIn(item, here).reduce((sum, { theatres }) => sum + theatres, 0);
      return { id: group.id, spare: (group.monitors[item] ?? 0) - needing };
    });
    const placings: Placing[] = [];
    for (const lacking of balance)
      for (const giving of balance) {
        const number = Math.min(-lacking.spare, giving.spare);
        if (!(number > 0)) continue;
        placings.push({ item, from: giving.id, to: lacking.id, number });
        lacking.spare += number;
        giving.spare -= number;
      }
    return placings;
  });
}
