/** What the needs mean for a purchase: each required monitor once, however many rules ask for it. */
import type { MonitorItem } from '../input.ts';
import { meets } from './circumstance.ts';
import { rulesAsked, unitPriceOf } from './monitoring-needs.ts';
import type { MonitoringQuestion } from './monitoring-needs.ts';
import { deviceFor, theatresMissing } from './theatres-missing.ts';

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
export function monitorsToBuy(question: MonitoringQuestion): MonitorsToBuy {
  const toBuy = new Map<MonitorItem, MonitorToBuy>();
  const cannotTell = new Set<MonitorItem>();
  for (const { document, rule } of rulesAsked(question)) {
    const device = deviceFor(rule.item);
    if (device === null || device !== rule.item || rule.level !== 'required') continue;
    // Few devices are lacking: the rules of the others are not put to the rows at all.
    const missing = theatresMissing(device, question);
    if (missing === 0 || !question.cases.some((row) => meets(row, rule.when) === 'yes')) continue;
    if (missing === null) cannotTell.add(device);
    const unitPrice = unitPriceOf(device, question);
    if (missing === null || unitPrice === null) continue;
    const requiredBy = [...(toBuy.get(device)?.requiredBy ?? []), document.id];
    toBuy.set(device, { item: device, theatresMissing: missing, unitPrice, requiredBy });
  }
  return { toBuy: [...toBuy.values()], cannotTell: [...cannotTell] };
}
