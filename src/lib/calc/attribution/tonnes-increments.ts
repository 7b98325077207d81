/** Alternatives by what they cost on balance: what a further tonne costs, and which of them are beaten. */
import { Decimal } from '../money/decimal.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Alternative } from './alternatives.ts';
import { distinctBy } from './alternatives.ts';
import { amountOfStep } from './step.ts';

export const netPresentCost = formula<{ npv: Decimal }, Decimal>({
  id: 'attribution.net-present-cost',
  yields: 'Net present cost',
  words:
    'The net present value with the sign of a cost: below 0 where the alternative saves money on balance.',
  expression: '-N',
  inputs: { npv: { symbol: 'N', unit: 'currency', words: 'net present value' } },
  unit: 'currency',
  source: 'definition',
  // Taken from 0, so that nothing is 0 and not −0.
  compute: ({ npv }) => new Decimal(0).minus(npv)
});

export const tonnesAvoided = formula<{ avoidedKg: number }>({
  id: 'attribution.tonnes-avoided',
  yields: 'Tonnes avoided over the appraisal',
  words: 'Emissions avoided over the appraisal, not discounted, in tonnes.',
  expression: 'm / 1000',
  inputs: { avoidedKg: { symbol: 'm', unit: 'kg CO2e', words: 'emissions avoided over the appraisal' } },
  unit: 'tonne CO2e',
  source: 'definition',
  compute: ({ avoidedKg }) => avoidedKg / 1000
});

export const furtherTonnes = formula<{ to: number; from: number }>({
  id: 'attribution.further-tonnes',
  yields: 'Further tonnes avoided',
  words: 'Tonnes avoided by the one alternative less those avoided by the other.',
  expression: 'b - a',
  inputs: {
    to: { symbol: 'b', unit: 'tonne CO2e', words: 'avoided by the alternative' },
    from: { symbol: 'a', unit: 'tonne CO2e', words: 'avoided by the one compared with' }
  },
  unit: 'tonne CO2e',
  source: 'definition',
  compute: ({ to, from }) => to - from
});

export const costOfFurtherTonne = formula<{ extraCost: Decimal; extraTonnes: number }, Decimal>({
  id: 'attribution.cost-of-further-tonne',
  yields: 'Cost of a further tonne',
  words:
    'The extra cost on balance over the further tonnes, these summed over the appraisal and not discounted.',
  expression: 'c / t',
  inputs: {
    extraCost: { symbol: 'c', unit: 'currency', words: 'extra net present cost' },
    extraTonnes: { symbol: 't', unit: 'tonne CO2e', words: 'further tonnes avoided' }
  },
  unit: 'currency/(tonne CO2e)',
  source: 'definition',
  compute: ({ extraCost, extraTonnes }) => extraCost.div(extraTonnes)
});

export interface TonnesRow {
  readonly id: string;
  readonly sameAs: readonly string[];
  readonly status: 'first' | 'step' | 'dominated' | 'extendedly-dominated';
  readonly netPresentCost: Quantity<Decimal>;
  readonly tonnes: Quantity;
  /** One that is at least as good in both, or the two between which every mix is better; empty for first and steps. */
  readonly beatenBy: readonly string[];
  /** Against the step before, or of a dominated one against what beats it; null for the first. */
  readonly step: {
    readonly against: string;
    readonly extraCost: Quantity<Decimal>;
    readonly extraTonnes: Quantity;
    /** null where no further tonne is avoided: no ratio is made of less. */
    readonly costPerTonne: Quantity<Decimal> | null;
  } | null;
}

interface Placed {
  readonly id: string;
  readonly sameAs: readonly string[];
  readonly netPresentCost: Quantity<Decimal>;
  readonly tonnes: Quantity;
  readonly cost: Decimal;
  readonly effect: number;
}

/**
 * Exclusive alternatives in the order of their net present cost, the cheapest first, which need not be today. Left out of
 * the steps are those that another beats in both cost and tonnes, and those that a mix of two others beats, whose cost
 * per further tonne would be above that of the next step. Of the steps that remain each costs more and avoids more than
 * the one before, and its cost per further tonne rises.
 *
 * The rules of dominance are those of cost-effectiveness analysis; nothing is ranked by a ratio below 0 (S. Taylor,
 * Energy Policy 48 (2012), 430).
 */
export function tonnesIncrements(r: Reckoner, alternatives: readonly Alternative[]): TonnesRow[] {
  const placed = distinctBy(alternatives, ({ run }) => [
    r.value(run.npv).toNumber(),
    r.value(run.co2eAvoidedOverAppraisalKg)
  ]).map(({ alternative: { id, run }, sameAs }): Placed => {
    const cost = r.apply(netPresentCost, { npv: run.npv });
    const tonnes = r.apply(tonnesAvoided, { avoidedKg: run.co2eAvoidedOverAppraisalKg });
    return { id, sameAs, netPresentCost: cost, tonnes, cost: r.value(cost), effect: r.value(tonnes) };
  });
  placed.sort((a, b) => a.cost.cmp(b.cost) || b.effect - a.effect);

  const undominated: Placed[] = [];
  for (const one of placed) if (one.effect > (undominated.at(-1)?.effect ?? -Infinity)) undominated.push(one);
  const steps: Placed[] = [];
  for (const one of undominated) {
    while (steps.length > 1 && steeper([steps.at(-2), steps.at(-1)], [steps.at(-1), one])) steps.pop();
    steps.push(one);
  }

  const stepTo = (one: Placed, from: Placed): TonnesRow['step'] => {
    const extraCost = r.apply(amountOfStep, { to: one.netPresentCost, from: from.netPresentCost });
    const extraTonnes = r.apply(furtherTonnes, { to: one.tonnes, from: from.tonnes });
    const costPerTonne =
      r.value(extraTonnes) > 0 ? r.apply(costOfFurtherTonne, { extraCost, extraTonnes }) : null;
    return { against: from.id, extraCost, extraTonnes, costPerTonne };
  };
  return placed.map((one): TonnesRow => {
    const { id, sameAs, netPresentCost: cost, tonnes } = one;
    const row = { id, sameAs, netPresentCost: cost, tonnes, beatenBy: [] };
    const place = steps.indexOf(one);
    if (place === 0) return { ...row, status: 'first', step: null };
    if (place > 0) return { ...row, status: 'step', step: stepTo(one, steps[place - 1] as Placed) };
    const beats = (other: Placed): boolean => other.cost.lte(one.cost) && other.effect >= one.effect;
    const better = undominated.includes(one) ? undefined : (steps.find(beats) ?? undominated.find(beats));
    if (better !== undefined)
      return { ...row, status: 'dominated', beatenBy: [better.id], step: stepTo(one, better) };
    const next = steps.findIndex(({ cost: dearer }) => dearer.gt(one.cost));
    const [below, above] = [steps[next - 1] as Placed, steps[next] as Placed];
    return {
      ...row,
      status: 'extendedly-dominated',
      beatenBy: [below.id, above.id],
      step: stepTo(one, below)
    };
  });
}

type Pair = readonly [Placed | undefined, Placed | undefined];

/** Whether a further tonne costs more in the first step than in the second. */
function steeper(first: Pair, second: Pair): boolean {
  return slope(first).gt(slope(second));
}

const slope = ([from, to]: Pair): Decimal =>
  (to as Placed).cost.minus((from as Placed).cost).div((to as Placed).effect - (from as Placed).effect);
