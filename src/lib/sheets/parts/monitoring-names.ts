/** What the items and documents of the monitoring list are called on screen. */
import type { MonitoringNeed } from '#lib/calc/estimate-types.ts';
import type { MonitoringDocument, MonitoringRule } from '#lib/calc/reference/standards/monitoring-rule.ts';
import { monitoringDocuments } from '#lib/calc/reference/standards/standards.ts';
import type { StandardId } from '#lib/calc/reference/standards/standards.ts';
import { positionsOn } from '#lib/calc/reference/standards/disagreements.ts';
import { monitorItemOptions, monitoringStandardOptions } from '#lib/workbook/fields.ts';

type Item = MonitoringNeed['item'];

const measures: Readonly<Partial<Record<Item, string>>> = {
  'anaesthesia-provider': 'Anaesthesia provider present',
  'co2-at-intubation': 'Carbon dioxide detected at intubation',
  'leak-test': 'Leak test before each case',
  'absorbent-check': 'Absorbent checked fresh and moist',
  'sevoflurane-flow-caution': 'Flow caution of the sevoflurane label'
};

export const itemName = (item: string): string =>
  measures[item as Item] ?? monitorItemOptions.find((option) => option.id === item)?.label ?? item;

/** The name of an item within a sentence: what is no abbreviation begins small. */
export const itemWithin = (item: string): string => {
  const name = itemName(item);
  return /^\p{Lu}\p{Lu}/u.test(name) ? name : name.charAt(0).toLowerCase() + name.slice(1);
};

export const layerNames: Readonly<Record<MonitoringNeed['layer'], string>> = {
  standard: 'The chosen standard',
  'low-flow': 'On top of it, for low flow',
  laparoscopy: 'On top of it, for pneumoperitoneum',
  label: 'From a label'
};

/** The rule of this id. */
export function ruleOf(ruleId: string): MonitoringRule {
  for (const document of monitoringDocuments) {
    const rule = document.rules.find((each) => each.id === ruleId);
    if (rule !== undefined) return rule;
  }
  throw new Error(`There is no monitoring rule “${ruleId}”.`);
}

/** The documents behind some needs. */
export function documentsOf(needs: readonly MonitoringNeed[]): readonly MonitoringDocument[] {
  const named = new Set(needs.map((need) => need.standard));
  return monitoringDocuments.filter((document) => named.has(document.id));
}

/** What each standard says on an item, in a few words. */
export function positionsInWords(item: Item): string {
  const positions = positionsOn(item);
  return (Object.keys(positions) as StandardId[])
    .map((id) => {
      const name = monitoringStandardOptions.find((option) => option.id === id)?.label ?? id;
      const rule = positions[id];
      return rule === null ? `${name}: not named` : `${name}: ${rule.level}, “${rule.word}”`;
    })
    .join(' · ');
}
