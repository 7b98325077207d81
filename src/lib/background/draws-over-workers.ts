/** Shares the draws of an uncertainty run among workers. */
import { buffersOf } from '#lib/calc/uncertainty/run.ts';
import type { RunSlice } from '#lib/calc/uncertainty/run.ts';
import type { RunSummary } from '#lib/calc/what-if/draws.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { WhatIfPort } from './what-if-messages.ts';

/** Short enough for a steady progress bar, long enough that handing over costs nothing. */
const drawsInSlice = 50;

export interface SharedRun {
  /** Rejects with the sentence of the first worker that fails; never settles once cancelled. */
  readonly summary: Promise<RunSummary>;
  /** Ends all workers at once. */
  readonly cancel: () => void;
}

/**
 * Runs the workbook's draws. A worker that is done with a slice takes the next one, so that a slow one holds up nobody;
 * a draw depends on the seed and its number alone, so that who makes it changes nothing.
 * @param onProgress told the number of draws made so far.
 */
export function drawOverWorkers(
  workbook: Workbook,
  {
    workers,
    openPort,
    onProgress
  }: { workers: number; openPort: () => WhatIfPort; onProgress: (done: number) => void }
): SharedRun {
  const { draws } = workbook.sampling;
  const ports = Array.from({ length: Math.max(1, workers) }, openPort);
  const close = (): void => ports.forEach((port) => port.close());
  const summary = new Promise<RunSummary>((resolve, reject) => {
    const slices: RunSlice[] = [];
    let next = 0;
    let done = 0;
    const handOut = (port: WhatIfPort): void => {
      if (next >= draws) return;
      const from = next;
      next = Math.min(draws, from + drawsInSlice);
      port.post({ kind: 'slice', from, to: next });
    };
    for (const port of ports)
      port.onreply = (reply) => {
        if (reply.kind === 'slice') {
          slices.push(reply.slice);
          done += reply.slice.to - reply.slice.from;
          onProgress(done);
          if (done < draws) handOut(port);
          else port.post({ kind: 'sum-up', slices }, slices.flatMap(buffersOf));
        } else {
          close();
          if (reply.kind === 'summary') resolve(reply.summary);
          else reject(new Error(`An unforeseen ${reply.kind}.`));
        }
      };
    for (const port of ports) {
      port.onfail = (sentence) => {
        close();
        reject(new Error(sentence));
      };
      port.post({ kind: 'set-up', workbook });
      handOut(port);
    }
  });
  return { summary, cancel: close };
}
