/** Lung volumes, dead space and what ties alveolar ventilation to CO2. */
import { constant } from './constant.ts';
import type { Source } from './constant.ts';
import { usLabel } from './sources.ts';

const hewlett1974: Source = {
  authors: 'Hewlett AM, Hulands GH, Nunn JF, Milledge JS',
  title: 'Functional residual capacity during anaesthesia III: Artificial ventilation',
  container: 'Br J Anaesth',
  year: 1974,
  locator: '46:495-503',
  doi: '10.1093/bja/46.7.495'
};
const fletcherJonson1981: Source = {
  authors: 'Fletcher R, Jonson B',
  title:
    'Prediction of the physiological dead space/tidal volume ratio during anaesthesia/IPPV from simple pre-operative tests',
  year: 1981
};

export const lungConstants = [
  constant({
    id: 'lung.functional-residual-capacity',
    name: 'Functional residual capacity',
    value: 2.5,
    printed: '2.5',
    unit: 'L',
    conditions: '70 kg adult, anaesthetised, supine; scales with weight / 70',
    source: { title: 'Textbooks of anaesthesia (not noted which)', locator: 'lung volumes' },
    evidence: 'memory',
    alternatives: [
      {
        value: 1.63,
        source: hewlett1974,
        evidence: 'computed',
        whyNot:
          'Follows from the fall in 13 patients, 297 mL or 15.4 %: 1.93 L awake, 1.63 L under anaesthesia. The values of a published set stay as they are.'
      }
    ],
    preferredBecause:
      'It has stood in this set from the start, and so keeps the answers of old workbooks, though the measurement that was found is lower. Override to see what it does.',
    kind: 'lung-volume'
  }),
  constant({
    id: 'lung.functional-residual-capacity-fall',
    name: 'Fall of functional residual capacity at induction',
    value: 297,
    printed: '297 (15.4 %)',
    unit: 'mL',
    conditions: 'adult; 13 patients',
    source: hewlett1974,
    evidence: 'read',
    kind: 'lung-volume-change',
    unusedBecause:
      'Kept for comparison: the functional residual capacity in use is already that of the anaesthetised adult.'
  }),
  constant({
    id: 'lung.tissue-and-blood',
    name: 'Lung tissue and blood that take up agent with the lung',
    value: 0.6,
    printed: '0.6',
    unit: 'L',
    conditions: '70 kg adult; multiplied by the blood/gas coefficient; scales with weight / 70',
    source: { title: 'Planning value of this project', locator: 'no published figure was found' },
    evidence: 'memory',
    kind: 'lung-volume'
  }),
  constant({
    id: 'lung.dead-space',
    name: 'Dead-space share of minute ventilation',
    value: 33,
    printed: '33',
    unit: '%',
    conditions: 'adult',
    source: { title: 'Textbooks of anaesthesia (not noted which)', locator: 'dead space' },
    evidence: 'memory',
    kind: 'dead-space',
    alternatives: [
      {
        value: 33,
        printed: '0.33',
        source: {
          title: 'US EPA high-throughput toxicokinetics data set',
          container: 'repository USEPA/CompTox-ExpoCast-httk',
          locator: 'Basic-Physiology.txt, alveolar dead-space share'
        },
        evidence: 'read',
        whyNot: 'The same figure, stated for the alveolar dead space alone.'
      },
      {
        value: 30,
        printed: '0.3',
        source: {
          authors: 'Royal College of Surgeons of England, Research Department of Anaesthetics',
          title: 'Study of 12 anaesthetised patients, published by the American Physiological Society',
          locator: 'submitted 25 September 1959; abstract'
        },
        evidence: 'read',
        whyNot: 'Measured below the carina, so without the airway outside the chest and its connections.'
      },
      {
        value: 31,
        printed: '31 (SD 7)',
        source: fletcherJonson1981,
        evidence: 'read',
        whyNot: 'Measured in 18 ventilated adults who did not smoke.'
      },
      {
        value: 40,
        printed: '40 (SD 10)',
        source: fletcherJonson1981,
        evidence: 'read',
        whyNot: 'Measured in 15 ventilated adults who smoked.'
      }
    ],
    preferredBecause:
      'It lies between what was measured in smokers and in others, and a data set agrees on it; the choice moves the absorbent use by a few percent only.'
  }),
  constant({
    id: 'alveolar-ventilation.factor',
    name: 'Factor of the alveolar ventilation equation',
    value: 0.863,
    printed: '0.863',
    unit: 'mmHg L/mL',
    conditions:
      'ventilation at body temperature, saturated; CO2 at standard temperature and pressure, dry: 760 mmHg · 310 K / 273 K / 1000',
    source: {
      title: 'Ozemedicine, reference notes of emergency medicine',
      locator: 'hypoxia: conversion constant between CO2 production and alveolar ventilation'
    },
    evidence: 'second-hand',
    kind: 'alveolar-ventilation-factor'
  }),
  constant({
    id: 'arterial-co2',
    name: 'Arterial CO2 tension that ventilation is set to',
    value: 40,
    printed: '35–45',
    unit: 'mmHg',
    conditions: 'the middle of the range that the label prefers for ventilation',
    source: usLabel('enflurane', 'dosage and administration: maintenance'),
    evidence: 'read',
    kind: 'co2-tension'
  })
];
