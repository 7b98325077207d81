/** A log of a million anaesthetics, streamed from the disk and grouped: how long, and in how much memory. */
import { createReadStream, createWriteStream, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { csvRows } from '#lib/files/case-log/csv-rows.ts';
import { openCaseLog } from '#lib/files/case-log/open-case-log.ts';
import { readCaseLog } from '#lib/files/case-log/read-case-log.ts';
import type { BenchRow } from './bench-row.ts';
import { caseLog } from './case-log-generator.ts';

const rows = 1_000_000;

const seconds = async (work: () => Promise<void>): Promise<number> => {
  const start = performance.now();
  await work();
  return (performance.now() - start) / 1000;
};

export async function bench(): Promise<BenchRow[]> {
  const before = process.memoryUsage().rss;
  let peak = before;
  const sample = () => void (peak = Math.max(peak, process.memoryUsage().rss));
  const folder = mkdtempSync(path.join(tmpdir(), 'case-log-bench-'));
  try {
    const file = path.join(folder, 'log.csv');
    await pipeline(Readable.from(caseLog({ rows, seed: 1 })), createWriteStream(file));
    const pieces = () => createReadStream(file, { highWaterMark: 1 << 20 }) as AsyncIterable<Uint8Array>;

    const rowsOnly = await seconds(async () => {
      let count = 0;
      for await (const batch of csvRows(pieces(), 'utf-8')) {
        count += batch.rows.length;
        sample();
      }
      if (count !== rows + 1) throw new Error(`${count} rows were read.`);
    });

    const opened = await openCaseLog(pieces, { locale: 'en-GB' });
    if (opened.kind === 'refused') throw new Error(opened.sentence);
    let groups = 0;
    const grouped = await seconds(async () => {
      const result = await readCaseLog(
        pieces,
        { plan: opened.plan, columns: opened.columns, allowed: [] },
        { progress: sample }
      );
      if (result.kind !== 'grouped' || result.cases.rowsRead !== rows)
        throw new Error('The log was not grouped.');
      groups = result.cases.groups.length;
    });
    const growthMb = (peak - before) / 1e6;
    const megabytes = statSync(file).size / 1e6;
    return [
      {
        name: `${groups} groups from a million cases (${megabytes.toFixed(0)} MB)`,
        value: grouped,
        unit: 's',
        target: 'below 60 s',
        met: grouped < 60
      },
      {
        name: 'time against reading the rows alone',
        value: grouped / rowsOnly,
        unit: 'times',
        target: 'at most 5 times',
        met: grouped / rowsOnly <= 5
      },
      {
        name: 'memory that is taken beyond the start, at most',
        value: growthMb,
        unit: 'MB',
        target: 'below 300 MB',
        met: growthMb < 300
      }
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
