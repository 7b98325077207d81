import type { MonitoringDocument } from './monitoring-rule.ts';

export const associationOfAnaesthetists: MonitoringDocument = {
  id: 'association-of-anaesthetists',
  name: 'Association of Anaesthetists, recommendations for standards of monitoring, 2021',
  layer: 'standard',
  source: {
    authors: 'Klein AA et al.',
    title: 'Recommendations for standards of monitoring during anaesthesia and recovery 2021',
    container: 'Anaesthesia',
    year: 2021,
    locator: '76:1212-23',
    doi: '10.1111/anae.15501'
  },
  limits:
    'Read second-hand. Capnography is also a minimum where verbal contact is lost under regional anaesthesia: enter such cases as intravenous without an airway.',
  rules: [
    {
      id: 'association-of-anaesthetists.pulse-oximetry',
      item: 'pulse-oximetry',
      level: 'required',
      word: 'minimum',
      when: ['every'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'association-of-anaesthetists.non-invasive-blood-pressure',
      item: 'non-invasive-blood-pressure',
      level: 'required',
      word: 'minimum',
      when: ['every'],
      detail: 'Recorded at least every 5 min.',
      evidence: 'second-hand'
    },
    {
      id: 'association-of-anaesthetists.ecg',
      item: 'ecg',
      level: 'required',
      word: 'minimum',
      when: ['every'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'association-of-anaesthetists.capnography',
      item: 'capnography',
      level: 'required',
      word: 'minimum',
      when: ['general-anaesthesia'],
      detail: 'Also with sedation or regional anaesthesia once verbal contact is lost.',
      evidence: 'second-hand'
    },
    {
      id: 'association-of-anaesthetists.temperature',
      item: 'temperature',
      level: 'required',
      word: 'minimum',
      when: ['general-anaesthesia'],
      detail: 'Before induction, then every 30 min.',
      evidence: 'second-hand'
    },
    {
      id: 'association-of-anaesthetists.inspired-oxygen',
      item: 'inspired-oxygen',
      level: 'recommended',
      word: 'should',
      when: ['general-anaesthesia'],
      detail: 'Inspired and expired.',
      evidence: 'second-hand'
    },
    {
      id: 'association-of-anaesthetists.agent-concentration',
      item: 'agent-concentration',
      level: 'recommended',
      word: 'should',
      when: ['volatile-agent'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'association-of-anaesthetists.nitrous-oxide-concentration',
      item: 'nitrous-oxide-concentration',
      level: 'recommended',
      word: 'should',
      when: ['nitrous-oxide'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'association-of-anaesthetists.airway-pressure',
      item: 'airway-pressure',
      level: 'recommended',
      word: 'should',
      when: ['ventilator'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'association-of-anaesthetists.exhaled-volume',
      item: 'exhaled-volume',
      level: 'recommended',
      word: 'should',
      when: ['ventilator'],
      detail: 'Tidal volume and rate.',
      evidence: 'second-hand'
    },
    {
      id: 'association-of-anaesthetists.neuromuscular',
      item: 'neuromuscular',
      level: 'recommended',
      word: 'should',
      when: ['neuromuscular-block'],
      detail: 'Quantitative, throughout.',
      evidence: 'second-hand'
    },
    {
      id: 'association-of-anaesthetists.processed-eeg',
      item: 'processed-eeg',
      level: 'recommended',
      word: 'should',
      when: ['intravenous-anaesthesia', 'neuromuscular-block'],
      detail: '',
      evidence: 'second-hand'
    }
  ]
};
