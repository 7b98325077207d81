/** How many theatres lack an item, as far as the stock and the machines tell. */
import { monitorItems } from '../input.ts';
import type { MonitorItem, MonitorStock } from '../input.ts';
import type { RuleItem } from '../reference/standards/monitoring-rule.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';

/** Theatres with one machine. */
export interface EquippedPlace {
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

/**
 * Theatres without the item, of the places in which it is asked for, as `theatresWithout` has it. null: a measure, or the
 * stock was not given and the machines do not bring it to all of these theatres.
 */
export function theatresMissing(
  item: RuleItem,
  { asking, stock }: { asking: readonly EquippedPlace[]; stock: readonly MonitorStock[] }
): number | null {
  const device = deviceFor(item);
  if (device === null) return null;
  const needing = withoutBuiltIn(item, asking).map(({ theatres }) => theatres);
  const equipped = stock.find((entry) => entry.item === device)?.theatresEquipped;
  if (equipped === undefined && needing.some((theatres) => theatres > 0)) return null;
  return theatresWithout.compute({ needing, equipped: equipped ?? 0 });
}

/** `theatresMissing` as a quantity, for a device of which it gives a number. */
export function theatresLacking(
  r: Reckoner,
  device: MonitorItem,
  { needing, stock }: { needing: readonly Quantity[]; stock: readonly MonitorStock[] }
): Quantity {
  const entry = stock.find(({ item }) => item === device);
  return r.apply(theatresWithout, {
    needing,
    equipped:
      entry === undefined
        ? r.assumption(0, '1', 'The stock says nothing of it, and the machines bring it to every theatre.')
        : r.cell(entry.theatresEquipped, '1', 'monitors', device, 'theatresEquipped')
  });
}
