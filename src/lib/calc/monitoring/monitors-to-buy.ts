/** What a list of needs means for a purchase: each required monitor once, however many rules ask for it. */
import type { MonitorItem } from '../input.ts';
import { deviceFor } from './theatres-missing.ts';
import type { UnpricedNeed } from './monitoring-needs.ts';

export interface MonitorToBuy {
  readonly item: MonitorItem;
  readonly theatresMissing: number;
  /** Decimal as text. */
  readonly unitPrice: string;
  /** Ids of the standards and layers that require it, e.g. `cas`, `low-flow`. */
  readonly requiredBy: readonly string[];
}

export interface MonitorsToBuy {
  readonly toBuy: readonly MonitorToBuy[];
  /** Required monitors of which nobody can tell whether a theatre lacks them: their stock was not given. */
  readonly cannotTell: readonly MonitorItem[];
}

/**
 * The monitors that are required and lacking. Only what a row certainly triggers counts: recommended items, and those
 * that depend on the patient of the day, are the user's decision.
 */
export function monitorsToBuy(needs: readonly UnpricedNeed[]): MonitorsToBuy {
  const toBuy = new Map<MonitorItem, MonitorToBuy>();
  const cannotTell = new Set<MonitorItem>();
  for (const { item, level, applies, standard, theatresMissing, unitPrice } of needs) {
    const device = deviceFor(item);
    if (device === null || device !== item || level !== 'required' || applies !== 'yes') continue;
    if (theatresMissing === null) cannotTell.add(device);
    if (theatresMissing === null || theatresMissing === 0 || unitPrice === null) continue;
    const requiredBy = [...(toBuy.get(device)?.requiredBy ?? []), standard];
    toBuy.set(device, { item: device, theatresMissing, unitPrice, requiredBy });
  }
  return { toBuy: [...toBuy.values()], cannotTell: [...cannotTell] };
}
