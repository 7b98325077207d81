/** What the needs mean for a purchase: each required monitor once, however many rules ask for it. */
import type { MonitorItem } from '../input.ts';
import { meets } from './circumstance.ts';
import { rulesAsked, unitPriceOf } from './monitoring-needs.ts';
import type { MonitoredPlace, MonitoringQuestion } from './monitoring-needs.ts';
import { deviceFor, theatresMissing } from './theatres-missing.ts';

export interface MonitorToBuy<P = MonitoredPlace> {
  readonly item: MonitorItem;
  readonly theatresMissing: number;
  /** The places in which it is required. */
  readonly asking: readonly P[];
  /** Decimal as text. */
  readonly unitPrice: string;
  /** Ids of the standards and layers that require it, e.g. `cas`, `low-flow`. */
  readonly requiredBy: readonly string[];
}

export interface MonitorsToBuy<P = MonitoredPlace> {
  readonly toBuy: readonly MonitorToBuy<P>[];
  /** Required monitors of which nobody can tell whether a theatre lacks them: their stock was not given. */
  readonly cannotTell: readonly MonitorItem[];
}

/**
 * The monitors that are required and lacking. Only what a row certainly triggers counts: recommended items, and those
 * that depend on the patient of the day, are the user's decision.
 */
export function monitorsToBuy<P extends MonitoredPlace>(question: MonitoringQuestion<P>): MonitorsToBuy<P> {
  const { places } = question;
  const required = new Map<MonitorItem, { asking: Set<P>; requiredBy: string[] }>();
  for (const { document, rule } of rulesAsked(question)) {
    const device = deviceFor(rule.item);
    if (device === null || device !== rule.item || rule.level !== 'required') continue;
    // Few devices are lacking: the rules of the others are not put to the rows at all.
    if (theatresMissing(device, { asking: places }) === 0) continue;
    const asking = places.filter(({ cases }) => cases.some((row) => meets(row, rule.when) === 'yes'));
    if (asking.length === 0) continue;
    const known = required.get(device) ?? { asking: new Set<P>(), requiredBy: [] };
    for (const place of asking) known.asking.add(place);
    known.requiredBy.push(document.id);
    required.set(device, known);
  }
  const toBuy: MonitorToBuy<P>[] = [];
  const cannotTell: MonitorItem[] = [];
  for (const [item, { asking, requiredBy }] of required) {
    const missing = theatresMissing(item, { asking: [...asking] });
    const unitPrice = unitPriceOf(item, question);
    if (missing === null) cannotTell.push(item);
    else if (missing > 0 && unitPrice !== null)
      toBuy.push({ item, theatresMissing: missing, asking: [...asking], unitPrice, requiredBy });
  }
  return { toBuy, cannotTell };
}
