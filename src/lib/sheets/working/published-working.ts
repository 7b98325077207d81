import { recordedCheck } from '#lib/calc/published/published-checks.ts';
import type { BodyModel } from '#lib/calc/input.ts';
import type { ReferenceSet } from '#lib/calc/reference/reference-set.ts';
import { workingOf } from '#lib/calc/working/recorder.ts';
import type { Working } from '#lib/calc/working/working.ts';

/** The name by which the model's figure of a published row is asked for. */
export const checkPath = (id: string, bodyModel: BodyModel): string => `check.${id}.${bodyModel}`;

/** How the model came to its figure of a published row, made once somebody asks. */
export const checkWorking =
  (id: string, of: { readonly reference: ReferenceSet; readonly bodyModel: BodyModel }) => (): Working =>
    workingOf(recordedCheck(id, of));
