import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { projectFolder } from './project-folder.mjs';

/**
 * A short text that changes when any of the files does: their names and bytes, not their dates, which a fresh clone
 * or a changed branch sets at will.
 *
 * @param {readonly string[]} places files and folders, relative to the project; one that is missing counts as such
 * @param {string} [folder]
 */
export function fingerprint(places, folder = projectFolder) {
  const hash = createHash('sha256');
  for (const file of places.flatMap((place) => filesUnder(path.join(folder, place)))) {
    const bytes = readFileSync(file);
    hash.update(`${path.relative(folder, file).split(path.sep).join('/')}\n${bytes.length}\n`).update(bytes);
  }
  return hash.digest('hex').slice(0, 16);
}

/** @param {string} place @returns {string[]} */
function filesUnder(place) {
  if (!existsSync(place)) return [];
  if (!statSync(place).isDirectory()) return [place];
  return readdirSync(place, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(entry.parentPath, entry.name))
    .sort();
}
