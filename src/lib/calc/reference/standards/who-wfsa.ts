import type { MonitoringDocument } from './monitoring-rule.ts';

export const whoWfsa: MonitoringDocument = {
  id: 'who-wfsa',
  name: 'WHO-WFSA International Standards for a Safe Practice of Anesthesia, 2018',
  layer: 'standard',
  source: {
    authors: 'Gelb AW et al.',
    title:
      'World Health Organization-World Federation of Societies of Anaesthesiologists (WHO-WFSA) International Standards for a Safe Practice of Anesthesia',
    container: 'Can J Anesth',
    year: 2018,
    locator: '65:698-708',
    doi: '10.1007/s12630-018-1111-5'
  },
  limits:
    'What is highly recommended was read. The recommended and suggested rows are from memory. Facilities of level 1 meet what is highly recommended, level 2 adds what is recommended, level 3 what is suggested.',
  rules: [
    {
      id: 'who-wfsa.anaesthesia-provider',
      item: 'anaesthesia-provider',
      level: 'required',
      word: 'highly recommended',
      when: ['every'],
      detail: 'Trained, vigilant and present throughout.',
      evidence: 'read'
    },
    {
      id: 'who-wfsa.pulse-oximetry',
      item: 'pulse-oximetry',
      level: 'required',
      word: 'highly recommended',
      when: ['every'],
      detail: 'Continuous.',
      evidence: 'read'
    },
    {
      id: 'who-wfsa.non-invasive-blood-pressure',
      item: 'non-invasive-blood-pressure',
      level: 'required',
      word: 'highly recommended',
      when: ['every'],
      detail: 'Intermittent, at least every 5 min.',
      evidence: 'read'
    },
    {
      id: 'who-wfsa.co2-at-intubation',
      item: 'co2-at-intubation',
      level: 'required',
      word: 'highly recommended',
      when: ['tracheal-tube'],
      detail: 'To confirm the place of the tube, together with auscultation; a capnograph serves.',
      evidence: 'read'
    },
    {
      id: 'who-wfsa.capnography',
      item: 'capnography',
      level: 'recommended',
      word: 'recommended',
      when: ['general-anaesthesia', 'airway-device'],
      detail: 'Continuous waveform.',
      evidence: 'memory'
    },
    {
      id: 'who-wfsa.inspired-oxygen',
      item: 'inspired-oxygen',
      level: 'recommended',
      word: 'recommended',
      when: ['breathing-system'],
      detail: 'With an audible low alarm.',
      evidence: 'memory'
    },
    {
      id: 'who-wfsa.ecg',
      item: 'ecg',
      level: 'recommended',
      word: 'recommended',
      when: ['every'],
      detail: '',
      evidence: 'memory'
    },
    {
      id: 'who-wfsa.disconnect-alarm',
      item: 'disconnect-alarm',
      level: 'recommended',
      word: 'recommended',
      when: ['ventilator'],
      detail: '',
      evidence: 'memory'
    },
    {
      id: 'who-wfsa.neuromuscular',
      item: 'neuromuscular',
      level: 'recommended',
      word: 'recommended',
      when: ['neuromuscular-block'],
      detail: 'A nerve stimulator.',
      evidence: 'memory'
    },
    {
      id: 'who-wfsa.processed-eeg',
      item: 'processed-eeg',
      level: 'suggested',
      word: 'suggested',
      when: ['general-anaesthesia', 'high-awareness-risk'],
      detail: '',
      evidence: 'memory'
    }
  ]
};
