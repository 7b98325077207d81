import type { VersionHead } from './shelf.ts';

/** Saves that are always kept. */
const lastSaves = 50;
/** Days before those of which the last save is kept. */
const lastDays = 50;

/**
 * Which versions stay: the last 50 saves and, because somebody who types fills those in an afternoon, the last save of
 * each of the 50 days of work before them.
 * @param versions the newest last
 */
export function keptVersions(versions: readonly VersionHead[]): readonly VersionHead[] {
  const older = versions.slice(0, -lastSaves);
  const lastOfDay = new Map(older.map((version) => [version.savedAt.slice(0, 10), version]));
  return [...[...lastOfDay.values()].slice(-lastDays), ...versions.slice(-lastSaves)];
}
