import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Ask, Reply, WhatIfPort } from '#lib/background/what-if-messages.ts';
import { drawOverWorkers } from '#lib/background/draws-over-workers.ts';
import { whatIfService } from '#lib/background/what-if-service.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

// Time passes only where a test lets it: who is slow is settled by the test, not by the computer.
beforeEach(() => void vi.useFakeTimers({ toFake: ['setTimeout'] }));
afterEach(() => void vi.useRealTimers());

/** Lets all workers do what they were asked, and what follows from it, until nothing is left to do. */
async function settled<T>(summary: Promise<T>): Promise<T> {
  // A failure belongs to whoever awaits the result, also where it comes before anybody does.
  summary.catch(() => undefined);
  await vi.runAllTimersAsync();
  return summary;
}

const demo = demoWorkbook();
const workbook: Workbook = { ...demo, sampling: { ...demo.sampling, draws: 160 } };

/** A worker without a thread: what is posted is answered later, in its turn, after what structured cloning leaves. */
function openPort({ delayMs = 0, closed = { count: 0 } } = {}): WhatIfPort {
  let isOpen = true;
  const service = whatIfService();
  const answer = (ask: Ask): void => {
    try {
      service(ask, (reply: Reply) => {
        if (isOpen) port.onreply(structuredClone(reply));
      });
    } catch (error) {
      port.onfail((error as Error).message);
    }
  };
  const port: WhatIfPort = {
    post: (ask: Ask) => {
      const cloned = structuredClone(ask);
      setTimeout(() => isOpen && answer(cloned), delayMs);
    },
    onreply: () => undefined,
    onfail: () => undefined,
    close: () => {
      isOpen = false;
      closed.count += 1;
    }
  };
  return port;
}

describe('draws over workers', () => {
  test('the same seed gives the same summary, whatever the number of workers and however fast each is', async () => {
    const summaryBy = (workers: number) => {
      let opened = 0;
      return settled(
        drawOverWorkers(workbook, {
          workers,
          openPort: () => openPort({ delayMs: (opened += 7) % 20 }),
          onProgress: () => undefined
        }).summary
      );
    };
    const alone = await summaryBy(1);
    expect(alone.draws).toBe(160);
    expect(alone.scenarios.map(({ id }) => id)).toEqual(['habit', 'circle', 'closed']);
    expect(await summaryBy(2)).toEqual(alone);
    expect(await summaryBy(5)).toEqual(alone);
  });

  test('another seed gives other bands', async () => {
    const summaryOf = (seed: number) =>
      settled(
        drawOverWorkers(
          { ...workbook, sampling: { ...workbook.sampling, draws: 50, seed } },
          { workers: 1, openPort: () => openPort(), onProgress: () => undefined }
        ).summary
      );
    const [one, two] = [await summaryOf(1), await summaryOf(2)];
    expect(one.scenarios[2]?.bands.npv).not.toEqual(two.scenarios[2]?.bands.npv);
    expect(one.scenarios[2]?.entered).toEqual(two.scenarios[2]?.entered);
  });

  test('progress rises to the whole; all workers are ended at the end', async () => {
    const seen: number[] = [];
    const closed = { count: 0 };
    await settled(
      drawOverWorkers(workbook, {
        workers: 3,
        openPort: () => openPort({ closed }),
        onProgress: (done) => seen.push(done)
      }).summary
    );
    expect(seen).toEqual(seen.toSorted((a, b) => a - b));
    expect(seen.at(-1)).toBe(160);
    expect(closed.count).toBe(3);
  });

  test('cancelled, it ends all workers and settles no more', async () => {
    const closed = { count: 0 };
    let hasEnded = false;
    const run = drawOverWorkers(workbook, {
      workers: 2,
      openPort: () => openPort({ closed, delayMs: 5 }),
      onProgress: () => run.cancel()
    });
    void run.summary.finally(() => (hasEnded = true));
    await vi.runAllTimersAsync();
    expect(closed.count).toBe(2);
    expect(hasEnded).toBe(false);
  });

  test('a worker that fails ends the run with its sentence', async () => {
    const unsound: Workbook = {
      ...workbook,
      ranges: { 'agents.sevoflurane.bottlePrice': { low: 140, high: 85 } }
    };
    await expect(
      settled(
        drawOverWorkers(unsound, { workers: 2, openPort: () => openPort(), onProgress: () => undefined })
          .summary
      )
    ).rejects.toThrow(/low must not be above high/);
  });
});
