/** Lung volumes, dead space and what ties alveolar ventilation to CO2. */
import { constant } from './constant.ts';
import { article, commonPractice } from './sources.ts';

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
    kind: 'lung-volume'
  }),
  constant({
    id: 'lung.functional-residual-capacity-fall',
    name: 'Fall of functional residual capacity at induction',
    value: 297,
    printed: '297 (15.4 %)',
    unit: 'mL',
    conditions: 'adult; 13 patients',
    source: article({
      authors: 'Hewlett AM et al.',
      container: 'Br J Anaesth',
      year: 1974,
      locator: '46:495'
    }),
    evidence: 'read',
    kind: 'lung-volume-change',
    unusedBecause:
      'Shown beside the functional residual capacity, which is already that of the anaesthetised adult.'
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
        source: { title: 'Study of 12 patients (citation not noted)', year: 1960, locator: '1959-60' },
        evidence: 'read',
        whyNot: 'Measured below the carina, so without the airway outside the chest and its connections.'
      }
    ],
    preferredBecause:
      'Textbook and data set agree on it; the choice moves the absorbent use by a few percent only.'
  }),
  constant({
    id: 'alveolar-ventilation.factor',
    name: 'Factor of the alveolar ventilation equation',
    value: 0.863,
    printed: '0.863',
    unit: 'mmHg L/mL',
    conditions: 'ventilation at body temperature, saturated; CO2 at standard temperature and pressure, dry',
    source: { title: 'Textbooks of physiology (not noted which)', locator: 'alveolar ventilation equation' },
    evidence: 'memory',
    kind: 'alveolar-ventilation-factor'
  }),
  constant({
    id: 'arterial-co2',
    name: 'Arterial CO2 tension that ventilation is set to',
    value: 40,
    printed: '40',
    unit: 'mmHg',
    source: commonPractice,
    evidence: 'memory',
    kind: 'co2-tension'
  })
];
