/**
 * Gas exchange and lung of the anaesthetised patient, as set 2026-2 has them: measured under anaesthesia, where the
 * first set had the awake adult's basal rate. Between the children's lines and the adult's curve lies a bridge.
 */
import { constant } from './constant.ts';
import type { Source } from './constant.ts';
import { article, lindahl1989, loweErnst1981 } from './sources.ts';

const briesenick2023 = article({
  authors: 'Briesenick L et al.',
  container: 'Anesth Analg',
  year: 2023,
  doi: '10.1213/ane.0000000000006343'
});
const inNitrousOxide: Source = {
  title:
    'Respiratory gas exchange under enflurane or isoflurane in nitrous oxide, spontaneous and controlled ventilation (German original, randomised)',
  locator: 'abstract; journal and year not shown by the index'
};
export const retroperitoneal2003 = article({
  container: 'Br J Anaesth',
  year: 2003,
  locator: '91:793-6',
  doi: '10.1093/bja/aeg270'
});
const thisProject: Source = {
  title: 'Choice of this project between published figures',
  locator: 'its parents, in this set'
};
const measuredPerSurface = {
  unit: 'mL/min/m2',
  kind: 'gas-exchange-per-surface',
  evidence: 'read',
  unusedBecause: 'A measurement by body surface, from which the coefficient by weight in use was chosen.'
} as const;

const surface = constant({
  id: 'body.standard-surface',
  name: 'Body surface of the adult of standard weight',
  value: 1.845,
  printed: '1.845',
  unit: 'm2',
  conditions: '70 kg, 175 cm; square root of weight × height / 3600',
  source: article({
    authors: 'Mosteller RD',
    container: 'N Engl J Med',
    year: 1987,
    locator: '317:1098'
  }),
  evidence: 'memory',
  kind: 'body-surface',
  unusedBecause: 'It turns measurements by body surface into those by weight.'
});
const oxygenByCalorimetry = constant({
  id: 'gas-exchange.oxygen.calorimetry',
  name: 'Oxygen consumption at incision, by indirect calorimetry',
  value: 98,
  printed: '98 (92–102)',
  conditions:
    '60 adults; 680 kcal a day and m2 are printed, the oxygen follows by Weir at a respiratory quotient of 0.8',
  source: briesenick2023,
  ...measuredPerSurface
});
const oxygenInNitrousOxide = constant({
  id: 'gas-exchange.oxygen.collected-gas',
  name: 'Oxygen consumption under enflurane or isoflurane, from collected gas',
  value: 100,
  printed: '100',
  conditions: '40 adults; no difference between agents or between spontaneous and controlled ventilation',
  source: inNitrousOxide,
  ...measuredPerSurface
});
const co2BeforeInsufflation = constant({
  id: 'gas-exchange.co2.before-insufflation',
  name: 'CO2 production under anaesthesia, before insufflation',
  value: 92,
  printed: '92 (SD 21)',
  conditions: '10 adults, metabolic monitor',
  source: retroperitoneal2003,
  ...measuredPerSurface
});

export const gasExchangeConstants = [
  surface,
  oxygenByCalorimetry,
  oxygenInNitrousOxide,
  co2BeforeInsufflation,
  constant({
    id: 'body.oxygen-consumption.coefficient',
    name: 'Oxygen consumption per weight to the power 0.75',
    value: 7.5,
    printed: '7.5 (7.0–9.1)',
    unit: 'mL/min/kg^0.75',
    conditions: 'adult under general anaesthesia',
    source: thisProject,
    evidence: 'computed',
    parents: [surface.id, oxygenByCalorimetry.id, oxygenInNitrousOxide.id],
    derivation:
      'mean of gas-exchange.oxygen.calorimetry and gas-exchange.oxygen.collected-gas × body.standard-surface / 70 ^ 0.75, in one decimal',
    alternatives: [
      {
        value: 10,
        source: loweErnst1981,
        evidence: 'memory',
        whyNot: 'The basal rate of the awake adult, after Brody; the first set has it.'
      },
      {
        value: 9.1,
        printed: '219.8 mL/min at 70 kg',
        source: article({
          container: 'Am J Respir Crit Care Med',
          year: 1999,
          locator: '160:883-6'
        }),
        evidence: 'read',
        whyNot:
          'Adults who were paralysed and ventilated, with no fall from awake: the contrary evidence; their weights are not in the abstract.'
      }
    ],
    preferredBecause: 'Two independent studies under anaesthesia agree within 2 %.',
    kind: 'metabolic-coefficient'
  }),
  constant({
    id: 'body.co2-production.coefficient',
    name: 'CO2 production per weight to the power 0.75',
    value: 6.7,
    printed: '6.7 (6.0–8.0)',
    unit: 'mL/min/kg^0.75',
    conditions: 'adult under general anaesthesia',
    source: thisProject,
    evidence: 'computed',
    parents: [surface.id, oxygenByCalorimetry.id, co2BeforeInsufflation.id],
    derivation:
      'chosen between 6.0, from gas-exchange.oxygen.calorimetry at a quotient of 0.8, and 7.0, from gas-exchange.co2.before-insufflation × body.standard-surface / 70 ^ 0.75: a quotient of 0.89',
    alternatives: [
      {
        value: 8,
        source: loweErnst1981,
        evidence: 'memory',
        whyNot: 'Of the awake adult; the first set has it. With it soda lime lasts half as long as measured.'
      }
    ],
    preferredBecause: 'It was measured under anaesthesia, and fits how long soda lime lasts there.',
    kind: 'metabolic-coefficient'
  }),
  constant({
    id: 'adult.weight-limit',
    name: 'Weight from which the adult’s curves hold',
    value: 60,
    printed: '60',
    unit: 'kg',
    conditions:
      'from the end of the children’s lines to here, a power of weight through both ends, so that nothing steps',
    source: { title: 'Planning value of this project', locator: 'no published figure was found' },
    evidence: 'memory',
    kind: 'adult-weight'
  }),
  constant({
    id: 'child.functional-residual-capacity',
    name: 'Functional residual capacity of an anaesthetised child per kg',
    value: 24,
    printed: '24 (SD 6)',
    unit: 'mL/kg',
    conditions: '53 children over 1 year; 17 (SD 4) in 21 infants',
    source: {
      title: 'Functional residual capacity in anaesthetised children, normal values',
      locator: 'abstract; Anesthesiology 1990;73:876-81 is the citation from memory'
    },
    evidence: 'read',
    kind: 'child-lung-volume'
  }),
  constant({
    id: 'child.weight-limit',
    name: 'Weight up to which the lines for children hold',
    value: 25,
    printed: '3.6–25',
    unit: 'kg',
    source: lindahl1989,
    evidence: 'read',
    kind: 'child-weight'
  })
];
