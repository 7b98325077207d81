import type { MonitoringDocument } from './monitoring-rule.ts';

export const asa: MonitoringDocument = {
  id: 'asa',
  name: 'ASA Standards for Basic Anesthetic Monitoring, as affirmed in 2020',
  layer: 'standard',
  source: {
    authors: 'American Society of Anesthesiologists',
    title: 'Standards for Basic Anesthetic Monitoring',
    year: 2020,
    locator: 'Standard II: oxygenation, ventilation, circulation, body temperature'
  },
  limits:
    'Read second-hand, in the text of 2010 as affirmed in 2020. It was last amended in October 2025, and that text was not available: check it.',
  rules: [
    {
      id: 'asa.pulse-oximetry',
      item: 'pulse-oximetry',
      level: 'required',
      word: 'shall',
      when: ['every'],
      detail: 'With variable pitch tone and an audible low alarm.',
      evidence: 'second-hand'
    },
    {
      id: 'asa.capnography',
      item: 'capnography',
      level: 'required',
      word: 'shall',
      when: ['general-anaesthesia'],
      detail:
        'From placement of the airway to its removal; with moderate to deep sedation, exhaled CO2 is watched for.',
      evidence: 'second-hand'
    },
    {
      id: 'asa.inspired-oxygen',
      item: 'inspired-oxygen',
      level: 'required',
      word: 'shall',
      when: ['general-anaesthesia', 'breathing-system'],
      detail: 'With a low alarm, wherever an anaesthesia machine is used.',
      evidence: 'second-hand'
    },
    {
      id: 'asa.disconnect-alarm',
      item: 'disconnect-alarm',
      level: 'required',
      word: 'shall',
      when: ['ventilator'],
      detail: 'Audible.',
      evidence: 'second-hand'
    },
    {
      id: 'asa.ecg',
      item: 'ecg',
      level: 'required',
      word: 'shall',
      when: ['every'],
      detail: 'Continuously displayed.',
      evidence: 'second-hand'
    },
    {
      id: 'asa.non-invasive-blood-pressure',
      item: 'non-invasive-blood-pressure',
      level: 'required',
      word: 'shall',
      when: ['every'],
      detail: 'With heart rate, at least every 5 min.',
      evidence: 'second-hand'
    },
    {
      id: 'asa.temperature',
      item: 'temperature',
      level: 'required',
      word: 'shall, when triggered',
      when: ['temperature-change-expected'],
      detail: 'Where a change is intended, expected or suspected.',
      evidence: 'second-hand'
    },
    {
      id: 'asa.exhaled-volume',
      item: 'exhaled-volume',
      level: 'recommended',
      word: 'strongly encouraged',
      when: ['general-anaesthesia'],
      detail: '',
      evidence: 'second-hand'
    }
  ]
};
