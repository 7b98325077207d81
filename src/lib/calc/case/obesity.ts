/**
 * Lung and tissues above a body mass index of 30: lean tissue grows with lean body weight, fat takes the rest of the
 * weight, and the lung gets smaller.
 */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { ObesityConstants } from './case-constants.ts';

const janmahasatian = 'Janmahasatian S et al. Clin Pharmacokinet 2005';

/** Weight at a body mass index. */
export const weightAtIndex = formula<{ bodyMassIndex: number; heightM: number }>({
  id: 'case.weight-at-index',
  yields: 'Weight from which obesity is counted',
  words: 'body mass index times the square of the height',
  expression: 'i * h ^ 2',
  inputs: {
    bodyMassIndex: { symbol: 'i', unit: 'kg/m2', words: 'body mass index' },
    heightM: { symbol: 'h', unit: 'm', words: 'height' }
  },
  unit: 'kg',
  source: 'definition',
  compute: ({ bodyMassIndex, heightM }) => bodyMassIndex * heightM ** 2
});

/** Lean body weight, mean of man and woman. */
export const leanWeight = formula<{
  weightKg: number;
  heightM: number;
  numerator: number;
  manOffset: number;
  manSlope: number;
  womanOffset: number;
  womanSlope: number;
}>({
  id: 'case.lean-weight',
  yields: 'Lean body weight',
  words: 'by weight and body mass index, the mean of man and woman',
  expression: '(k * W / (a + b * W / h ^ 2) + k * W / (c + d * W / h ^ 2)) / 2',
  inputs: {
    weightKg: { symbol: 'W', unit: 'kg', words: 'body weight', testRange: [60, 200] },
    heightM: { symbol: 'h', unit: 'm', words: 'height', testRange: [1.5, 2] },
    numerator: { symbol: 'k', unit: '1', words: 'numerator' },
    manOffset: { symbol: 'a', unit: '1', words: 'constant part in men' },
    manSlope: { symbol: 'b', unit: '1', words: 'part by body mass index in men' },
    womanOffset: { symbol: 'c', unit: '1', words: 'constant part in women' },
    womanSlope: { symbol: 'd', unit: '1', words: 'part by body mass index in women' }
  },
  unit: 'kg',
  source: janmahasatian,
  empirical: true,
  compute: ({ weightKg, heightM, numerator, manOffset, manSlope, womanOffset, womanSlope }) => {
    const index = weightKg / heightM ** 2;
    return (
      ((numerator * weightKg) / (manOffset + manSlope * index) +
        (numerator * weightKg) / (womanOffset + womanSlope * index)) /
      2
    );
  }
});

/** The weight by which lean tissue is scaled. */
export const leanScaleWeight = formula<{ limitKg: number; leanKg: number; leanAtLimitKg: number }>({
  id: 'case.lean-scale-weight',
  yields: 'Weight by which lean tissue is scaled',
  words: 'the weight from which obesity is counted, times lean weight over the lean weight there',
  expression: 'w * L / l',
  inputs: {
    limitKg: { symbol: 'w', unit: 'kg', words: 'weight from which obesity is counted' },
    leanKg: { symbol: 'L', unit: 'kg', words: 'lean weight of the patient' },
    leanAtLimitKg: { symbol: 'l', unit: 'kg', words: 'lean weight at that limit' }
  },
  unit: 'kg',
  source: janmahasatian,
  compute: ({ limitKg, leanKg, leanAtLimitKg }) => (limitKg * leanKg) / leanAtLimitKg
});

