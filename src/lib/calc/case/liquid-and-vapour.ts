/** How much vapour a liquid gives, and how much liquid a vapour takes. */
import { formula } from '../working/formula.ts';

/** mL vapour per mL liquid, as an ideal gas. */
export const vapourPerLiquid = formula<{
  densityGPerMl: number;
  gasConstant: number;
  temperatureC: number;
  zeroCelsiusK: number;
  molarMassGPerMol: number;
  pressureKPa: number;
}>({
  id: 'case.vapour-per-liquid',
  yields: 'Vapour per liquid',
  words: 'density times gas constant times absolute temperature, divided by molar mass and ambient pressure',
  expression: '1000 * d * R * (T + T_0) / (M * P)',
  inputs: {
    densityGPerMl: { symbol: 'd', unit: 'g/mL', words: 'density of the liquid' },
    gasConstant: { symbol: 'R', unit: 'J/(mol K)', words: 'molar gas constant' },
    temperatureC: { symbol: 'T', unit: '°C', words: 'theatre temperature', testRange: [10, 35] },
    zeroCelsiusK: { symbol: 'T_0', unit: 'K', words: 'zero of the Celsius scale', testRange: [273, 274] },
    molarMassGPerMol: { symbol: 'M', unit: 'g/mol', words: 'molar mass', testRange: [100, 300] },
    pressureKPa: { symbol: 'P', unit: 'kPa', words: 'ambient pressure', testRange: [50, 110] }
  },
  unit: 'mL/mL',
  source: 'ideal gas law',
  compute: ({ densityGPerMl, gasConstant, temperatureC, zeroCelsiusK, molarMassGPerMol, pressureKPa }) =>
    (1000 * densityGPerMl * gasConstant * (temperatureC + zeroCelsiusK)) / (molarMassGPerMol * pressureKPa)
});

const liquidOf = (id: string, yields: string, vapourWords: string) =>
  formula<{ vapourL: number; vapourPerLiquid: number }>({
    id,
    yields,
    words: `${vapourWords}, divided by the vapour that a millilitre of liquid gives`,
    expression: '1000 * V / v',
    inputs: {
      vapourL: { symbol: 'V', unit: 'L', words: vapourWords },
      vapourPerLiquid: { symbol: 'v', unit: 'mL/mL', words: 'vapour per liquid', testRange: [100, 300] }
    },
    unit: 'mL',
    source: 'definition',
    compute: ({ vapourL, vapourPerLiquid }) => (1000 * vapourL) / vapourPerLiquid
  });

export const liquidDelivered = liquidOf('case.liquid', 'Liquid agent used', 'vapour delivered');
export const liquidTakenUp = liquidOf('case.liquid-taken-up', 'Agent taken up', 'vapour taken up');
export const liquidSpilled = liquidOf('case.liquid-spilled', 'Agent spilled', 'vapour spilled');
export const liquidLeft = liquidOf(
  'case.liquid-left',
  'Agent left at disconnection',
  'vapour left in circuit and lung'
);
export const liquidFloor = liquidOf('case.floor', 'Floor of agent use', 'vapour used if nothing spilled');
