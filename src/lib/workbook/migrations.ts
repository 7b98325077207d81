import { notesOnCapture } from './capture-of-older-files.ts';
import { quoted } from './field.ts';
import type { Migrated } from './migrate-version-1.ts';
import { migrateVersion1 } from './migrate-version-1.ts';
import type { Issue } from './workbook.ts';
import { workbookFormat, workbookVersion } from './workbook.ts';

/** Moves a document on by one version; `migrations[n]` takes version n to n + 1. */
type Migration = (document: Record<string, unknown>) => Migrated;

const migrations: Readonly<Record<number, Migration>> = { 1: migrateVersion1 };

/**
 * The document in the current version, with what is said of the move, or why it cannot be taken: not ours, or from a
 * newer version.
 */
export function migrate(
  document: unknown
): { readonly document: unknown; readonly notes: readonly string[] } | { readonly issues: readonly Issue[] } {
  if (typeof document !== 'object' || document === null || Array.isArray(document))
    return {
      issues: [{ path: 'workbook', sentence: `${quoted(document)} was given; allowed is a workbook.` }]
    };
  const given = document as Record<string, unknown>;
  if (given['format'] !== workbookFormat)
    return {
      issues: [
        {
          path: 'format',
          sentence: `Format: ${quoted(given['format'])} was given; allowed is “${workbookFormat}”.`
        }
      ]
    };
  const version = given['version'];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return {
      issues: [
        { path: 'version', sentence: `Version: ${quoted(version)} was given; allowed is ${workbookVersion}.` }
      ]
    };
  if (version > workbookVersion)
    return {
      issues: [
        {
          path: 'version',
          sentence: `Version: ${version} was given; this program reads up to version ${workbookVersion}. Open the file with a newer release.`
        }
      ]
    };
  let moved: Migrated = { document: given, notes: [] };
  for (let from = version; from < workbookVersion; from++) {
    const next = migrations[from]?.(moved.document);
    if (next !== undefined) moved = { document: next.document, notes: [...moved.notes, ...next.notes] };
  }
  return { document: moved.document, notes: [...moved.notes, ...notesOnCapture(moved.document)] };
}