/** A fat compartment in obesity. */
export const fatVolume = formula<{
  volumeL: number;
  fatVolumesL: readonly number[];
  limitKg: number;
  standardKg: number;
  weightKg: number;
  leanKg: number;
  leanAtLimitKg: number;
}>({
  id: 'case.fat-volume-in-obesity',
  yields: 'Volume of a fat compartment in obesity',
  words:
    'its volume at the weight from which obesity is counted, plus its share of what the patient weighs more beyond lean tissue, one litre counted as one kilogram',
  expression: 'V * w / W_0 + V / sum(f) * (W - w - (L - l))',
  inputs: {
    volumeL: { symbol: 'V', unit: 'L', words: 'volume in the standard adult' },
    fatVolumesL: { symbol: 'f', unit: 'L', words: 'volumes of all fat in the standard adult' },
    limitKg: { symbol: 'w', unit: 'kg', words: 'weight from which obesity is counted' },
    standardKg: { symbol: 'W_0', unit: 'kg', words: 'weight of the standard adult' },
    weightKg: { symbol: 'W', unit: 'kg', words: 'body weight' },
    leanKg: { symbol: 'L', unit: 'kg', words: 'lean weight of the patient' },
    leanAtLimitKg: { symbol: 'l', unit: 'kg', words: 'lean weight at that limit' }
  },
  unit: 'L',
  source: janmahasatian,
  empirical: true,
  compute: ({ volumeL, fatVolumesL, limitKg, standardKg, weightKg, leanKg, leanAtLimitKg }) =>
    (volumeL * limitKg) / standardKg +
    (volumeL / fatVolumesL.reduce((sum, volume) => sum + volume, 0)) *
      (weightKg - limitKg - (leanKg - leanAtLimitKg))
});

/** Gas volume of the lung in obesity. */
export const residualInObesity = formula<{
  residualL: number;
  limitKg: number;
  standardKg: number;
  sharePercent: number;
  weightKg: number;
  heightM: number;
  bodyMassIndex: number;
}>({
  id: 'case.residual-in-obesity',
  yields: 'Functional residual capacity in obesity',
  words: 'its volume at the weight from which obesity is counted, less by a share for every 10 kg/m2 beyond',
  expression: '1000 * V * w / W_0 * (p / 100) ^ ((W / h ^ 2 - i) / 10)',
  inputs: {
    residualL: { symbol: 'V', unit: 'L', words: 'functional residual capacity of the standard adult' },
    limitKg: { symbol: 'w', unit: 'kg', words: 'weight from which obesity is counted' },
    standardKg: { symbol: 'W_0', unit: 'kg', words: 'weight of the standard adult' },
    sharePercent: { symbol: 'p', unit: '%', words: 'share left', testRange: [50, 100] },
    weightKg: { symbol: 'W', unit: 'kg', words: 'body weight', testRange: [80, 200] },
    heightM: { symbol: 'h', unit: 'm', words: 'height', testRange: [1.5, 2] },
    bodyMassIndex: { symbol: 'i', unit: 'kg/m2', words: 'body mass index of the limit', testRange: [25, 35] }
  },
  unit: 'mL',
  source: 'Chest 2006;130:827-33 (awake)',
  empirical: true,
  compute: ({ residualL, limitKg, standardKg, sharePercent, weightKg, heightM, bodyMassIndex }) =>
    ((1000 * residualL * limitKg) / standardKg) *
    (sharePercent / 100) ** ((weightKg / heightM ** 2 - bodyMassIndex) / 10)
});

/** What the lung and tissues of a patient above the limit are scaled by. */
export interface ObesePatient {
  readonly limitKg: Quantity;
  readonly leanKg: Quantity;
  readonly leanAtLimitKg: Quantity;
  readonly leanScaleKg: Quantity;
  readonly heightM: Quantity;
  readonly bodyMassIndex: Quantity;
  readonly residualSharePercent: Quantity;
}

/** The patient's lean weight, where the weight is above the limit of obesity at the assumed height; null below it. */
export function obesePatient(
  r: Reckoner,
  constants: ObesityConstants,
  weightKg: Quantity
): ObesePatient | null {
  if (r.value(weightKg) <= constants.bodyMassIndex.value * constants.heightM.value ** 2) return null;
  const heightM = r.constant(constants.heightM);
  const bodyMassIndex = r.constant(constants.bodyMassIndex);
  const limitKg = r.apply(weightAtIndex, { bodyMassIndex, heightM });
  const leanAt = (weight: Quantity) =>
    r.apply(leanWeight, {
      weightKg: weight,
      heightM,
      numerator: r.constant(constants.numerator),
      manOffset: r.constant(constants.manOffset),
      manSlope: r.constant(constants.manSlope),
      womanOffset: r.constant(constants.womanOffset),
      womanSlope: r.constant(constants.womanSlope)
    });
  const leanKg = leanAt(weightKg);
  const leanAtLimitKg = leanAt(limitKg);
  return {
    limitKg,
    leanKg,
    leanAtLimitKg,
    leanScaleKg: r.apply(leanScaleWeight, { limitKg, leanKg, leanAtLimitKg }),
    heightM,
    bodyMassIndex,
    residualSharePercent: r.constant(constants.residualShare)
  };
}
