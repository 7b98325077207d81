/** CO2 that the absorbent takes, and the absorbent that this takes. */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';

/** Minute ventilation: alveolar and dead-space ventilation. */
export const minuteVentilation = formula<{ alveolarLPerMin: number; deadSpacePercent: number }>({
  id: 'case.minute-ventilation',
  yields: 'Minute ventilation',
  words: 'alveolar ventilation divided by the share of a breath that reaches the alveoli',
  expression: 'V_A / (1 - d / 100)',
  inputs: {
    alveolarLPerMin: { symbol: 'V_A', unit: 'L/min', words: 'alveolar ventilation' },
    deadSpacePercent: { symbol: 'd', unit: '%', words: 'dead-space share' }
  },
  unit: 'L/min',
  source: 'definition',
  compute: ({ alveolarLPerMin, deadSpacePercent }) => alveolarLPerMin / (1 - deadSpacePercent / 100)
});

/** Gas that leaves the circuit in one phase, or in a case, on average. */
const meanSpill = formula<{
  flowLPerMin: number;
  oxygenMlPerMin: number;
  vapourL: number;
  takenUpL: number;
  minutes: number;
}>({
  id: 'case.mean-spill',
  yields: 'Gas spilled, mean',
  words: 'fresh gas and vapour that come in, less oxygen and agent that the patient takes; never below 0',
  expression: 'max(0, F - V / 1000 + (D - U) / t)',
  inputs: {
    flowLPerMin: { symbol: 'F', unit: 'L/min', words: 'fresh gas flow' },
    oxygenMlPerMin: { symbol: 'V', unit: 'mL/min', words: 'oxygen consumption' },
    vapourL: { symbol: 'D', unit: 'L', words: 'vapour delivered' },
    takenUpL: { symbol: 'U', unit: 'L', words: 'vapour taken up' },
    minutes: { symbol: 't', unit: 'min', words: 'minutes in which it is' }
  },
  unit: 'L/min',
  source: 'mass balance of the circuit',
  compute: ({ flowLPerMin, oxygenMlPerMin, vapourL, takenUpL, minutes }) =>
    Math.max(0, flowLPerMin - oxygenMlPerMin / 1000 + (vapourL - takenUpL) / minutes)
});

/** The same where nitrous oxide is followed. */
const meanSpillBesideNitrousOxide = formula<{
  flowLPerMin: number;
  oxygenMlPerMin: number;
  vapourL: number;
  takenUpL: number;
  nitrousOxideTakenUpL: number;
  minutes: number;
}>({
  id: 'case.mean-spill-beside-nitrous-oxide',
  yields: 'Gas spilled, mean',
  words:
    'fresh gas and vapour that come in, less oxygen, agent and nitrous oxide that the patient takes; never below 0',
  expression: 'max(0, F - V / 1000 + (D - U - N) / t)',
  inputs: {
    flowLPerMin: { symbol: 'F', unit: 'L/min', words: 'fresh gas flow' },
    oxygenMlPerMin: { symbol: 'V', unit: 'mL/min', words: 'oxygen consumption' },
    vapourL: { symbol: 'D', unit: 'L', words: 'vapour delivered' },
    takenUpL: { symbol: 'U', unit: 'L', words: 'vapour taken up' },
    nitrousOxideTakenUpL: { symbol: 'N', unit: 'L', words: 'nitrous oxide taken up' },
    minutes: { symbol: 't', unit: 'min', words: 'minutes in which it is' }
  },
  unit: 'L/min',
  source: 'mass balance of the circuit',
  compute: ({ flowLPerMin, oxygenMlPerMin, vapourL, takenUpL, nitrousOxideTakenUpL, minutes }) =>
    Math.max(0, flowLPerMin - oxygenMlPerMin / 1000 + (vapourL - takenUpL - nitrousOxideTakenUpL) / minutes)
});

/** Gas that leaves the circuit where no agent is given. */
const carrierSpill = formula<{ flowLPerMin: number; oxygenMlPerMin: number }>({
  id: 'case.carrier-spill',
  yields: 'Gas spilled',
  words: 'fresh gas less oxygen that the patient takes; never below 0',
  expression: 'max(0, F - V / 1000)',
  inputs: {
    flowLPerMin: { symbol: 'F', unit: 'L/min', words: 'fresh gas flow' },
    oxygenMlPerMin: { symbol: 'V', unit: 'mL/min', words: 'oxygen consumption' }
  },
  unit: 'L/min',
  source: 'mass balance of the circuit',
  compute: ({ flowLPerMin, oxygenMlPerMin }) => Math.max(0, flowLPerMin - oxygenMlPerMin / 1000)
});

