import { formatForEditing } from '#lib/numbers/format-number.ts';
import type { Field } from '#lib/workbook/field.ts';
import { optionsOf, readText } from '#lib/workbook/read-text.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/**
 * A cell's value as text that reads back to the same value: numbers with all their digits in the locale's way, a
 * choice by its label, or by its id where two entries share a label. Not given is ''.
 */
export function cellText(
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
    case 'choice': {
      const label = optionsOf(field, workbook).find((option) => option.id === String(value))?.label;
      if (label === undefined) return String(value);
      const read = readText(label, { field, workbook, locale });
      return 'value' in read && read.value === value ? label : String(value);
    }
  }
}
