import type { Field } from '#lib/workbook/field.ts';
import { caseFields } from '#lib/workbook/fields.ts';
import type { TableColumn } from './tables.ts';
import { headerOf } from './tables.ts';

/** Cells of a case group that a file may give a range for. */
const ranged = ['casesPerYear', 'minutes', 'ageYears', 'weightKg'] as const;

/** Further columns of a case mix in a file: what the user, or a log, holds possible for a cell, low and high. */
export function rangeColumns(currency: string): readonly TableColumn[] {
  return ranged.flatMap((key) => {
    const field: Field = caseFields[key];
    return (['low', 'high'] as const).map((end) => ({
      key: `${key}.${end}`,
      header: headerOf({ ...field, title: `${field.title}, ${end}` }, currency),
      field: null
    }));
  });
}
