import { formula } from '../working/formula.ts';

interface ConstantDial {
  flowLPerMin: number;
  dialFraction: number;
  minutes: number;
  vapourPerLiquid: number;
}

const inputs = {
  flowLPerMin: { symbol: 'F', unit: 'L/min', words: 'fresh gas flow' },
  dialFraction: { symbol: 'D', unit: '1', words: 'agent’s share of the mixture', testRange: [0, 0.2] },
  minutes: { symbol: 't', unit: 'min', words: 'minutes' },
  vapourPerLiquid: { symbol: 'v', unit: 'mL/mL', words: 'vapour per liquid', testRange: [100, 300] }
} as const;

/** Liquid by the formula of published tables and of most hand calculations, F · D · t / v, F as read off the flowmeters. */
export const constantDial = formula<ConstantDial>({
  id: 'case.constant-dial',
  yields: 'Liquid by the published formula',
  words: 'fresh gas flow times dial times time, over vapour per liquid, as printed',
  expression: '1000 * F * D * t / v',
  inputs,
  unit: 'mL',
  source: 'Dion P. Can J Anaesth 1992;39:633; Biro P. Acta Anaesthesiol Scand 2014;58:968-72',
  compute: ({ flowLPerMin, dialFraction, minutes, vapourPerLiquid }) =>
    (1000 * flowLPerMin * dialFraction * minutes) / vapourPerLiquid
});

/**
 * The same with the vapour added: the setting is the agent's share of the mixture, so what leaves a vaporiser that a
 * carrier flow F runs through holds F D / (1 − D) of vapour.
 */
export const constantDialVapourAdded = formula<ConstantDial>({
  id: 'case.constant-dial-vapour-added',
  yields: 'Liquid by the published formula, the vapour added',
  words: 'carrier flow times the agent’s share over the carrier’s share, times time, over vapour per liquid',
  expression: '1000 * F * D / (1 - D) * t / v',
  inputs,
  unit: 'mL',
  source: 'the published formula, with the flow that leaves the vaporiser in place of the one that enters it',
  compute: ({ flowLPerMin, dialFraction, minutes, vapourPerLiquid }) =>
    (((1000 * flowLPerMin * dialFraction) / (1 - dialFraction)) * minutes) / vapourPerLiquid
});

/** A dial in percent as the agent's share of the mixture. */
export const dialAsFraction = formula<{ dialPercent: number }>({
  id: 'case.dial-as-fraction',
  yields: 'Agent’s share at a fixed dial',
  words: 'the dial in percent, divided by 100',
  expression: 'D / 100',
  inputs: { dialPercent: { symbol: 'D', unit: '%', words: 'dial' } },
  unit: '1',
  source: 'definition',
  compute: ({ dialPercent }) => dialPercent / 100
});
