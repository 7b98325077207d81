/**
 * Where a circle spills its gas, as an uncertainty run draws it: of machines whose cell is empty nobody knows it. The
 * share that leaves as inspired gas is 1 as such a machine is computed, and about 0.33, the dead-space share, where the
 * relief valve sits on the expiratory side. It is drawn as one of a few shares between the two, the same for all these
 * machines, so that a run solves each case a few times and not in every draw.
 */
import type { EstimateInput } from '../input.ts';
import type { UncertainInput } from '../uncertainty/draws.ts';

/** The shares that are drawn, each as often; the last one is that of a machine as it is computed. */
export const drawnSpillShares = [0.33, 0.5, 0.67, 0.83, 1] as const;

export const spillSharePath = 'modelError.spillShare';

const isNotKnown = ({ spillShareInspiredFraction }: EstimateInput['machines'][number]): boolean =>
  spillShareInspiredFraction === null;

/** The share as a run draws it; none where every machine says its own. */
export const spillShareInputs = ({ machines }: Pick<EstimateInput, 'machines'>): UncertainInput[] =>
  machines.some(isNotKnown)
    ? [{ path: spillSharePath, choices: drawnSpillShares.length, mode: drawnSpillShares.length - 1 }]
    : [];

/** Puts a share, by its place in the list, into the machines that say none of their own; null for any other path. */
export function spillShareWriter(
  path: string
): ((input: EstimateInput, value: number) => EstimateInput) | null {
  if (path !== spillSharePath) return null;
  return (to, value) => {
    const share = drawnSpillShares[value];
    // As it is computed without a draw: the machines stay what they are, and their cases are known.
    if (share === undefined || share === 1) return to;
    return {
      ...to,
      machines: to.machines.map((machine) =>
        isNotKnown(machine) ? { ...machine, spillShareInspiredFraction: share } : machine
      )
    };
  };
}
