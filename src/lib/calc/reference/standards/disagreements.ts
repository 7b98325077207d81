/** Where the standards are known to differ, so that a page shows it and does not hide it behind one choice. */
import type { MonitoringRule, RuleItem } from './monitoring-rule.ts';
import { standards } from './standards.ts';
import type { StandardId } from './standards.ts';

export interface Disagreement {
  readonly item: RuleItem;
  /** What they disagree about, as one sentence. */
  readonly statement: string;
}

export const disagreements: readonly Disagreement[] = [
  {
    item: 'agent-concentration',
    statement:
      'Whether the concentration of a volatile agent must be measured: CAS and ANZCA require it, the Association of Anaesthetists says “should”, and the ASA’s basic list does not name it.'
  },
  {
    item: 'neuromuscular',
    statement:
      'How firmly neuromuscular monitoring is asked for, and whether it must be quantitative: JSA requires it with every blocker, CAS where appropriate, others recommend it, ANZCA’s rows that were read do not name it.'
  },
  {
    item: 'temperature',
    statement:
      'Whether temperature is measured in everyone (JSA), in general anaesthesia (Association of Anaesthetists), when a change is expected (ASA), or has to be at hand (CAS, ANZCA).'
  },
  {
    item: 'ecg',
    statement:
      'Whether the ECG must be on: most require it, WHO-WFSA recommends it, ANZCA wants it available.'
  },
  {
    item: 'non-invasive-blood-pressure',
    statement:
      'How often blood pressure is taken: at least every 5 min in most standards, every 10 min where it is used in ANZCA’s.'
  }
];

/** What each standard says on an item; null where it does not name it. */
export function positionsOn(item: RuleItem): Readonly<Record<StandardId, MonitoringRule | null>> {
  const entries = Object.entries(standards).map(([id, documents]) => [
    id,
    documents.flatMap(({ rules }) => rules).find((rule) => rule.item === item) ?? null
  ]);
  return Object.fromEntries(entries) as Record<StandardId, MonitoringRule | null>;
}
