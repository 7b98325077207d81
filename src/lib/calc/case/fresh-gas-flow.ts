/** The flow that a patient and a machine need, and the class of a flow. */
import { formula } from '../working/formula.ts';
import type { FlowClass } from './case-result.ts';

/** Least fresh gas flow that makes up for what leaves the circuit for good. */
export const neededFlow = formula<{
  minimumLPerMin: number;
  oxygenMlPerMin: number;
  leakMlPerMin: number;
  sampleMlPerMin: number;
  sampleReturned: number;
}>({
  id: 'case.needed-flow',
  yields: 'Least feasible fresh gas flow',
  words:
    'oxygen consumption, leak and a gas sample that is not returned; never less than what the machine gives',
  expression: 'max(F_m, (V + L + (r > 0 ? 0 : s)) / 1000)',
  inputs: {
    minimumLPerMin: { symbol: 'F_m', unit: 'L/min', words: 'least flow of the machine' },
    oxygenMlPerMin: { symbol: 'V', unit: 'mL/min', words: 'oxygen consumption' },
    leakMlPerMin: { symbol: 'L', unit: 'mL/min', words: 'leak of the breathing system' },
    sampleMlPerMin: { symbol: 's', unit: 'mL/min', words: 'gas sample drawn by the monitor' },
    sampleReturned: {
      symbol: 'r',
      unit: '1',
      words: '1 where the sample is returned, else 0',
      testRange: [0, 1]
    }
  },
  unit: 'L/min',
  source: 'mass balance of the circuit',
  compute: ({ minimumLPerMin, oxygenMlPerMin, leakMlPerMin, sampleMlPerMin, sampleReturned }) =>
    Math.max(
      minimumLPerMin,
      (oxygenMlPerMin + leakMlPerMin + (sampleReturned > 0 ? 0 : sampleMlPerMin)) / 1000
    )
});

/** What leaves the circuit however little comes in. */
export const gasLost = formula<{ leakMlPerMin: number; sampleMlPerMin: number; sampleReturned: number }>({
  id: 'case.gas-lost',
  yields: 'Gas lost from the circuit',
  words: 'leak, and a gas sample that is not returned',
  expression: '(L + (r > 0 ? 0 : s)) / 1000',
  inputs: {
    leakMlPerMin: { symbol: 'L', unit: 'mL/min', words: 'leak of the breathing system' },
    sampleMlPerMin: { symbol: 's', unit: 'mL/min', words: 'gas sample drawn by the monitor' },
    sampleReturned: {
      symbol: 'r',
      unit: '1',
      words: '1 where the sample is returned, else 0',
      testRange: [0, 1]
    }
  },
  unit: 'L/min',
  source: 'mass balance of the circuit',
  compute: ({ leakMlPerMin, sampleMlPerMin, sampleReturned }) =>
    (leakMlPerMin + (sampleReturned > 0 ? 0 : sampleMlPerMin)) / 1000
});

/** Flow as needed, at its least: oxygen has to be made up for whatever vapour comes in. */
export const leastFlowAsNeeded = formula<{ minimumLPerMin: number; oxygenMlPerMin: number }>({
  id: 'case.least-flow-as-needed',
  yields: 'Least flow where it follows the need',
  words: 'oxygen consumption, never less than what the machine gives',
  expression: 'max(F_m, V / 1000)',
  inputs: {
    minimumLPerMin: { symbol: 'F_m', unit: 'L/min', words: 'least flow of the machine' },
    oxygenMlPerMin: { symbol: 'V', unit: 'mL/min', words: 'oxygen consumption' }
  },
  unit: 'L/min',
  source: 'mass balance of the circuit',
  compute: ({ minimumLPerMin, oxygenMlPerMin }) => Math.max(minimumLPerMin, oxygenMlPerMin / 1000)
});

/** Mean of a flow that followed the need. */
export const meanFlowAsNeeded = formula<{ freshGasL: number; minutes: number }>({
  id: 'case.mean-flow-as-needed',
  yields: 'Fresh gas flow as needed, mean',
  words: 'fresh gas given, over the minutes',
  expression: 'G / t',
  inputs: {
    freshGasL: { symbol: 'G', unit: 'L', words: 'fresh gas given' },
    minutes: { symbol: 't', unit: 'min', words: 'minutes' }
  },
  unit: 'L/min',
  source: 'definition',
  compute: ({ freshGasL, minutes }) => freshGasL / minutes
});

/** The same of a circuit that is given nitrous oxide and no agent. */
export const meanFlowWithNitrousOxide = formula<{
  freshGasL: number;
  nitrousOxideL: number;
  minutes: number;
}>({
  id: 'case.mean-flow-with-nitrous-oxide',
  yields: 'Fresh gas flow as needed, mean',
  words: 'oxygen and air given and nitrous oxide given, over the minutes',
  expression: '(G + N) / t',
  inputs: {
    freshGasL: { symbol: 'G', unit: 'L', words: 'fresh gas given, nitrous oxide aside' },
    nitrousOxideL: { symbol: 'N', unit: 'L', words: 'nitrous oxide given' },
    minutes: { symbol: 't', unit: 'min', words: 'minutes' }
  },
  unit: 'L/min',
  source: 'definition',
  compute: ({ freshGasL, nitrousOxideL, minutes }) => (freshGasL + nitrousOxideL) / minutes
});

/** The planned flow, or the needed one where that is more. */
export const flowAsRun = formula<{ plannedLPerMin: number; neededLPerMin: number }>({
  id: 'case.flow-as-run',
  yields: 'Fresh gas flow as run',
  words: 'the planned flow, or the least feasible one where that is more',
  expression: 'max(F, N)',
  inputs: {
    plannedLPerMin: { symbol: 'F', unit: 'L/min', words: 'planned fresh gas flow' },
    neededLPerMin: { symbol: 'N', unit: 'L/min', words: 'least feasible fresh gas flow' }
  },
  unit: 'L/min',
  source: 'definition',
  compute: ({ plannedLPerMin, neededLPerMin }) => Math.max(plannedLPerMin, neededLPerMin)
});

/**
 * Class of a fresh gas flow: metabolic below 0.25 L/min, minimal to 0.5, low to 1, medium to 2, high to 4, very high
 * above. A flow on a bound belongs to the class below it: 0.5 L/min is minimal flow, 1 L/min low flow.
 * Source: classes as cited in Can J Anesth 2012, doi 10.1007/s12630-012-9736-2.
 */
export function flowClassOf(flowLPerMin: number): FlowClass {
  if (flowLPerMin < 0.25) return 'metabolic';
  if (flowLPerMin <= 0.5) return 'minimal';
  if (flowLPerMin <= 1) return 'low';
  if (flowLPerMin <= 2) return 'medium';
  if (flowLPerMin <= 4) return 'high';
  return 'very high';
}
