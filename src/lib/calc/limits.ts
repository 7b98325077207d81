/**
 * The limits of every quantity that a case is computed from, once: cells, files and the case model all go by them.
 */

/** What a number may be. */
export interface Limit {
  /** What the quantity is called where a case refuses it. */
  readonly quantity: string;
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  /** True where `from` itself is not allowed. */
  readonly above?: true;
  /** True where `to` itself is not allowed. */
  readonly below?: true;
}

const limit = (
  quantity: string,
  unit: string,
  [from, to]: readonly [number, number],
  open: Pick<Limit, 'above' | 'below'> = {}
): Limit => ({ quantity, unit, from, to, ...open });

export const rowLimits = {
  minutes: limit('Minutes', 'min', [0.1, 1440]),
  ageYears: limit('Age', 'years', [0, 120]),
  weightKg: limit('Weight', 'kg', [1, 300]),
  targetMac: limit('Target', 'MAC', [0, 3], { above: true }),
  nitrousOxidePercent: limit('Nitrous oxide', '%', [0, 79]),
  inspiredOxygenPercent: limit('Inspired oxygen', '%', [21, 100])
} as const;

/** The published MAC formula is not valid below, y. */
export const leastVolatileAgeYears = 1;

export const phaseLimits = {
  minutes: limit('Minutes of a phase', 'min', [0, 1440], { above: true }),
  flowLPerMin: limit('Fresh gas flow', 'L/min', [0, 20], { above: true }),
  dialPercent: limit('Dial', '%', [0, 100], { above: true, below: true })
} as const;

export const machineLimits = {
  circuitVolumeL: limit('Circuit volume', 'L', [0.5, 30]),
  leakMlPerMin: limit('Leak', 'mL/min', [0, 5000]),
  sampleMlPerMin: limit('Gas sample', 'mL/min', [0, 1000]),
  minimumFlowLPerMin: limit('Least flow of the machine', 'L/min', [0, 10]),
  spillShareInspiredFraction: limit('Spilled as inspired gas', '', [0, 1])
} as const;

export const absorbentLimits = {
  capacityLPerKg: limit('Absorbent capacity', 'L/kg', [1, 400])
} as const;

export const siteLimits = {
  theatreTemperatureC: limit('Theatre temperature', '°C', [10, 35]),
  ambientPressureKPa: limit('Ambient pressure', 'kPa', [50, 110])
} as const;

/** What rounding leaves of two equal sums is no saving of emissions; kg over an appraisal. */
export const leastAvoidedKg = 1e-6;
