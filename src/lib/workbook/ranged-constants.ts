/** Ranges of published figures: what each may be, and how a range goes along where the figure changes. */
import type { Range } from '#lib/calc/input.ts';
import type { Constant } from '#lib/calc/reference/constant.ts';
import { plausibleRanges } from '#lib/calc/reference/plausible-ranges.ts';
import { publishedSpreadOf } from '#lib/calc/reference/published-spreads.ts';
import { constantIdOf, noRangeBecause } from '#lib/calc/reference/ranged-constant.ts';
import { findReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import type { NumberField } from './field.ts';
import { rangeAround } from './range-around.ts';
import type { Workbook } from './workbook.ts';

type OfReference = Pick<Workbook, 'referenceSet' | 'overrides'>;

/** A published figure as a range sees it: what it may be, and what is in force. */
export interface RangedConstant {
  readonly constant: Constant;
  /** As of a cell, within what is plausible. */
  readonly field: NumberField;
  /** The published value, or the user's own in its place. */
  readonly value: number;
}

/** Whether a range that stands there is of a published figure. */
export const isConstantPath = (path: string): boolean => constantIdOf(path) !== null;

/** The figure whose range stands at a path; null where the path is that of a cell, or the set has no such figure. */
export function rangedConstantAt(
  { referenceSet, overrides }: OfReference,
  path: string
): RangedConstant | null {
  const id = constantIdOf(path);
  const constant = id === null ? undefined : findReferenceSet(referenceSet)?.constants.get(id);
  if (constant === undefined) return null;
  const plausible = plausibleRanges[constant.kind];
  // What was published of its spread may reach beyond the values that were published.
  const spread = publishedSpreadOf(constant);
  return {
    constant,
    field: {
      kind: 'number',
      title: constant.name,
      // As units of cells are written.
      unit: constant.unit === '1' ? '' : constant.unit.replace('CO2', 'CO₂'),
      min: Math.min(plausible?.low ?? constant.value, spread?.low ?? Infinity),
      max: Math.max(plausible?.high ?? constant.value, spread?.high ?? -Infinity),
      words: constant.name
    },
    value: overrides.find((own) => own.constant === id)?.value ?? constant.value
  };
}

/** Why no range can stand at the path of a constant; null where one can, or where its set is not known here. */
export function constantFault(workbook: OfReference, path: string): string | null {
  if (findReferenceSet(workbook.referenceSet) === null) return null;
  const found = rangedConstantAt(workbook, path);
  return found === null
    ? `“${constantIdOf(path) ?? path}” is no published figure of reference set ${workbook.referenceSet}, so it cannot have a range.`
    : noRangeBecause(found.constant);
}

/** The workbook after a change of figures of its own or of its set, with the ranges of published figures gone along. */
export function constantRangesFollowing(before: OfReference, after: Workbook): Workbook {
  const ranges = Object.entries(after.ranges).flatMap(([path, range]): [string, Range][] => {
    if (constantIdOf(path) === null) return [[path, range]];
    if (constantFault(after, path) !== null) return [];
    const [from, to] = [rangedConstantAt(before, path), rangedConstantAt(after, path)];
    if (to === null) return [[path, range]];
    return [[path, rangeAround(to.field, range, { from: from?.value ?? to.value, to: to.value })]];
  });
  const isSame =
    ranges.length === Object.keys(after.ranges).length &&
    ranges.every(([path, range]) => range === after.ranges[path]);
  return isSame ? after : { ...after, ranges: Object.fromEntries(ranges) };
}
