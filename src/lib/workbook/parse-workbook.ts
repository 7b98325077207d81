import { findReferenceSet, referenceSets } from '#lib/calc/reference/reference-sets.ts';
import { crossChecks } from './cross-checks.ts';
import { quoted } from './field.ts';
import { migrate } from './migrations.ts';
import { placeFault } from './source-notes.ts';
import type { Issue, Workbook } from './workbook.ts';
import { checkShape } from './workbook.ts';

export type ParsedWorkbook =
  | {
      readonly kind: 'workbook';
      readonly workbook: Workbook;
      /** What was moved on from an older version and now says something else than when it was saved. */
      readonly notes: readonly string[];
    }
  /** Sound, but made with a reference set that this version does not have: to be read only, or moved on request. */
  | { readonly kind: 'unknown-reference'; readonly workbook: Workbook; readonly sentence: string }
  | { readonly kind: 'refused'; readonly issues: readonly Issue[] };

/**
 * A workbook from parsed JSON, of this version or an older one.
 * @returns the workbook, or every issue with its path and a sentence; nothing is repaired or dropped.
 */
export function parseWorkbook(document: unknown): ParsedWorkbook {
  const migrated = migrate(document);
  if ('issues' in migrated) return { kind: 'refused', issues: migrated.issues };
  const shaped = checkShape(migrated.document);
  if ('issues' in shaped) return { kind: 'refused', issues: shaped.issues };
  const issues = [...crossChecks(shaped.workbook), ...misplacedNotes(shaped.workbook)];
  if (issues.length > 0) return { kind: 'refused', issues };
  const { referenceSet } = shaped.workbook;
  if (findReferenceSet(referenceSet) === null)
    return {
      kind: 'unknown-reference',
      workbook: shaped.workbook,
      sentence: `Reference set: ${quoted(referenceSet)} was given; this version has ${referenceSets.map((set) => set.id).join(', ')}.`
    };
  return { kind: 'workbook', workbook: shaped.workbook, notes: migrated.notes };
}

/** Notes where no cell can be; one of a cell that is not there at present, as of a payment that was taken back, may stay. */
const misplacedNotes = ({ notes = {} }: Workbook): readonly Issue[] =>
  Object.keys(notes).flatMap((path) => {
    const sentence = placeFault(path);
    return sentence === null ? [] : [{ path: `notes.${path}`, sentence }];
  });
