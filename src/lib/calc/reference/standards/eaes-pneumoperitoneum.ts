import type { MonitoringDocument } from './monitoring-rule.ts';

/** Laparoscopy with CO2: on top of whichever standard is chosen. */
export const eaesPneumoperitoneum: MonitoringDocument = {
  id: 'eaes-pneumoperitoneum',
  name: 'EAES clinical practice guideline on the pneumoperitoneum, 2002',
  layer: 'laparoscopy',
  source: {
    authors: 'Neudecker J et al.',
    title:
      'The European Association for Endoscopic Surgery clinical practice guideline on the pneumoperitoneum for laparoscopic surgery',
    container: 'Surg Endosc',
    year: 2002,
    locator: '16:1121-43',
    doi: '10.1007/s00464-001-9166-7'
  },
  limits: 'Read second-hand.',
  rules: [
    {
      id: 'eaes-pneumoperitoneum.capnography',
      item: 'capnography',
      level: 'required',
      word: 'mandatory (grade A)',
      when: ['co2-pneumoperitoneum'],
      detail: 'Minute ventilation is raised to keep CO2 normal.',
      evidence: 'second-hand'
    },
    {
      id: 'eaes-pneumoperitoneum.arterial-blood-gas',
      item: 'arterial-blood-gas',
      level: 'recommended',
      word: 'recommended (grade A)',
      when: ['co2-pneumoperitoneum', 'cardiopulmonary-disease'],
      detail: 'During and after the operation.',
      evidence: 'second-hand'
    }
  ]
};
