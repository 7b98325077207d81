import type { MonitoringDocument } from './monitoring-rule.ts';

export const asaNeuromuscular: MonitoringDocument = {
  id: 'asa-neuromuscular',
  name: 'ASA guideline on monitoring of neuromuscular blockade, 2023',
  layer: 'standard',
  source: {
    authors: 'American Society of Anesthesiologists',
    title: 'Practice Guidelines for Monitoring and Antagonism of Neuromuscular Blockade',
    container: 'Anesthesiology',
    year: 2023,
    locator: '138:13-41'
  },
  limits: 'A guideline beside the basic standard; it recommends and does not require.',
  rules: [
    {
      id: 'asa-neuromuscular.neuromuscular',
      item: 'neuromuscular',
      level: 'recommended',
      word: 'recommend (strong)',
      when: ['neuromuscular-block'],
      detail: 'Quantitative; a train-of-four ratio of at least 0.9 before extubation.',
      evidence: 'read'
    }
  ]
};
