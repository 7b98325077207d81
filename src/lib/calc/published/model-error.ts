/** How far the model is off what was measured: by area, from the rows that are measurements, and from no others. */
import type { BodyModel, SolubilityGroup } from '../input.ts';
import type { ReferenceSet } from '../reference/reference-set.ts';
import { formula } from '../working/formula.ts';
import { plain } from '../working/plain.ts';
import { recorder } from '../working/recorder.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { CheckArea, PublishedCheck } from './published-checks.ts';
import { recordedCheck } from './published-checks.ts';

export interface ModelError {
  readonly area: CheckArea;
  readonly rows: number;
  /** Mean of 100 · (model − measured) / measured, %. */
  readonly biasPercent: number;
  /** Root of the mean square of the same, %. */
  readonly rootMeanSquarePercent: number;
}

const relativeError = formula<{ model: number; published: number }>({
  id: 'published.relative-error',
  yields: 'Error of the model in one row',
  words: 'the model’s figure over the measured one, less 1, in per cent',
  expression: '100 * (m / p - 1)',
  inputs: {
    model: { symbol: 'm', unit: '1', words: 'the model’s figure' },
    published: { symbol: 'p', unit: '1', words: 'the measured figure', testRange: [0.5, 100] }
  },
  unit: '%',
  source: 'definition',
  compute: ({ model, published }) => 100 * (model / published - 1)
});

const meanError = formula<{ errors: readonly number[]; rows: number }>({
  id: 'published.bias',
  yields: 'Bias of the model in this area',
  words: 'the mean of the errors: above 0 the model gives more than was measured',
  expression: 'sum(e) / n',
  inputs: {
    errors: { symbol: 'e', unit: '%', words: 'errors of the rows' },
    rows: { symbol: 'n', unit: '1', words: 'rows' }
  },
  unit: '%',
  source: 'definition',
  compute: ({ errors, rows }) => errors.reduce((sum, error) => sum + error, 0) / rows
});

const rootMeanSquare = formula<{ errors: readonly number[]; rows: number }>({
  id: 'published.root-mean-square',
  yields: 'Root mean square error of the model in this area',
  words: 'the root of the mean of the squared errors',
  expression: 'sqrt(dot(e, e) / n)',
  inputs: {
    errors: { symbol: 'e', unit: '%', words: 'errors of the rows' },
    rows: { symbol: 'n', unit: '1', words: 'rows' }
  },
  unit: '%',
  source: 'definition',
  compute: ({ errors, rows }) => Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / rows)
});

function errorOf(
  r: Reckoner,
  checks: readonly PublishedCheck[],
  modelled: (check: PublishedCheck) => Quantity
): { readonly bias: Quantity; readonly rootMeanSquare: Quantity } {
  const errors = checks.map((check) =>
    r.apply(relativeError, {
      model: modelled(check),
      published: r.assumption(check.published, check.unit, `Measured: ${check.source}.`)
    })
  );
  const rows = r.assumption(errors.length, '1', 'Measurements of this area that take part.');
  return {
    bias: r.apply(meanError, { errors, rows }),
    rootMeanSquare: r.apply(rootMeanSquare, { errors, rows })
  };
}

/** Rows that take part: lower bounds, and rows without a figure of the model, do not. */
const measuredIn = (
  checks: readonly PublishedCheck[],
  { area, bodyModel }: { area: CheckArea; bodyModel: BodyModel }
): readonly PublishedCheck[] =>
  checks.filter(
    (check) =>
      check.area === area &&
      check.kind === 'measurement' &&
      Number.isFinite(check.accepted.high) &&
      Number.isFinite(check.model[bodyModel] / check.published)
  );

/** Bias and root mean square of the relative error, for each area that has measurements, in the order of the rows. */
export function modelErrors(checks: readonly PublishedCheck[], bodyModel: BodyModel): readonly ModelError[] {
  return [...new Set(checks.map(({ area }) => area))].flatMap((area) => {
    const rows = measuredIn(checks, { area, bodyModel });
    if (rows.length === 0) return [];
    const error = errorOf(plain, rows, (check) => plain.assumption(check.model[bodyModel], check.unit, ''));
    return [
      {
        area,
        rows: rows.length,
        biasPercent: plain.value(error.bias),
        rootMeanSquarePercent: plain.value(error.rootMeanSquare)
      }
    ];
  });
}

/** The same figures of one area with their working, down to the cases that were run for each row. */
export const recordedModelError = (
  checks: readonly PublishedCheck[],
  {
    area,
    reference,
    bodyModel,
    spillShareInspiredFraction = null,
    solubilityGroup = 'of-the-set'
  }: {
    area: CheckArea;
    reference: ReferenceSet;
    bodyModel: BodyModel;
    spillShareInspiredFraction?: number | null;
    solubilityGroup?: SolubilityGroup;
  }
): { readonly bias: Quantity; readonly rootMeanSquare: Quantity } =>
  errorOf(recorder, measuredIn(checks, { area, bodyModel }), ({ id }) =>
    recordedCheck(id, { reference, bodyModel, spillShareInspiredFraction, solubilityGroup })
  );
