/** Every set that a workbook may name, oldest first. */
import { referenceSet2026 } from './reference-set-2026-1.ts';
import { referenceSet2026Second } from './reference-set-2026-2.ts';
import { referenceSet2026Third } from './reference-set-2026-3.ts';
import type { ReferenceSet } from './reference-set.ts';

export const referenceSets: readonly ReferenceSet[] = [
  referenceSet2026,
  referenceSet2026Second,
  referenceSet2026Third
];

/** The set that a new workbook gets. */
export const newestReferenceSet: ReferenceSet = referenceSet2026Third;

/** The set with this id, or null where this version does not have it. */
export function findReferenceSet(id: string): ReferenceSet | null {
  return referenceSets.find((set) => set.id === id) ?? null;
}
