/** What a field allows of a range, and how a range moves with its value. */
import type { Range } from '#lib/calc/input.ts';
import type { Field } from './field.ts';
import { isTooNearZero } from './field.ts';

type FieldOfNumber = Extract<Field, { kind: 'number' | 'money' }>;

/** The values that a field allows; a money field has no highest. Ends that are themselves not allowed are moved inwards. */
export function allowedRange(field: FieldOfNumber): {
  readonly low: number;
  readonly high: number | null;
} {
  if (field.kind === 'money') return { low: field.signed ? -Infinity : 0, high: null };
  const inside = (field.max - field.min) * 1e-6;
  return {
    low: field.aboveMin ? field.min + inside : field.min,
    high: field.belowMax ? field.max - inside : field.max
  };
}

/**
 * The range of a cell whose value goes from one number to another. One that holds the new value stays; another moves by
 * as much as the value did, as far as the field allows, so that it reaches as far below and above as before.
 */
export function rangeAround(
  field: FieldOfNumber,
  range: Range,
  { from, to }: { from: number; to: number }
): Range {
  if (to >= range.low && to <= range.high) return range;
  const allowed = allowedRange(field);
  const moved = (end: number): number => {
    // Twelve figures: the sum of two decimal numbers would otherwise show the dust of binary ones.
    const there = Number((end + to - from).toPrecision(12));
    const inside = Math.min(allowed.high ?? Infinity, Math.max(allowed.low, there));
    return isTooNearZero(inside) ? 0 : inside;
  };
  return { low: Math.min(to, moved(range.low)), high: Math.max(to, moved(range.high)) };
}
