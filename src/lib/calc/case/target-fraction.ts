/** From a multiple of MAC to the end-tidal fraction that is to be held. */
import { formula } from '../working/formula.ts';

const mapleson = 'Mapleson WW. Br J Anaesth 1996;76:179-85';
const nickalls = 'Nickalls RWD, Mapleson WW. Br J Anaesth 2003;91:170-4';

/** MAC of an agent at an age from 1 year, % of one standard atmosphere. */
export const macAtAge = formula<{ mac40Percent: number; slopePerYear: number; ageYears: number }>({
  id: 'case.mac-at-age',
  yields: 'MAC at this age',
  words: 'MAC at 40 years times ten to the power of the slope times the years beyond 40; from 1 year of age',
  expression: 'M * 10 ^ (a * (y - 40))',
  inputs: {
    mac40Percent: { symbol: 'M', unit: '%', words: 'MAC at 40 years' },
    slopePerYear: { symbol: 'a', unit: '1/y', words: 'slope of log10 MAC by age', testRange: [-0.01, 0] },
    ageYears: { symbol: 'y', unit: 'y', words: 'age', testRange: [1, 90] }
  },
  unit: '%',
  source: mapleson,
  empirical: true,
  compute: ({ mac40Percent, slopePerYear, ageYears }) => mac40Percent * 10 ** (slopePerYear * (ageYears - 40))
});

/** MAC as a share of the gas at ambient pressure: MAC is a partial pressure, stated at one standard atmosphere. */
export const macAtPressure = formula<{ macPercent: number; standardKPa: number; ambientKPa: number }>({
  id: 'case.mac-at-pressure',
  yields: 'MAC as a share of the gas at ambient pressure',
  words: 'MAC, a partial pressure, taken as a share of the ambient pressure',
  expression: 'M / 100 * P_0 / P',
  inputs: {
    macPercent: { symbol: 'M', unit: '%', words: 'MAC at this age' },
    standardKPa: { symbol: 'P_0', unit: 'kPa', words: 'standard atmosphere' },
    ambientKPa: { symbol: 'P', unit: 'kPa', words: 'ambient pressure' }
  },
  unit: '1',
  source: mapleson,
  compute: ({ macPercent, standardKPa, ambientKPa }) => ((macPercent / 100) * standardKPa) / ambientKPa
});

/** End-tidal target without nitrous oxide. */
export const targetFraction = formula<{ targetMac: number; macFraction: number }>({
  id: 'case.target',
  yields: 'End-tidal target',
  words: 'the wanted multiple of MAC',
  expression: 'm * M',
  inputs: {
    targetMac: { symbol: 'm', unit: '1', words: 'target, multiple of MAC' },
    macFraction: { symbol: 'M', unit: '1', words: 'MAC of the agent' }
  },
  unit: '1',
  source: mapleson,
  compute: ({ targetMac, macFraction }) => targetMac * macFraction
});

/** End-tidal target of the agent beside nitrous oxide, whose share of the MAC is taken off; never below 0. */
export const targetFractionWithNitrousOxide = formula<{
  targetMac: number;
  nitrousOxidePercent: number;
  nitrousOxideMacFraction: number;
  macFraction: number;
}>({
  id: 'case.target-with-nitrous-oxide',
  yields: 'End-tidal target beside nitrous oxide',
  words:
    'the wanted multiple of MAC less what nitrous oxide gives of it, times the agent’s MAC; never below 0',
  expression: 'max(0, m - x / 100 / N) * M',
  inputs: {
    targetMac: { symbol: 'm', unit: '1', words: 'target, multiple of MAC' },
    nitrousOxidePercent: { symbol: 'x', unit: '%', words: 'end-tidal nitrous oxide' },
    nitrousOxideMacFraction: { symbol: 'N', unit: '1', words: 'MAC of nitrous oxide' },
    macFraction: { symbol: 'M', unit: '1', words: 'MAC of the agent' }
  },
  unit: '1',
  source: nickalls,
  compute: ({ targetMac, nitrousOxidePercent, nitrousOxideMacFraction, macFraction }) =>
    Math.max(0, targetMac - nitrousOxidePercent / 100 / nitrousOxideMacFraction) * macFraction
});
