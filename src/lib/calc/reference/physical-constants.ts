/** Constants of physics and chemistry, of the gas laws and of dry air. */
import { constant } from './constant.ts';

export const gasConstant = constant({
  id: 'gas-constant',
  name: 'Molar gas constant',
  value: 8.314462618,
  printed: '8.314462618',
  unit: 'J/(mol K)',
  conditions: 'exact',
  source: {
    authors: 'CODATA',
    title: 'Recommended values of the fundamental physical constants',
    year: 2018
  },
  evidence: 'read',
  kind: 'gas-constant'
});

export const standardAtmosphere = constant({
  id: 'standard-atmosphere',
  name: 'Standard atmosphere, the pressure at which MAC is stated',
  value: 101.325,
  printed: '101.325',
  unit: 'kPa',
  conditions: 'exact, by definition',
  source: {
    authors: 'General Conference on Weights and Measures',
    title: 'Resolution 4 of the 10th meeting: definition of the standard atmosphere',
    year: 1954,
    locator: 'Comptes Rendus de la 10e CGPM (1954), 1956, 79'
  },
  evidence: 'read',
  kind: 'pressure'
});

export const zeroCelsius = constant({
  id: 'zero-celsius',
  name: 'Zero of the Celsius scale',
  value: 273.15,
  printed: '273.15',
  unit: 'K',
  conditions: 'exact, by definition',
  source: {
    authors: 'IUPAC',
    title: 'Compendium of Chemical Terminology (Gold Book)',
    locator: 'C00928, Celsius temperature'
  },
  evidence: 'read',
  kind: 'temperature'
});

export const carbonDioxideMolarMass = constant({
  id: 'carbon-dioxide.molar-mass',
  name: 'Molar mass of carbon dioxide',
  value: 44.01,
  printed: '44.01',
  unit: 'g/mol',
  conditions: 'the source prints 44.0095',
  source: {
    authors: 'National Institute of Standards and Technology',
    title: 'Chemistry WebBook',
    locator: 'carbon dioxide, molecular weight'
  },
  evidence: 'read',
  kind: 'molar-mass'
});

export const calciumHydroxideMolarMass = constant({
  id: 'calcium-hydroxide.molar-mass',
  name: 'Molar mass of calcium hydroxide',
  value: 74.09,
  printed: '74.1',
  unit: 'g/mol',
  conditions: 'the guide prints 74.1; the second place follows from the atomic weights of Ca(OH)2',
  source: {
    authors: 'NIOSH',
    title: 'Pocket Guide to Chemical Hazards',
    locator: 'calcium hydroxide, molecular weight'
  },
  evidence: 'read',
  kind: 'molar-mass'
});

export const physicalConstants = [
  gasConstant,
  standardAtmosphere,
  zeroCelsius,
  carbonDioxideMolarMass,
  calciumHydroxideMolarMass
];
