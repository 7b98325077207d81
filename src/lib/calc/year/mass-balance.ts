/**
 * What a measurement, or purchases, say about practice, with mass kept: what patients take up and what circuit and lung
 * hold at the end is theirs whatever anyone does, only the spill depends on practice. Reference sets from 2026-2 on go
 * by it; the first one carries a measurement over as a plain ratio.
 */
import type { CaseUse } from '../case/case-result.ts';
import { caseConstants } from '../case/case-constants.ts';
import type { ReferenceSet } from '../reference/reference-set.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';

const balance = 'mass balance of a case: liquid is taken up, spilled, or left in circuit and lung';

const leastPercent = {
  symbol: 'p',
  unit: '%',
  words: 'least share of the liquid that must be spill'
} as const;

const liquidMeasured = formula<{ measuredMl: number; takenUpMl: number; leftMl: number }>({
  id: 'year.liquid-measured',
  yields: 'Liquid agent a case, as measured',
  words: 'what was measured, and never less than what patient and circuit take',
  expression: 'max(m, u + l)',
  inputs: {
    measuredMl: { symbol: 'm', unit: 'mL', words: 'measured, today' },
    takenUpMl: { symbol: 'u', unit: 'mL', words: 'taken up' },
    leftMl: { symbol: 'l', unit: 'mL', words: 'left in circuit and lung' }
  },
  unit: 'mL',
  source: balance,
  compute: ({ measuredMl, takenUpMl, leftMl }) => Math.max(measuredMl, takenUpMl + leftMl)
});

const spilledMeasured = formula<{ liquidMl: number; takenUpMl: number; leftMl: number }>({
  id: 'year.spilled-measured',
  yields: 'Liquid agent spilled a case, by what was measured',
  words: 'what is neither taken up nor left',
  expression: 'max(0, L - u - l)',
  inputs: {
    liquidMl: { symbol: 'L', unit: 'mL', words: 'liquid used' },
    takenUpMl: { symbol: 'u', unit: 'mL', words: 'taken up' },
    leftMl: { symbol: 'l', unit: 'mL', words: 'left in circuit and lung' }
  },
  unit: 'mL',
  source: balance,
  compute: ({ liquidMl, takenUpMl, leftMl }) => Math.max(0, liquidMl - takenUpMl - leftMl)
});

const spillFactor = formula<{
  measuredSpillMl: number;
  modelSpillMl: number;
  modelMl: number;
  leastPercent: number;
}>({
  id: 'year.spill-factor',
  yields: 'Spill of this practice against the model’s',
  words:
    'spill by what was measured today, divided by the model’s for the same plan; 1 where the model spills next to nothing, as a measurement then says nothing about it',
  expression: 's_0 <= p / 100 * L_0 ? 1 : s / s_0',
  inputs: {
    measuredSpillMl: { symbol: 's', unit: 'mL', words: 'spill by what was measured' },
    modelSpillMl: { symbol: 's_0', unit: 'mL', words: 'spill, model, today' },
    modelMl: { symbol: 'L_0', unit: 'mL', words: 'liquid, model, today' },
    leastPercent
  },
  unit: '1',
  source: balance,
  compute: ({ measuredSpillMl, modelSpillMl, modelMl, leastPercent }) =>
    modelSpillMl <= (leastPercent / 100) * modelMl ? 1 : measuredSpillMl / modelSpillMl
});

const spilledByFactor = formula<{ factor: number; spilledMl: number }>({
  id: 'year.spilled-by-factor',
  yields: 'Liquid agent spilled a case, by the department’s own practice',
  words: 'the model’s spill for this plan times the factor of this practice',
  expression: 'k * s',
  inputs: {
    factor: { symbol: 'k', unit: '1', words: 'spill of this practice against the model’s' },
    spilledMl: { symbol: 's', unit: 'mL', words: 'spill, model, this plan' }
  },
  unit: 'mL',
  source: balance,
  compute: ({ factor, spilledMl }) => factor * spilledMl
});

const liquidOfParts = formula<{ takenUpMl: number; leftMl: number; spilledMl: number }>({
  id: 'year.liquid-of-parts',
  yields: 'Liquid agent a case, by the department’s own practice',
  words: 'what is taken up and left is the plan’s own; the spill is that of this practice',
  expression: 'u + l + s',
  inputs: {
    takenUpMl: { symbol: 'u', unit: 'mL', words: 'taken up, this plan' },
    leftMl: { symbol: 'l', unit: 'mL', words: 'left in circuit and lung, this plan' },
    spilledMl: { symbol: 's', unit: 'mL', words: 'spilled' }
  },
  unit: 'mL',
  source: balance,
  compute: ({ takenUpMl, leftMl, spilledMl }) => takenUpMl + leftMl + spilledMl
});

