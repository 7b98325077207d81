/** How many theatres lack an item, as far as the stock and the machines tell. */
import { monitorItems } from '../input.ts';
import type { MonitorItem, MonitorStock } from '../input.ts';
import type { RuleItem } from '../reference/standards/monitoring-rule.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';

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

export const theatresWithout = formula<{ theatres: number; equipped: number; brought: number }>({
  id: 'monitoring.theatres-without',
  yields: 'Theatres that lack the monitor',
  words:
    'Theatres less those that have it: by the stock or by the machines, whichever serves more, as the two may stand in the same theatres; never below 0.',
  expression: 'max(0, T - max(e, m))',
  inputs: {
    theatres: { symbol: 'T', unit: '1', words: 'theatres' },
    equipped: { symbol: 'e', unit: '1', words: 'theatres equipped, by the stock of monitors' },
    brought: { symbol: 'm', unit: '1', words: 'machines that bring it with them' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ theatres, equipped, brought }) => Math.max(0, theatres - Math.max(equipped, brought))
});

/**
 * Theatres without the item, as `theatresWithout` has it. null: a measure, or the stock was not given and the machines
 * do not bring it to every theatre.
 */
export function theatresMissing(item: RuleItem, { theatres, stock, builtIn }: Equipment): number | null {
  const device = deviceFor(item);
  if (device === null) return null;
  const equipped = stock.find((entry) => entry.item === device)?.theatresEquipped;
  const brought = builtIn.items.includes(device) ? builtIn.units : 0;
  if (equipped === undefined && brought < theatres) return null;
  return theatresWithout.compute({ theatres, equipped: equipped ?? 0, brought });
}

/**
 * `theatresMissing` as a quantity, for an item of which it gives a number.
 * @param machine id of the machine whose monitors are built in
 */
export function theatresLacking(
  r: Reckoner,
  device: MonitorItem,
  { theatres, stock, builtIn, machine }: Equipment & { readonly machine: string }
): Quantity {
  const entry = stock.find(({ item }) => item === device);
  return r.apply(theatresWithout, {
    theatres: r.cell(theatres, '1', 'site', 'theatres'),
    equipped:
      entry === undefined
        ? r.assumption(0, '1', 'The stock says nothing of it, and the machines bring it to every theatre.')
        : r.cell(entry.theatresEquipped, '1', 'monitors', device, 'theatresEquipped'),
    brought: builtIn.items.includes(device)
      ? r.cell(builtIn.units, '1', 'machines', machine, 'units')
      : r.assumption(0, '1', 'It is not built into the machines of this scenario.')
  });
}
