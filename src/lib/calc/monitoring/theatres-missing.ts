/** How many theatres lack an item, as far as the stock and the machines tell. */
import { monitorItems } from '../input.ts';
import type { MonitorItem, MonitorStock } from '../input.ts';
import type { RuleItem } from '../reference/standards/monitoring-rule.ts';

/** Monitors that a machine has built in, and how many of the machines there are. */
export interface BuiltIn {
  readonly items: readonly MonitorItem[];
  readonly units: number;
}

export interface Equipment {
  readonly theatres: number;
  readonly stock: readonly MonitorStock[];
  readonly builtIn: BuiltIn;
}

/** The device that an item needs; null for a measure that none is bought for. */
export function deviceFor(item: RuleItem): MonitorItem | null {
  // A capnograph detects CO2 at intubation, so a theatre that has one is served.
  if (item === 'co2-at-intubation') return 'capnography';
  return monitorItems.find((device) => device === item) ?? null;
}

/**
 * Theatres without the item: theatres − the larger of those equipped and the machines that bring it, never below 0.
 * The two may stand in the same theatres, so they are not added. null: a measure, or the stock was not given and the
 * machines do not bring it to every theatre.
 */
export function theatresMissing(item: RuleItem, { theatres, stock, builtIn }: Equipment): number | null {
  const device = deviceFor(item);
  if (device === null) return null;
  const equipped = stock.find((entry) => entry.item === device)?.theatresEquipped;
  const brought = builtIn.items.includes(device) ? builtIn.units : 0;
  if (equipped === undefined) return brought >= theatres ? 0 : null;
  return Math.max(0, theatres - Math.max(equipped, brought));
}
