/** How far the model is off what was measured: by area, from the rows that are measurements, and from no others. */
import type { BodyModel } from '../input.ts';
import type { CheckArea, PublishedCheck } from './published-checks.ts';

export interface ModelError {
  readonly area: CheckArea;
  readonly rows: number;
  /** Mean of (model − measured) / measured. */
  readonly bias: number;
  /** Root of the mean square of the same. */
  readonly rootMeanSquare: number;
}

/**
 * Bias and root mean square of the relative error, for each area that has measurements, in the order of the rows. Rows
 * that are lower bounds, and rows without a figure of the model, take no part.
 */
export function modelErrors(checks: readonly PublishedCheck[], model: BodyModel): readonly ModelError[] {
  const byArea = new Map<CheckArea, number[]>();
  for (const { area, kind, accepted, published, model: figures } of checks) {
    const error = figures[model] / published - 1;
    if (kind !== 'measurement' || !Number.isFinite(accepted.high) || !Number.isFinite(error)) continue;
    const errors = byArea.get(area) ?? [];
    byArea.set(area, errors);
    errors.push(error);
  }
  return [...byArea].map(([area, errors]) => ({
    area,
    rows: errors.length,
    bias: errors.reduce((sum, error) => sum + error, 0) / errors.length,
    rootMeanSquare: Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / errors.length)
  }));
}
