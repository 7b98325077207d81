/** How many theatres lack an item, as far as the stock and the machines tell. */
import { monitorItems } from '../input.ts';
import type { MonitorItem, TheatreGroup } from '../input.ts';
import type { RuleItem } from '../reference/standards/monitoring-rule.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';

/** The stock of a theatre group: it is placed where it is needed within the group, and nowhere else. */
export type StockOfGroup = Pick<TheatreGroup, 'id' | 'monitors'>;

/** Theatres of a group with one machine. */
export interface EquippedPlace {
  readonly group: StockOfGroup;
  readonly theatres: number;
  /** Monitors that the machine has built in. */
  readonly builtIn: readonly MonitorItem[];
}

/** The device that an item needs; null for a measure that none is bought for. */
export function deviceFor(item: RuleItem): MonitorItem | null {
  // A capnograph detects CO2 at intubation, so a theatre that has one is served.
  if (item === 'co2-at-intubation') return 'capnography';
  return monitorItems.find((device) => device === item) ?? null;
}

export const theatresWithout = formula<{ needing: readonly number[]; equipped: number }>({
  id: 'monitoring.theatres-without',
  yields: 'Theatres that lack the monitor',
  words:
    'Theatres that need it and whose machine does not bring it, less those that can have it from the stock, which is placed where it is needed; never below 0.',
  expression: 'max(0, sum(n) - e)',
  inputs: {
    needing: { symbol: 'n', unit: '1', words: 'theatres that need it from elsewhere than their machine' },
    equipped: { symbol: 'e', unit: '1', words: 'theatres equipped, by the stock of monitors' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ needing, equipped }) => Math.max(0, needing.reduce((sum, next) => sum + next, 0) - equipped)
});

/** Of places in which an item is asked for, those whose machine does not bring what it needs. */
export const withoutBuiltIn = <P extends EquippedPlace>(item: RuleItem, asking: readonly P[]): P[] =>
  asking.filter(({ builtIn }) => !builtIn.some((device) => device === deviceFor(item)));

/** Things of one group together, the groups in order of first mention. */
function byGroup<T extends { readonly group: StockOfGroup }>(all: readonly T[]): [StockOfGroup, T[]][] {
  const groups = new Map<string, [StockOfGroup, T[]]>();
  for (const one of all) {
    const known = groups.get(one.group.id);
    if (known === undefined) groups.set(one.group.id, [one.group, [one]]);
    else known[1].push(one);
  }
  return [...groups.values()];
}

/**
 * Theatres without the item, of the places in which it is asked for: those of each group as `theatresWithout` has it,
 * added up. null: a measure, or the stock of a group was not given and its machines do not bring it to all of these.
 */
export function theatresMissing(
  item: RuleItem,
  { asking }: { asking: readonly EquippedPlace[] }
): number | null {
  const device = deviceFor(item);
  if (device === null) return null;
  let missing = 0;
  for (const [group, places] of byGroup(withoutBuiltIn(item, asking))) {
    const needing = places.map(({ theatres }) => theatres);
    const equipped = group.monitors[device];
    if (equipped === undefined && needing.some((theatres) => theatres > 0)) return null;
    missing += theatresWithout.compute({ needing, equipped: equipped ?? 0 });
  }
  return missing;
}

export const theatresOfAllGroups = formula<{ missing: readonly number[] }>({
  id: 'monitoring.theatres-of-all-groups',
  yields: 'Theatres that lack the monitor',
  words: 'Theatres of each group that lack it, added up.',
  expression: 'sum(m)',
  inputs: { missing: { symbol: 'm', unit: '1', words: 'theatres of a group that lack it' } },
  unit: '1',
  source: 'definition',
  compute: ({ missing }) => missing.reduce((sum, next) => sum + next, 0)
});

/** `theatresMissing` as a quantity, for a device of which it gives a number. */
export function theatresLacking(
  r: Reckoner,
  device: MonitorItem,
  { needing }: { needing: readonly { readonly group: StockOfGroup; readonly theatres: Quantity }[] }
): Quantity {
  const nowhere = r.assumption(
    0,
    '1',
    'The stock says nothing of it, and the machines bring it to every theatre.'
  );
  const missing = byGroup(needing).map(([group, places]) => {
    const equipped = group.monitors[device];
    return r.apply(theatresWithout, {
      needing: places.map(({ theatres }) => theatres),
      equipped:
        equipped === undefined
          ? nowhere
          : r.cell(equipped, '1', 'theatreGroups', group.id, 'monitors', device)
    });
  });
  const [first] = missing;
  if (first === undefined) return r.apply(theatresWithout, { needing: [], equipped: nowhere });
  return missing.length === 1 ? first : r.apply(theatresOfAllGroups, { missing });
}
