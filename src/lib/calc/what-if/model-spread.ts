/**
 * How far the model itself may be off, as an uncertainty run draws it: one factor on what is taken up and one on what is
 * spilled, the same for all cases of a draw. Their spread is the root mean square error of the model against what was
 * measured, of the default body model: of uptake in closed circuits, and, for the spill, of differences between two
 * flows, in which uptake largely cancels. A test recomputes both from the measured rows.
 */
import type { EstimateInput, ModelErrorFactors } from '../input.ts';
import type { UncertainInput } from '../uncertainty/draws.ts';

type Factor = keyof ModelErrorFactors;

/** Root mean square error by reference set, as a share of what was measured. */
export const modelSpreads: Readonly<Record<string, Readonly<Record<Factor, number>>>> = {
  '2026-1': { uptakeFactor: 0.208, spillFactor: 0.177 },
  '2026-2': { uptakeFactor: 0.209, spillFactor: 0.218 },
  // No row of either area has nitrous oxide in it, which is what this set adds.
  '2026-3': { uptakeFactor: 0.209, spillFactor: 0.218 }
};
const newest = modelSpreads['2026-3'] as Readonly<Record<Factor, number>>;

export const modelErrorPaths = {
  uptakeFactor: 'modelError.uptakeFactor',
  spillFactor: 'modelError.spillFactor'
} as const satisfies Record<Factor, string>;
const factorAt = (path: string): Factor | undefined =>
  (Object.keys(modelErrorPaths) as Factor[]).find((factor) => modelErrorPaths[factor] === path);

/** Whether an input of a run is the model's own error, rather than a cell. */
export const isModelError = (path: string): boolean => factorAt(path) !== undefined;

/** Half the width of a symmetric distribution on which values scatter by 1: its standard deviation is a fixed part of it. */
const halfWidths = { pert: 7 ** 0.5, triangular: 6 ** 0.5 } as const;

/** The two factors as a run draws them, around 1. */
export const modelErrorInputs = ({
  reference,
  sampling
}: Pick<EstimateInput, 'reference' | 'sampling'>): UncertainInput[] =>
  Object.entries(modelErrorPaths).map(([factor, path]) => {
    const spread = (modelSpreads[reference.id] ?? newest)[factor as Factor];
    const halfWidth = halfWidths[sampling.shape] * spread;
    return { path, low: 1 - halfWidth, mode: 1, high: 1 + halfWidth };
  });

/** Puts a factor into an input; null where the path is none of the two. */
export function modelErrorWriter(
  path: string
): ((input: EstimateInput, value: number) => EstimateInput) | null {
  const factor = factorAt(path);
  if (factor === undefined) return null;
  return (to, value) => ({
    ...to,
    modelError: { uptakeFactor: 1, spillFactor: 1, ...to.modelError, [factor]: value }
  });
}
