import type { Field } from '#lib/workbook/field.ts';
import { readText } from '#lib/workbook/read-text.ts';
import { valueText } from '#lib/workbook/value-text.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/**
 * A cell's value as text that reads back to the same value: as `valueText` has it, and a choice by its id where two
 * entries share a label. Not given is ''.
 */
export function cellText(
  value: unknown,
  { field, workbook, locale }: { field: Field; workbook: Workbook; locale: string }
): string {
  const text = valueText(value, { field, workbook, locale });
  if (field.kind !== 'choice' || value === null || value === undefined) return text;
  const read = readText(text, { field, workbook, locale });
  return 'value' in read && read.value === value ? text : String(value);
}
