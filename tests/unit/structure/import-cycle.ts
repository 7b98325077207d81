import { ownFile, type Sources } from './broken-directions.ts';
import { importsOf } from './imports-of.ts';

/** @returns the files of one circle of imports, types included, the first one repeated at the end; null if there is none */
export function importCycle(sources: Sources): string[] | null {
  const done = new Set<string>();
  const follow = (file: string, way: readonly string[]): string[] | null => {
    if (way.includes(file)) return [...way.slice(way.indexOf(file)), file];
    const source = sources.get(file);
    if (source === undefined || done.has(file)) return null;
    for (const { specifier } of importsOf(file, source)) {
      const target = ownFile(file, specifier);
      const cycle = target === null ? null : follow(target, [...way, file]);
      if (cycle) return cycle;
    }
    done.add(file);
    return null;
  };
  for (const file of sources.keys()) {
    const cycle = follow(file, []);
    if (cycle) return cycle;
  }
  return null;
}