/** The same where nitrous oxide is followed. */
const carrierSpillBesideNitrousOxide = formula<{
  flowLPerMin: number;
  oxygenMlPerMin: number;
  nitrousOxideTakenUpL: number;
  minutes: number;
}>({
  id: 'case.carrier-spill-beside-nitrous-oxide',
  yields: 'Gas spilled',
  words: 'fresh gas less oxygen and nitrous oxide that the patient takes; never below 0',
  expression: 'max(0, F - V / 1000 - N / t)',
  inputs: {
    flowLPerMin: { symbol: 'F', unit: 'L/min', words: 'fresh gas flow' },
    oxygenMlPerMin: { symbol: 'V', unit: 'mL/min', words: 'oxygen consumption' },
    nitrousOxideTakenUpL: { symbol: 'N', unit: 'L', words: 'nitrous oxide taken up' },
    minutes: { symbol: 't', unit: 'min', words: 'minutes in which it is' }
  },
  unit: 'L/min',
  source: 'mass balance of the circuit',
  compute: ({ flowLPerMin, oxygenMlPerMin, nitrousOxideTakenUpL, minutes }) =>
    Math.max(0, flowLPerMin - oxygenMlPerMin / 1000 - nitrousOxideTakenUpL / minutes)
});

/** Gas that leaves the circuit over some minutes, on average, by what is given and taken up in them. */
export function spillOf(
  r: Reckoner,
  {
    flowLPerMin,
    oxygenMlPerMin,
    minutes,
    vapour,
    nitrousOxideTakenUpL
  }: {
    readonly flowLPerMin: Quantity;
    readonly oxygenMlPerMin: Quantity;
    readonly minutes: Quantity;
    /** Null where no agent is given. */
    readonly vapour: { readonly vapourL: Quantity; readonly takenUpL: Quantity } | null;
    /** Null where none is given, or it is not followed. */
    readonly nitrousOxideTakenUpL: Quantity | null;
  }
): Quantity {
  if (vapour === null)
    return nitrousOxideTakenUpL === null
      ? r.apply(carrierSpill, { flowLPerMin, oxygenMlPerMin })
      : r.apply(carrierSpillBesideNitrousOxide, {
          flowLPerMin,
          oxygenMlPerMin,
          nitrousOxideTakenUpL,
          minutes
        });
  const { vapourL, takenUpL } = vapour;
  return nitrousOxideTakenUpL === null
    ? r.apply(meanSpill, { flowLPerMin, oxygenMlPerMin, vapourL, takenUpL, minutes })
    : r.apply(meanSpillBesideNitrousOxide, {
        flowLPerMin,
        oxygenMlPerMin,
        vapourL,
        takenUpL,
        nitrousOxideTakenUpL,
        minutes
      });
}

/** CO2 absorbed in one phase: the spilled gas carries mixed-expired CO2 away before the absorber. */
export const co2AbsorbedInPhase = formula<{
  co2MlPerMin: number;
  minutes: number;
  spillLPerMin: number;
  minuteVentilationLPerMin: number;
}>({
  id: 'case.co2-absorbed-in-phase',
  yields: 'CO2 absorbed in a phase',
  words: 'CO2 eliminated, less the share of the breathed gas that spills before the absorber',
  expression: 'C / 1000 * t * (1 - min(1, S / V_E))',
  inputs: {
    co2MlPerMin: { symbol: 'C', unit: 'mL/min', words: 'CO2 elimination' },
    minutes: { symbol: 't', unit: 'min', words: 'minutes of the phase' },
    spillLPerMin: { symbol: 'S', unit: 'L/min', words: 'gas spilled' },
    minuteVentilationLPerMin: { symbol: 'V_E', unit: 'L/min', words: 'minute ventilation' }
  },
  unit: 'L',
  source: 'mass balance of the circuit, relief valve before the absorber',
  compute: ({ co2MlPerMin, minutes, spillLPerMin, minuteVentilationLPerMin }) =>
    (co2MlPerMin / 1000) * minutes * (1 - Math.min(1, spillLPerMin / minuteVentilationLPerMin))
});

export const absorbentMass = formula<{ co2L: number; capacityLPerKg: number }>({
  id: 'case.absorbent',
  yields: 'Absorbent used',
  words: 'CO2 absorbed divided by what a kilogram of absorbent takes',
  expression: 'C / c',
  inputs: {
    co2L: { symbol: 'C', unit: 'L', words: 'CO2 absorbed' },
    capacityLPerKg: { symbol: 'c', unit: 'L/kg', words: 'capacity of the absorbent', testRange: [50, 260] }
  },
  unit: 'kg',
  source: 'definition',
  compute: ({ co2L, capacityLPerKg }) => co2L / capacityLPerKg
});
