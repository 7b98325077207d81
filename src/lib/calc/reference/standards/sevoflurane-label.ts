import type { MonitoringDocument } from './monitoring-rule.ts';

/** The flow caution of the label: a caution, no monitor. */
export const sevofluraneLabel: MonitoringDocument = {
  id: 'sevoflurane-label',
  name: 'Sevoflurane label, United States',
  layer: 'label',
  source: { title: 'US prescribing information, sevoflurane', locator: 'fresh gas flow' },
  limits:
    'One country’s label, contested by newer statements (ASA 2023; Anesth Analg 2021;132:993) for absorbents without strong base. The local label and local policy decide.',
  rules: [
    {
      id: 'sevoflurane-label.sevoflurane-flow-caution',
      item: 'sevoflurane-flow-caution',
      level: 'caution',
      word: 'not more than 2 MAC-hours at 1 to < 2 L/min; below 1 L/min not recommended',
      when: ['sevoflurane', 'breathing-system', 'flow-below-2'],
      detail:
        'The reason, from memory: what forms of sevoflurane in absorbents with strong base (compound A). Contested by newer statements; the local label and policy decide.',
      evidence: 'read'
    }
  ]
};
