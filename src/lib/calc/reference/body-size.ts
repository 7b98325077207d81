/** How oxygen use, CO2 production and cardiac output follow from body weight, in adults and in small children. */
import { constant } from './constant.ts';
import type { Source } from './constant.ts';
import { article, lindahl1989, loweErnst1981 } from './sources.ts';

const kleiberReviewed: Source = {
  title:
    'A Sceptics View: “Kleiber’s Law” or the “3/4 Rule” is neither a Law nor a Rule but Rather an Empirical Approximation',
  container: 'Systems',
  year: 2014,
  locator: '2:186-202, on the power that Kleiber proposed',
  doi: '10.3390/systems2020186'
};
const lindahl1984 = article({
  authors: 'Lindahl SG, Hulse MG, Hatch DJ',
  container: 'Acta Anaesthesiol Scand',
  year: 1984,
  locator: '28:52-6',
  doi: '10.1111/j.1399-6576.1984.tb02010.x'
});
const ofChildren =
  'Measured in 58 children of 2.8 to 20.5 kg under halothane: a small child uses more than the adult’s rule says.';

export const bodySizeConstants = [
  constant({
    id: 'body.standard-weight',
    name: 'Weight of the adult that the body models describe',
    value: 70,
    printed: '70',
    unit: 'kg',
    conditions: 'volumes scale by weight / 70',
    source: {
      authors: 'International Commission on Radiological Protection',
      title: 'Reference man, as quoted in the radiation protection pages of the University of Groningen',
      locator: 'a young adult who weighs 70 kg'
    },
    evidence: 'second-hand',
    kind: 'body-weight'
  }),
  constant({
    id: 'body.size-exponent',
    name: 'Exponent of body weight in metabolic rate and cardiac output',
    value: 0.75,
    printed: '0.75',
    unit: '1',
    conditions: 'proposed by Kleiber; used in anaesthesia after Brody and after Lowe and Ernst',
    source: kleiberReviewed,
    evidence: 'second-hand',
    alternatives: [
      {
        value: 0.735,
        printed: '0.73–0.74',
        source: kleiberReviewed,
        evidence: 'second-hand',
        whyNot: 'What was measured in warm-blooded animals; the rules of anaesthesia are written with 3/4.'
      }
    ],
    preferredBecause: 'The coefficients that it is used with belong to 3/4.',
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
    alternatives: [
      {
        value: 14.2,
        printed: '14.2 (SD 3.9)',
        source: lindahl1984,
        evidence: 'read',
        whyNot: ofChildren
      }
    ],
    preferredBecause: 'It is the adult’s; small children have lines of their own here.',
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
    alternatives: [
      {
        value: 11.4,
        printed: '11.4 (SD 3.1)',
        source: lindahl1984,
        evidence: 'read',
        whyNot: ofChildren
      }
    ],
    preferredBecause: 'It is the adult’s; small children have lines of their own here.',
    kind: 'metabolic-coefficient'
  }),
  constant({
    id: 'body.oxygen-consumption.fall-under-anaesthesia',
    name: 'Change of oxygen consumption under general anaesthesia',
    value: -65,
    printed: '−65 (95 % CI −75 to −55)',
    unit: 'mL/min',
    conditions: 'adult; 453 patients',
    source: {
      authors: 'Jakobsson J, Vadman S, Hagel E, Kalman S, Bartha E',
      title:
        'The effects of general anaesthesia on oxygen consumption: A meta-analysis guiding future studies on perioperative oxygen transport',
      container: 'Acta Anaesthesiol Scand',
      year: 2019,
      locator: '63:144-53',
      doi: '10.1111/aas.13265'
    },
    evidence: 'read',
    kind: 'oxygen-consumption-change',
    unusedBecause:
      'Kept for comparison with the weight rule that the model takes: no awake value is entered from which it could be subtracted.'
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
