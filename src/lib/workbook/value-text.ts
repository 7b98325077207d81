import { formatForEditing } from '#lib/numbers/format-number.ts';
import type { Field } from './field.ts';
import { optionsOf } from './read-text.ts';
import type { Workbook } from './workbook.ts';

/** A cell's value as text: a number with all its digits in the locale's way, a choice by its label. Not given is ''. */
export function valueText(
  value: unknown,
  { field, workbook, locale }: { field: Field; workbook: Workbook; locale: string }
): string {
  if (value === null || value === undefined) return '';
  switch (field.kind) {
    case 'number':
      return formatForEditing(value as number, { locale });
    case 'money':
      return formatForEditing(value as string, { locale });
    case 'flag':
      return value === true ? 'Yes' : 'No';
    case 'list':
      return (value as readonly number[]).join(', ');
    case 'text':
      return value as string;
    case 'choice':
      return optionsOf(field, workbook).find((option) => option.id === String(value))?.label ?? String(value);
  }
}
