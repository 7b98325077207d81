/** The model against what others measured: the rows, its error over them, and how each figure came about. */
import type { ModelError } from '#lib/calc/published/model-error.ts';
import { modelErrors, recordedModelError } from '#lib/calc/published/model-error.ts';
import type { CheckArea, PublishedCheck } from '#lib/calc/published/published-checks.ts';
import { publishedChecks, recordedCheck } from '#lib/calc/published/published-checks.ts';
import type { BodyModel, SolubilityGroup } from '#lib/calc/input.ts';
import type { ReferenceSet } from '#lib/calc/reference/reference-set.ts';
import { workingOf } from '#lib/calc/working/recorder.ts';
import type { Working } from '#lib/calc/working/working.ts';

/** Every published row under a set; some thirty anaesthetics are run for each body model, so after a sheet is there. */
export const checksUnder = (
  reference: ReferenceSet,
  spillShareInspiredFraction: number | null = null,
  solubilityGroup?: SolubilityGroup
): readonly PublishedCheck[] => publishedChecks(reference, spillShareInspiredFraction, solubilityGroup);

export const errorsOver = (checks: readonly PublishedCheck[], bodyModel: BodyModel): readonly ModelError[] =>
  modelErrors(checks, bodyModel);

/** The name by which the model's figure of a published row is asked for. */
export const checkPath = (id: string, bodyModel: BodyModel): string => `check.${id}.${bodyModel}`;

/** How the model came to its figure of a published row, made once somebody asks. */
export const checkWorking =
  (id: string, of: { readonly reference: ReferenceSet; readonly bodyModel: BodyModel }) => (): Working =>
    workingOf(recordedCheck(id, of));

export type ErrorFigure = 'bias' | 'rootMeanSquare';

/** The name by which the model's error in an area is asked for. */
export const errorPath = (
  area: CheckArea,
  figure: ErrorFigure,
  {
    bodyModel,
    spillShare = null,
    set,
    solubilityGroup
  }: {
    readonly bodyModel: BodyModel;
    readonly spillShare?: number | null;
    /** Where it is not the workbook's own. */
    readonly set?: string;
    readonly solubilityGroup?: SolubilityGroup;
  }
): string =>
  [
    `model-error.${area.replaceAll(' ', '-')}.${figure}.${bodyModel}`,
    ...(spillShare === null ? [] : [`spilled-at-${spillShare}`]),
    ...(set === undefined ? [] : [`set-${set}`]),
    ...(solubilityGroup === undefined ? [] : [solubilityGroup])
  ].join('.');

/** How the model's error in an area came about, made once somebody asks. */
export const errorWorking =
  (
    checks: readonly PublishedCheck[],
    figure: ErrorFigure,
    of: {
      readonly area: CheckArea;
      readonly reference: ReferenceSet;
      readonly bodyModel: BodyModel;
      readonly spillShareInspiredFraction?: number | null;
      readonly solubilityGroup?: SolubilityGroup;
    }
  ) =>
  (): Working =>
    workingOf(recordedModelError(checks, of)[figure]);
