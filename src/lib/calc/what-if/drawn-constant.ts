/** A published figure as an uncertain input: its value, and the input with another one drawn. */
import { caseConstants } from '../case/case-constants.ts';
import type { EstimateInput } from '../input.ts';
import { constantIdOf, followingFrom, withDrawn } from '../reference/ranged-constant.ts';
import type { ReferenceSet } from '../reference/reference-set.ts';

/** The value of the constant whose range stands at a path; null where it is none, or not in the set. */
export function constantValueAt(
  { reference }: Pick<EstimateInput, 'reference'>,
  path: string
): number | null {
  const id = constantIdOf(path);
  return id === null ? null : (reference.constants.get(id)?.value ?? null);
}

/** Puts a value into the reference set of an input; null where the path is that of no constant. */
export function constantWriter(
  { reference }: Pick<EstimateInput, 'reference'>,
  path: string
): ((to: EstimateInput, value: number) => EstimateInput) | null {
  const id = constantIdOf(path);
  if (id === null) return null;
  const read = readByCases(reference);
  const isSameForCases = ![...followingFrom(id)].some((each) => read.has(each));
  return (to, value) => ({
    ...to,
    reference: withDrawn(to.reference, { id, value, isSameForCases })
  });
}

/** Ids of the constants that a case reads: whatever else is drawn, its results stay. */
function readByCases(set: ReferenceSet): ReadonlySet<string> {
  const ids = new Set<string>();
  const visit = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    if ('id' in value && 'printed' in value) ids.add(String(value.id));
    else Object.values(value).forEach(visit);
  };
  visit(caseConstants(set));
  return ids;
}
