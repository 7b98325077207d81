import type { MonitoringDocument } from './monitoring-rule.ts';

export const anzca: MonitoringDocument = {
  id: 'anzca',
  name: 'ANZCA PG18, guideline on monitoring during anaesthesia, 2017',
  layer: 'standard',
  source: {
    authors: 'Australian and New Zealand College of Anaesthetists',
    title: 'Guideline on monitoring during anaesthesia (PG18, formerly PS18)',
    year: 2017,
    locator: 'PG18'
  },
  limits:
    'Read second-hand. The rows that could be read speak of general anaesthesia and sedation; for regional anaesthesia without sedation the list is empty because nothing was read, not because nothing is asked.',
  rules: [
    {
      id: 'anzca.pulse-oximetry',
      item: 'pulse-oximetry',
      level: 'required',
      word: 'must',
      when: ['general-anaesthesia'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'anzca.inspired-oxygen',
      item: 'inspired-oxygen',
      level: 'required',
      word: 'must',
      when: ['breathing-system'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'anzca.capnography',
      item: 'capnography',
      level: 'required',
      word: 'must',
      when: ['general-anaesthesia'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'anzca.agent-concentration',
      item: 'agent-concentration',
      level: 'required',
      word: 'must',
      when: ['volatile-agent'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'anzca.disconnect-alarm',
      item: 'disconnect-alarm',
      level: 'required',
      word: 'must',
      when: ['ventilator'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'anzca.ecg',
      item: 'ecg',
      level: 'available',
      word: 'available',
      when: ['general-anaesthesia'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'anzca.non-invasive-blood-pressure',
      item: 'non-invasive-blood-pressure',
      level: 'available',
      word: 'available',
      when: ['general-anaesthesia'],
      detail: 'If used, at least every 10 min.',
      evidence: 'second-hand'
    },
    {
      id: 'anzca.temperature',
      item: 'temperature',
      level: 'available',
      word: 'available',
      when: ['general-anaesthesia'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'anzca.processed-eeg',
      item: 'processed-eeg',
      level: 'available',
      word: 'available',
      when: ['general-anaesthesia'],
      detail: '',
      evidence: 'second-hand'
    }
  ]
};
