import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

/** @param {string} folder of the project @returns {ReadonlyMap<string, string>} texts of the sources by file, relative to the folder */
export function readSources(folder) {
  const entries = readdirSync(path.join(folder, 'src/lib'), { withFileTypes: true, recursive: true });
  return new Map(
    entries
      .filter((entry) => entry.isFile() && /\.(ts|svelte)$/.test(entry.name))
      .map((entry) => {
        const place = path.join(entry.parentPath, entry.name);
        return [path.relative(folder, place), readFileSync(place, 'utf8')];
      })
  );
}
