/** What each lever of a scenario earns, the parts adding up to the whole. */
import type { Against } from '../reckoning/against.ts';
import type { Lever } from '../input.ts';
import type { Decimal } from '../money/decimal.ts';
import type { Formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { LeverRuns } from './lever-runs.ts';
import { shapleyAmounts, shapleyParts } from './shapley.ts';
import { amountOfStep, emissionsOfStep } from './step.ts';

export interface Part {
  readonly lever: Lever;
  readonly yearlySaving: Quantity<Decimal>;
  readonly co2eAvoidedKg: Quantity;
  readonly npv: Quantity<Decimal>;
}

/** The parts of a scenario's levers, in their order; each figure's parts add up to the figure of the whole scenario. */
export function partsOf(r: Reckoner, runs: LeverRuns): Part[] {
  const { levers } = runs;
  const ofSet = (set: number): readonly Lever[] => levers.filter((_, place) => (set & (1 << place)) !== 0);
  const gain = (change: number, before: number) => {
    const lever = levers[change] as Lever;
    const others = ofSet(before);
    return {
      from: runs.with(others),
      to: runs.with([...others, lever]),
      called: calledGain(r, lever, others)
    };
  };
  const amounts = (of: (run: Against) => Quantity<Decimal>): Quantity<Decimal>[] =>
    shapleyAmounts(r, {
      count: levers.length,
      gainOf: (change, before) => {
        const { from, to, called } = gain(change, before);
        return r.apply(called(amountOfStep), { to: of(to), from: of(from) });
      }
    });
  const yearlySaving = amounts((run) => run.yearlySaving);
  const npv = amounts((run) => run.npv);
  const co2eAvoidedKg = shapleyParts(r, {
    count: levers.length,
    gainOf: (change, before) => {
      const { from, to, called } = gain(change, before);
      return r.apply(called(emissionsOfStep), { toKg: to.co2eAvoidedKg, fromKg: from.co2eAvoidedKg });
    }
  });
  return levers.map((lever, place) => ({
    lever,
    yearlySaving: yearlySaving[place] as Quantity<Decimal>,
    co2eAvoidedKg: co2eAvoidedKg[place] as Quantity,
    npv: npv[place] as Quantity<Decimal>
  }));
}

/** In a working, the difference of two runs says which lever is added to which. */
function calledGain(
  r: Reckoner,
  lever: Lever,
  others: readonly Lever[]
): <I, T>(difference: Formula<I, T>) => Formula<I, T> {
  if (!r.records) return (difference) => difference;
  const yields =
    others.length === 0
      ? `What ${lever} brings by itself`
      : `What ${lever} brings where ${others.join(', ')} ${others.length === 1 ? 'is' : 'are'} changed already`;
  return (difference) => ({ ...difference, yields });
}
