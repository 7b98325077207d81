/** A concentration beside a limit, and a limit as mass in a volume of air. */
import { formula } from '../working/formula.ts';

/** mg/m3 = ppm · M · P / (R · T), at the temperature that the limit refers to. */
export const massConcentration = formula<{
  ppm: number;
  molarMassGPerMol: number;
  pressureKPa: number;
  gasConstant: number;
  temperatureC: number;
  zeroCelsiusK: number;
}>({
  id: 'theatre-air.mass-concentration',
  yields: 'Limit as mass in air',
  words:
    'parts in a million times the mass of a mole over its volume, at the temperature that the limit refers to',
  expression: 'c * M * P / (R * (T + T_0))',
  inputs: {
    ppm: { symbol: 'c', unit: 'ppm', words: 'concentration' },
    molarMassGPerMol: { symbol: 'M', unit: 'g/mol', words: 'molar mass' },
    pressureKPa: { symbol: 'P', unit: 'kPa', words: 'standard atmosphere' },
    gasConstant: { symbol: 'R', unit: 'J/(mol K)', words: 'molar gas constant' },
    temperatureC: {
      symbol: 'T',
      unit: '°C',
      words: 'temperature that the limit refers to',
      testRange: [0, 30]
    },
    zeroCelsiusK: { symbol: 'T_0', unit: 'K', words: 'zero of the Celsius scale', testRange: [273, 274] }
  },
  unit: 'mg/m3',
  source: 'ideal gas law',
  compute: ({ ppm, molarMassGPerMol, pressureKPa, gasConstant, temperatureC, zeroCelsiusK }) =>
    (ppm * molarMassGPerMol * pressureKPa) / (gasConstant * (temperatureC + zeroCelsiusK))
});

export const shareOfLimit = formula<{ ppm: number; limitPpm: number }>({
  id: 'theatre-air.share-of-limit',
  yields: 'Estimate as a share of the limit',
  words: 'estimated concentration over the limit',
  expression: '100 * c / l',
  inputs: {
    ppm: { symbol: 'c', unit: 'ppm', words: 'estimated concentration' },
    limitPpm: { symbol: 'l', unit: 'ppm', words: 'limit', testRange: [1, 200] }
  },
  unit: '%',
  source: 'definition',
  compute: ({ ppm, limitPpm }) => (100 * ppm) / limitPpm
});
