/** Reads the tables of a file off the page's thread. */
import type { TablesOfFile, TablesWanted } from '#lib/files/read/read-tables.ts';
import { readTables } from '#lib/files/read/read-tables.ts';
import { workOn } from './run-in-worker.ts';

workOn<TablesWanted, TablesOfFile>(async (wanted) => {
  try {
    return await readTables(wanted);
  } catch {
    return {
      kind: 'refused',
      sentence: 'The file could not be read to its end: it was moved or changed meanwhile. Choose it again.'
    };
  }
});
