/** How oxygen use, CO2 production and cardiac output follow from body weight, in adults and in small children. */
import { constant } from './constant.ts';
import { article, commonPractice, lindahl1989, loweErnst1981 } from './sources.ts';

export const bodySizeConstants = [
  constant({
    id: 'body.standard-weight',
    name: 'Weight of the adult that the body models describe',
    value: 70,
    printed: '70',
    unit: 'kg',
    conditions: 'volumes scale by weight / 70',
    source: commonPractice,
    evidence: 'memory',
    kind: 'body-weight'
  }),
  constant({
    id: 'body.size-exponent',
    name: 'Exponent of body weight in metabolic rate and cardiac output',
    value: 0.75,
    printed: '0.75',
    unit: '1',
    conditions: 'after Brody',
    source: loweErnst1981,
    evidence: 'memory',
    kind: 'size-exponent'
  }),
  constant({
    id: 'body.cardiac-output.coefficient',
    name: 'Cardiac output per weight to the power 0.75',
    value: 0.2,
    printed: '0.2',
    unit: 'L/min/kg^0.75',
    conditions: 'adult',
    source: loweErnst1981,
    evidence: 'memory',
    kind: 'cardiac-output-coefficient'
  }),
  constant({
    id: 'body.oxygen-consumption.coefficient',
    name: 'Oxygen consumption per weight to the power 0.75',
    value: 10,
    printed: '10',
    unit: 'mL/min/kg^0.75',
    conditions: 'adult; after Brody',
    source: loweErnst1981,
    evidence: 'memory',
    kind: 'metabolic-coefficient'
  }),
  constant({
    id: 'body.co2-production.coefficient',
    name: 'CO2 production per weight to the power 0.75',
    value: 8,
    printed: '8',
    unit: 'mL/min/kg^0.75',
    conditions: 'adult',
    source: loweErnst1981,
    evidence: 'memory',
    kind: 'metabolic-coefficient'
  }),
  constant({
    id: 'body.oxygen-consumption.fall-under-anaesthesia',
    name: 'Change of oxygen consumption under general anaesthesia',
    value: -65,
    printed: '−65 (95 % CI −75 to −55)',
    unit: 'mL/min',
    conditions: 'adult; 453 patients',
    source: article({
      authors: 'Jakobsson J et al.',
      container: 'Acta Anaesthesiol Scand',
      year: 2019,
      locator: '63:144-53'
    }),
    evidence: 'read',
    kind: 'oxygen-consumption-change',
    unusedBecause:
      'Shown beside the weight rule that the model takes: no awake value is entered from which it could be subtracted.'
  }),
  constant({
    id: 'child.weight-limit',
    name: 'Weight up to which the lines for children hold',
    value: 25,
    printed: '3.6–25',
    unit: 'kg',
    source: lindahl1989,
    evidence: 'read',
    kind: 'child-weight',
    unusedBecause: 'It decides which formula a child’s figures follow, and enters none of them.'
  }),
  constant({
    id: 'child.oxygen-consumption.slope',
    name: 'Oxygen consumption of a child per kg',
    value: 5,
    printed: '5.0',
    unit: 'mL/min/kg',
    conditions: '3.6–25 kg, under halothane',
    source: lindahl1989,
    evidence: 'read',
    kind: 'child-slope'
  }),
  constant({
    id: 'child.oxygen-consumption.intercept',
    name: 'Oxygen consumption of a child, constant part',
    value: 19.8,
    printed: '19.8',
    unit: 'mL/min',
    conditions: '3.6–25 kg, under halothane',
    source: lindahl1989,
    evidence: 'read',
    kind: 'child-intercept'
  }),
  constant({
    id: 'child.co2-production.slope',
    name: 'CO2 production of a child per kg',
    value: 4.8,
    printed: '4.8',
    unit: 'mL/min/kg',
    conditions: '3.6–25 kg, under halothane',
    source: lindahl1989,
    evidence: 'read',
    kind: 'child-slope'
  }),
  constant({
    id: 'child.co2-production.intercept',
    name: 'CO2 production of a child, constant part',
    value: 6.4,
    printed: '6.4',
    unit: 'mL/min',
    conditions: '3.6–25 kg, under halothane',
    source: lindahl1989,
    evidence: 'read',
    kind: 'child-intercept'
  })
];