const spillFactorOfPurchases = formula<{
  purchasedMl: number;
  estimatedMl: number;
  spilledMl: number;
  leastPercent: number;
}>({
  id: 'year.spill-factor-of-purchases',
  yields: 'Spill against the model’s, by what was bought',
  words:
    'so much as the spill of today’s case groups without a measurement has to change for today’s use to meet the purchases; never below 0, and 1 where there is hardly any',
  expression: 'S <= p / 100 * E ? 1 : max(0, 1 + (B - E) / S)',
  inputs: {
    purchasedMl: { symbol: 'B', unit: 'mL', words: 'usable liquid bought' },
    estimatedMl: { symbol: 'E', unit: 'mL', words: 'today’s estimate' },
    spilledMl: { symbol: 'S', unit: 'mL', words: 'spill in it that nobody measured' },
    leastPercent
  },
  unit: '1',
  source: balance,
  compute: ({ purchasedMl, estimatedMl, spilledMl, leastPercent }) =>
    spilledMl <= (leastPercent / 100) * estimatedMl
      ? 1
      : Math.max(0, 1 + (purchasedMl - estimatedMl) / spilledMl)
});

/** Use of a year with the spill in it changed so that today's use meets the purchases. */
export const liquidAtSpillFactor = formula<{ liquidMl: number; factor: number; spilledMl: number }>({
  id: 'year.liquid-at-spill-factor',
  yields: 'Liquid agent, its spill scaled to the purchases',
  words: 'estimated liquid, with the spill in it that nobody measured taken by the factor of the purchases',
  expression: 'E + (k - 1) * S',
  inputs: {
    liquidMl: { symbol: 'E', unit: 'mL', words: 'estimated liquid' },
    factor: { symbol: 'k', unit: '1', words: 'spill against the model’s, by what was bought' },
    spilledMl: { symbol: 'S', unit: 'mL', words: 'spill in it that nobody measured' }
  },
  unit: 'mL',
  source: balance,
  compute: ({ liquidMl, factor, spilledMl }) => liquidMl + (factor - 1) * spilledMl
});

/** The same factor on what leaves by the exhaust: the share of the spill that leaks is the same. */
export const atExhaustAtSpillFactor = formula<{
  atExhaustMl: number;
  factor: number;
  unmeasuredMl: number;
}>({
  id: 'year.at-exhaust-at-spill-factor',
  yields: 'Agent that leaves by the exhaust, its spill scaled to the purchases',
  words:
    'what leaves by the exhaust, with the part of it that nobody measured taken by the factor of the purchases',
  expression: 'X + (k - 1) * x',
  inputs: {
    atExhaustMl: { symbol: 'X', unit: 'mL', words: 'agent that leaves by the exhaust, as estimated' },
    factor: { symbol: 'k', unit: '1', words: 'spill against the model’s, by what was bought' },
    unmeasuredMl: { symbol: 'x', unit: 'mL', words: 'the part of it that nobody measured' }
  },
  unit: 'mL',
  source: balance,
  compute: ({ atExhaustMl, factor, unmeasuredMl }) => atExhaustMl + (factor - 1) * unmeasuredMl
});

type Split = Pick<CaseUse, 'liquidMl' | 'takenUpMl' | 'spilledMl' | 'leftMl'>;

/** A reference set's rules by which mass is kept where a measurement or purchases are carried over; null: it has none. */
export interface MassBalance {
  /** Today's use of a case group as it was measured, split so that the parts add up to it. */
  readonly splitOfMeasured: (model: Split, measuredMl: Quantity) => Split;
  /** The factor k by which the spill of this practice differs from the model's. */
  readonly spillFactor: (today: { readonly model: Split; readonly measured: Split }) => Quantity;
  /** Another plan's use, with the spill of this practice. */
  readonly splitByFactor: (model: Split, factor: Quantity) => Split;
  /** The factor by which purchases say that the spill which nobody measured differs from the model's. */
  readonly spillFactorOfPurchases: (today: {
    readonly purchasedMl: Quantity;
    readonly estimatedMl: Quantity;
    readonly spilledMl: Quantity;
  }) => Quantity;
  /** Whether a case spills so little that a measurement of it says nothing about practice. */
  readonly saysNothing: (model: Split) => boolean;
}

export function massBalance(r: Reckoner, reference: ReferenceSet): MassBalance | null {
  const least = caseConstants(reference).leastSpilledShare;
  if (least === null) return null;
  return {
    splitOfMeasured: (model, measuredMl) => {
      const { takenUpMl, leftMl } = model;
      const liquidMl = r.apply(liquidMeasured, { measuredMl, takenUpMl, leftMl });
      return {
        liquidMl,
        takenUpMl,
        leftMl,
        spilledMl: r.apply(spilledMeasured, { liquidMl, takenUpMl, leftMl })
      };
    },
    spillFactor: ({ model, measured }) =>
      r.apply(spillFactor, {
        measuredSpillMl: measured.spilledMl,
        modelSpillMl: model.spilledMl,
        modelMl: model.liquidMl,
        leastPercent: r.constant(least)
      }),
    splitByFactor: ({ takenUpMl, leftMl, spilledMl: modelMl }, factor) => {
      const spilledMl = r.apply(spilledByFactor, { factor, spilledMl: modelMl });
      return {
        takenUpMl,
        leftMl,
        spilledMl,
        liquidMl: r.apply(liquidOfParts, { takenUpMl, leftMl, spilledMl })
      };
    },
    spillFactorOfPurchases: (today) =>
      r.apply(spillFactorOfPurchases, { ...today, leastPercent: r.constant(least) }),
    saysNothing: ({ spilledMl, liquidMl }) => r.value(spilledMl) <= (least.value / 100) * r.value(liquidMl)
  };
}
