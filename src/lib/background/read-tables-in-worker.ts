import type { TablesOfFile, TablesWanted } from '#lib/files/read/read-tables.ts';
import { runInWorker } from './run-in-worker.ts';

/** Reads the tables of a file in a worker; null once it was cancelled. */
export async function readTablesInWorker(
  wanted: TablesWanted,
  signal: AbortSignal
): Promise<TablesOfFile | null> {
  const open = () => new Worker(new URL('./read-tables-worker.ts', import.meta.url), { type: 'module' });
  const outcome = await runInWorker<TablesWanted, TablesOfFile>(open, wanted, { signal });
  switch (outcome.kind) {
    case 'result':
      return outcome.result;
    case 'cancelled':
      return null;
    case 'failed':
      return { kind: 'refused', sentence: outcome.sentence };
  }
}
