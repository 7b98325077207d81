import { formula } from '../working/formula.ts';

/**
 * Liquid that a vaporiser at a constant setting gives off: the figure of published tables and of most hand
 * calculations. The setting is the agent's share of the mixture, so of a carrier flow F it adds F D / (1 − D).
 */
export const constantDial = formula<{
  flowLPerMin: number;
  dialFraction: number;
  minutes: number;
  vapourPerLiquid: number;
}>({
  id: 'case.constant-dial',
  yields: 'Liquid at a constant dial',
  words: 'carrier flow times the agent’s share over the carrier’s share, times time, over vapour per liquid',
  expression: '1000 * F * D / (1 - D) * t / v',
  inputs: {
    flowLPerMin: { symbol: 'F', unit: 'L/min', words: 'fresh gas flow' },
    dialFraction: { symbol: 'D', unit: '1', words: 'agent’s share of the mixture', testRange: [0, 0.2] },
    minutes: { symbol: 't', unit: 'min', words: 'minutes' },
    vapourPerLiquid: { symbol: 'v', unit: 'mL/mL', words: 'vapour per liquid', testRange: [100, 300] }
  },
  unit: 'mL',
  source: 'Dion P. Can J Anaesth 1992;39:633; Biro P. Acta Anaesthesiol Scand 2014;58:968-72',
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
