/**
 * Oxygen, air and nitrous oxide of the fresh gas. Uptake of nitrogen is neglected. That of nitrous oxide changes what
 * spills, and where the flow follows the need what is given, but not what flowmeters that are set give.
 */
import { formula } from '../working/formula.ts';

const balance = 'steady mass balance of the circuit, uptake of nitrogen and nitrous oxide neglected';

/** Oxygen share of the fresh gas that holds the inspired share. Above 1 where the flow cannot hold it. */
export const freshOxygenFraction = formula<{
  inspiredPercent: number;
  flowLPerMin: number;
  oxygenMlPerMin: number;
}>({
  id: 'case.fresh-oxygen',
  yields: 'Oxygen share of the fresh gas',
  words:
    'oxygen that leaves with the spilled gas, and oxygen that the patient consumes, as a share of the flow',
  expression: '(f / 100 * (F - V / 1000) + V / 1000) / F',
  inputs: {
    inspiredPercent: { symbol: 'f', unit: '%', words: 'inspired oxygen to be held' },
    flowLPerMin: { symbol: 'F', unit: 'L/min', words: 'fresh gas flow' },
    oxygenMlPerMin: { symbol: 'V', unit: 'mL/min', words: 'oxygen consumption', testRange: [20, 300] }
  },
  unit: '1',
  source: balance,
  compute: ({ inspiredPercent, flowLPerMin, oxygenMlPerMin }) =>
    ((inspiredPercent / 100) * (flowLPerMin - oxygenMlPerMin / 1000) + oxygenMlPerMin / 1000) / flowLPerMin
});

/** Inspired oxygen that an oxygen share of the fresh gas comes to: the same balance, solved the other way. */
export function inspiredOxygenFraction({
  freshOxygenFraction,
  flowLPerMin,
  oxygenMlPerMin
}: {
  freshOxygenFraction: number;
  flowLPerMin: number;
  oxygenMlPerMin: number;
}): number {
  const uptakeLPerMin = oxygenMlPerMin / 1000;
  return (freshOxygenFraction * flowLPerMin - uptakeLPerMin) / (flowLPerMin - uptakeLPerMin);
}

/** Nitrous oxide of one phase. */
export const nitrousOxideOfPhase = formula<{
  nitrousOxidePercent: number;
  flowLPerMin: number;
  oxygenMlPerMin: number;
  minutes: number;
}>({
  id: 'case.nitrous-oxide-of-phase',
  yields: 'Nitrous oxide of a phase',
  words: 'what leaves with the spilled gas at the wanted share',
  expression: 'x / 100 * (F - V / 1000) * t',
  inputs: {
    nitrousOxidePercent: { symbol: 'x', unit: '%', words: 'nitrous oxide to be held' },
    flowLPerMin: { symbol: 'F', unit: 'L/min', words: 'fresh gas flow' },
    oxygenMlPerMin: { symbol: 'V', unit: 'mL/min', words: 'oxygen consumption' },
    minutes: { symbol: 't', unit: 'min', words: 'minutes of the phase' }
  },
  unit: 'L',
  source: balance,
  compute: ({ nitrousOxidePercent, flowLPerMin, oxygenMlPerMin, minutes }) =>
    (nitrousOxidePercent / 100) * (flowLPerMin - oxygenMlPerMin / 1000) * minutes
});

/** The same where the flow follows the need. */
export const nitrousOxideAsNeeded = formula<{ parts: readonly number[] }>({
  id: 'case.nitrous-oxide-as-needed',
  yields: 'Nitrous oxide of a phase in which the flow follows the need',
  words: 'what fills circuit and lung, is taken up and is lost, part by part',
  expression: 'sum(x)',
  inputs: { parts: { symbol: 'x', unit: 'L', words: 'each part of the phase' } },
  unit: 'L',
  source: 'mass balance of the circuit',
  compute: ({ parts }) => parts.reduce((sum, part) => sum + part, 0)
});

/** Air of one phase: it brings the nitrogen that makes up the rest of the gas. */
export const airOfPhase = formula<{
  flowLPerMin: number;
  minutes: number;
  oxygenFraction: number;
  nitrousOxideL: number;
  airOxygenPercent: number;
}>({
  id: 'case.air-of-phase',
  yields: 'Air of a phase',
  words: 'what is neither oxygen nor nitrous oxide is nitrogen, and air brings it; never below 0',
  expression: 'max(0, F * t * (1 - f) - N) / (1 - a / 100)',
  inputs: {
    flowLPerMin: { symbol: 'F', unit: 'L/min', words: 'fresh gas flow' },
    minutes: { symbol: 't', unit: 'min', words: 'minutes of the phase' },
    oxygenFraction: { symbol: 'f', unit: '1', words: 'oxygen share of the fresh gas', testRange: [0.2, 1] },
    nitrousOxideL: { symbol: 'N', unit: 'L', words: 'nitrous oxide of the phase' },
    airOxygenPercent: { symbol: 'a', unit: '%', words: 'oxygen in air', testRange: [20, 22] }
  },
  unit: 'L',
  source: 'definition',
  compute: ({ flowLPerMin, minutes, oxygenFraction, nitrousOxideL, airOxygenPercent }) =>
    Math.max(0, flowLPerMin * minutes * (1 - oxygenFraction) - nitrousOxideL) / (1 - airOxygenPercent / 100)
});

/** Oxygen of one phase, beside what the air brings. */
export const oxygenOfPhase = formula<{
  flowLPerMin: number;
  minutes: number;
  airL: number;
  nitrousOxideL: number;
}>({
  id: 'case.oxygen-of-phase',
  yields: 'Oxygen of a phase',
  words: 'the fresh gas less air and nitrous oxide; never below 0',
  expression: 'max(0, F * t - A - N)',
  inputs: {
    flowLPerMin: { symbol: 'F', unit: 'L/min', words: 'fresh gas flow' },
    minutes: { symbol: 't', unit: 'min', words: 'minutes of the phase' },
    airL: { symbol: 'A', unit: 'L', words: 'air of the phase' },
    nitrousOxideL: { symbol: 'N', unit: 'L', words: 'nitrous oxide of the phase' }
  },
  unit: 'L',
  source: 'definition',
  compute: ({ flowLPerMin, minutes, airL, nitrousOxideL }) =>
    Math.max(0, flowLPerMin * minutes - airL - nitrousOxideL)
});
