import { reconciliationBounds } from '../reference/reconciliation-practice.ts';
import { formula } from '../working/formula.ts';

/** Liquid bought in a year: bottles × content × usable share. */
export const purchasedLiquid = formula<{ bottles: number; bottleMl: number; unusablePercent: number }>({
  id: 'year.purchased-liquid',
  yields: 'Usable liquid agent bought in a year',
  words: 'bottles bought times their content times the share that can be used',
  expression: 'n * V * (100 - u) / 100',
  inputs: {
    bottles: { symbol: 'n', unit: '1', words: 'bottles bought a year' },
    bottleMl: { symbol: 'V', unit: 'mL', words: 'liquid in a bottle' },
    unusablePercent: { symbol: 'u', unit: '%', words: 'share of a bottle that cannot be used' }
  },
  unit: 'mL',
  source: 'definition',
  compute: ({ bottles, bottleMl, unusablePercent }) => (bottles * bottleMl * (100 - unusablePercent)) / 100
});

/** Liquid bought in a year for the theatres: bottles less those used elsewhere, × content × usable share. */
export const purchasedForTheatres = formula<{
  bottles: number;
  elsewhere: number;
  bottleMl: number;
  unusablePercent: number;
}>({
  id: 'year.purchased-for-theatres',
  yields: 'Usable liquid agent bought in a year for the theatres',
  words:
    'bottles bought less those used outside the theatres or put in stock, times their content times the share that can be used',
  expression: 'max(0, n - e) * V * (100 - u) / 100',
  inputs: {
    bottles: { symbol: 'n', unit: '1', words: 'bottles bought a year' },
    elsewhere: { symbol: 'e', unit: '1', words: 'of them, used outside the theatres or put in stock' },
    bottleMl: { symbol: 'V', unit: 'mL', words: 'liquid in a bottle' },
    unusablePercent: { symbol: 'u', unit: '%', words: 'share of a bottle that cannot be used' }
  },
  unit: 'mL',
  source: 'definition',
  compute: ({ bottles, elsewhere, bottleMl, unusablePercent }) =>
    (Math.max(0, bottles - elsewhere) * bottleMl * (100 - unusablePercent)) / 100
});

/** Estimate ÷ purchase; below 0.7 or above 1.2 a reader is told. */
export const estimateOverPurchase = formula<{ estimatedMl: number; purchasedMl: number }>({
  id: 'year.estimate-over-purchase',
  yields: 'Estimate divided by purchase',
  words: 'today’s estimated liquid divided by the usable liquid bought',
  expression: 'E / B',
  inputs: {
    estimatedMl: { symbol: 'E', unit: 'mL', words: 'today’s estimate' },
    purchasedMl: { symbol: 'B', unit: 'mL', words: 'usable liquid bought' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ estimatedMl, purchasedMl }) => estimatedMl / purchasedMl
});

/** Share of the nitrous oxide bought that no patient was given. */
export const nitrousOxideLostShare = formula<{ lostKg: number; boughtKg: number }>({
  id: 'year.nitrous-oxide-lost-share',
  yields: 'Share of the nitrous oxide bought that is lost',
  words: 'what is lost from the pipes over what was bought',
  expression: 'L / B * 100',
  inputs: {
    lostKg: { symbol: 'L', unit: 'kg', words: 'nitrous oxide lost from the pipes' },
    boughtKg: { symbol: 'B', unit: 'kg', words: 'nitrous oxide bought' }
  },
  unit: '%',
  source: 'definition',
  compute: ({ lostKg, boughtKg }) => (lostKg / boughtKg) * 100
});

/** Use scaled so that today's estimate meets the purchases. */
export const scaledToPurchases = formula<{ liquidMl: number; ratio: number }>({
  id: 'year.scaled-to-purchases',
  yields: 'Liquid agent, scaled to the purchases',
  words: 'estimated liquid divided by (estimate divided by purchase) of today',
  expression: 'V / q',
  inputs: {
    liquidMl: { symbol: 'V', unit: 'mL', words: 'estimated liquid' },
    ratio: { symbol: 'q', unit: '1', words: 'estimate divided by purchase, today' }
  },
  unit: 'mL',
  source: 'definition',
  compute: ({ liquidMl, ratio }) => liquidMl / ratio
});

/** Use of another plan, scaled by what was measured against what the model gives for today's. */
export const scaledToMeasured = formula<{ modelMl: number; measuredMl: number; todayModelMl: number }>({
  id: 'year.scaled-to-measured',
  yields: 'Liquid agent a case, scaled by the department’s own measurement',
  words:
    'the model’s figure for this plan times the measured use of today divided by the model’s figure for today: what the model does not see of this case group’s practice is carried over',
  expression: 'x * m / x_0',
  inputs: {
    modelMl: { symbol: 'x', unit: 'mL', words: 'model, this plan' },
    measuredMl: { symbol: 'm', unit: 'mL', words: 'measured, today' },
    todayModelMl: { symbol: 'x_0', unit: 'mL', words: 'model, today' }
  },
  unit: 'mL',
  source: 'definition',
  compute: ({ modelMl, measuredMl, todayModelMl }) => (modelMl * measuredMl) / todayModelMl
});

/** How today's estimate stands to what was bought. */
export const reconciliationFindings = [
  'not-given',
  'not-used',
  'all-elsewhere',
  'far-below',
  'agrees',
  'more-than-bought',
  'far-above'
] as const;
export type ReconciliationFinding = (typeof reconciliationFindings)[number];

/** Relative difference below which two amounts are told apart by rounding alone. */
const rounding = 1e-9;

/** What a ratio says: far below the purchases, in agreement, or more used than was bought, by little or by much. */
export function findingOf(ratio: number): ReconciliationFinding {
  if (ratio < reconciliationBounds.low) return 'far-below';
  if (ratio > reconciliationBounds.high) return 'far-above';
  return ratio > 1 + rounding ? 'more-than-bought' : 'agrees';
}
