import type { MonitoringDocument } from './monitoring-rule.ts';

export const cas: MonitoringDocument = {
  id: 'cas',
  name: "Canadian Anesthesiologists' Society, Guidelines to the Practice of Anesthesia, 2023",
  layer: 'standard',
  source: {
    authors: 'Dobson G et al.',
    title: 'Guidelines to the Practice of Anesthesia: Revised Edition 2023',
    container: 'Can J Anesth',
    year: 2023,
    locator: '70:16-55',
    doi: '10.1007/s12630-022-02368-0'
  },
  limits: 'Read second-hand.',
  rules: [
    {
      id: 'cas.pulse-oximetry',
      item: 'pulse-oximetry',
      level: 'required',
      word: 'required',
      when: ['every'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'cas.non-invasive-blood-pressure',
      item: 'non-invasive-blood-pressure',
      level: 'required',
      word: 'required',
      when: ['every'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'cas.ecg',
      item: 'ecg',
      level: 'required',
      word: 'required',
      when: ['every'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'cas.capnography',
      item: 'capnography',
      level: 'required',
      word: 'required',
      when: ['general-anaesthesia'],
      detail: 'Also with moderate to deep sedation.',
      evidence: 'second-hand'
    },
    {
      id: 'cas.agent-concentration',
      item: 'agent-concentration',
      level: 'required',
      word: 'required',
      when: ['volatile-agent'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'cas.airway-pressure',
      item: 'airway-pressure',
      level: 'required',
      word: 'required',
      when: ['ventilator'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'cas.exhaled-volume',
      item: 'exhaled-volume',
      level: 'required',
      word: 'required',
      when: ['ventilator'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'cas.neuromuscular',
      item: 'neuromuscular',
      level: 'required',
      word: 'required where appropriate',
      when: ['neuromuscular-block'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'cas.temperature',
      item: 'temperature',
      level: 'available',
      word: 'exclusively available',
      when: ['every'],
      detail: 'One for each patient, at hand.',
      evidence: 'second-hand'
    }
  ]
};
