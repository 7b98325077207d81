import type { MonitoringDocument } from './monitoring-rule.ts';

export const jsa: MonitoringDocument = {
  id: 'jsa',
  name: 'Japanese Society of Anesthesiologists, monitoring guideline, 2019',
  layer: 'standard',
  source: {
    authors: 'Japanese Society of Anesthesiologists',
    title: 'Guideline on monitoring for safe anaesthesia (in Japanese)',
    year: 2019,
    locator: 'revision of March 2019'
  },
  limits: 'Read second-hand.',
  rules: [
    {
      id: 'jsa.pulse-oximetry',
      item: 'pulse-oximetry',
      level: 'required',
      word: 'required',
      when: ['every'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'jsa.ecg',
      item: 'ecg',
      level: 'required',
      word: 'required',
      when: ['every'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'jsa.non-invasive-blood-pressure',
      item: 'non-invasive-blood-pressure',
      level: 'required',
      word: 'required',
      when: ['every'],
      detail: 'In principle every 5 min.',
      evidence: 'second-hand'
    },
    {
      id: 'jsa.capnography',
      item: 'capnography',
      level: 'required',
      word: 'required',
      when: ['general-anaesthesia'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'jsa.temperature',
      item: 'temperature',
      level: 'required',
      word: 'required',
      when: ['every'],
      detail: '',
      evidence: 'second-hand'
    },
    {
      id: 'jsa.neuromuscular',
      item: 'neuromuscular',
      level: 'required',
      word: 'required',
      when: ['neuromuscular-block'],
      detail: 'Where a blocker or its reversal is given.',
      evidence: 'second-hand'
    },
    {
      id: 'jsa.exhaled-volume',
      item: 'exhaled-volume',
      level: 'recommended',
      word: 'use as appropriate',
      when: ['ventilator'],
      detail: '',
      evidence: 'second-hand'
    }
  ]
};
