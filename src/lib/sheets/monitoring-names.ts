/** What the items and documents of the monitoring list are called on screen. */
import type { MonitoringNeed } from '#lib/calc/estimate-types.ts';
import type { Evidence, Source } from '#lib/calc/reference/constant.ts';
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

export const layerNames: Readonly<Record<MonitoringNeed['layer'], string>> = {
  standard: 'The chosen standard',
  'low-flow': 'On top of it, for low flow',
  laparoscopy: 'On top of it, for pneumoperitoneum',
  label: 'From a label'
};

/** The document and evidence behind a rule. */
export function ruleOf(ruleId: string): { documentTitle: string; source: Source; evidence: Evidence } {
  for (const document of monitoringDocuments) {
    const rule = document.rules.find((each) => each.id === ruleId);
    if (rule !== undefined)
      return { documentTitle: document.name, source: document.source, evidence: rule.evidence };
  }
  throw new Error(`There is no monitoring rule “${ruleId}”.`);
}

/** What the texts behind the needs could not tell, one sentence each. */
export function limitsOf(needs: readonly MonitoringNeed[]): readonly string[] {
  const named = new Set(needs.map((need) => need.standard));
  return monitoringDocuments.filter((document) => named.has(document.id)).map((document) => document.limits);
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
