import type { Field } from './field.ts';
import { fieldAt } from './field-at.ts';
import { rangedConstantAt } from './ranged-constants.ts';
import type { Workbook } from './workbook.ts';

/** What may stand at a path that can have a range: of a cell its field, of a published figure what is plausible. */
export const rangedFieldAt = (
  workbook: Pick<Workbook, 'referenceSet' | 'overrides'>,
  path: string
): Field | undefined => rangedConstantAt(workbook, path)?.field ?? fieldAt(path);
