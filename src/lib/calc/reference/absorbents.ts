/** What a kilogram of CO2 absorbent takes up, and what its making gives off by chemistry alone. */
import { constant } from './constant.ts';
import { derivedConstant } from './derived-constant.ts';
import { physicalConstants } from './physical-constants.ts';
import { higuchi2001 } from './sources.ts';

const calciumHydroxideShare = constant({
  id: 'absorbent.soda-lime.calcium-hydroxide-share',
  name: 'Calcium hydroxide in soda lime',
  value: 80,
  printed: '80 (79.5–84.5)',
  unit: '%',
  conditions: 'by mass; 79.5–84.5 are the limes of calcium hydroxide in the table',
  source: {
    authors: 'Levy RJ',
    title: 'Anesthesia-related Carbon Monoxide Exposure: Toxicity and Potential Therapy',
    container: 'Anesth Analg',
    year: 2016,
    locator: '123:670-81, table of chemical compositions, from other works',
    doi: '10.1213/ANE.0000000000001461'
  },
  evidence: 'second-hand',
  kind: 'composition-share'
});

const parents = [...physicalConstants, calciumHydroxideShare];

export const absorbentConstants = [
  constant({
    id: 'absorbent.soda-lime.capacity',
    name: 'CO2 that soda lime takes up in clinical use',
    value: 120,
    printed: '120 (107–148)',
    unit: 'L/kg',
    conditions: 'measured at 1 L/min fresh gas',
    source: higuchi2001,
    evidence: 'read',
    kind: 'absorbent-capacity',
    unusedBecause: 'Shown as a guide beside the absorbent’s own capacity, which is an input.',
    guideFor: 'absorbents.capacityLPerKg'
  }),
  constant({
    id: 'absorbent.alkali-free-lime.capacity',
    name: 'CO2 that lime without strong base takes up in clinical use',
    value: 66,
    printed: '66 (55–76)',
    unit: 'L/kg',
    conditions: 'measured at 1 L/min fresh gas',
    source: higuchi2001,
    evidence: 'read',
    kind: 'absorbent-capacity',
    unusedBecause: 'Shown as a guide beside the absorbent’s own capacity, which is an input.',
    guideFor: 'absorbents.capacityLPerKg'
  }),
  calciumHydroxideShare,
  derivedConstant(
    {
      id: 'absorbent.soda-lime.stoichiometric-limit',
      name: 'CO2 that soda lime could take up at most',
      printed: '260',
      unit: 'L/kg',
      conditions: '80 % Ca(OH)2, one mole of CO2 per mole; gas at 20 °C and 101.325 kPa',
      source: { title: 'Stoichiometry', locator: '1 mol Ca(OH)2 : 1 mol CO2' },
      kind: 'absorbent-limit',
      unusedBecause: 'A ceiling that no measured capacity may exceed: a check on the capacities in use.'
    },
    parents
  ),
  derivedConstant(
    {
      id: 'absorbent.process-co2',
      name: 'CO2 given off by chemistry when calcium hydroxide is made',
      printed: '0.594',
      unit: 'kg CO2/kg',
      conditions:
        'per kg Ca(OH)2; fuel, packaging and transport left out; taken up again as the absorbent binds CO2',
      source: { title: 'Stoichiometry', locator: 'CaCO3 to CaO and CO2' },
      kind: 'process-co2',
      unusedBecause:
        'It covers the chemistry alone: the absorbent’s own factor is an input, empty by default.'
    },
    parents
  )
];
