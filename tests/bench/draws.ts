import { Worker, isMainThread, parentPort, workerData } from 'node:worker_threads';
import { runDraws } from '#lib/calc/uncertainty/run.ts';
import { setUpRun } from '#lib/calc/what-if/draws.ts';
import type { Ask, Reply, WhatIfPort } from '#lib/background/what-if-messages.ts';
import { drawOverWorkers } from '#lib/background/draws-over-workers.ts';
import { whatIfService } from '#lib/background/what-if-service.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { BenchRow } from './bench-row.ts';

const asWorker = 'draws';

// The bundle of this file is its own worker.
if (!isMainThread && workerData === asWorker) {
  const answer = whatIfService();
  parentPort?.on('message', (ask: Ask) =>
    answer(ask, (reply, transfer = []) => parentPort?.postMessage(reply, transfer as ArrayBuffer[]))
  );
}

const asReference = 'reference';

// Arithmetic that shares no memory and makes no garbage: what a second thread is worth on this computer, now.
if (!isMainThread && workerData === asReference) {
  let state = 1;
  for (let step = 0; step < 3e8; step++) state = (Math.imul(state, 1664525) + 1013904223) | 0;
  parentPort?.postMessage(state);
}

/** Seconds for two pieces of such arithmetic, one after the other or at once. */
async function secondsForReference(threads: 1 | 2): Promise<number> {
  const piece = () =>
    new Promise((resolve, reject) => {
      const worker = new Worker(new URL(import.meta.url), { workerData: asReference });
      worker.on('message', resolve);
      worker.on('error', reject);
    });
  const start = performance.now();
  if (threads === 2) await Promise.all([piece(), piece()]);
  else for (let count = 0; count < 2; count++) await piece();
  return (performance.now() - start) / 1000;
}

function openPort(): WhatIfPort {
  const worker = new Worker(new URL(import.meta.url), { workerData: asWorker });
  const port: WhatIfPort = {
    post: (ask, transfer = []) => worker.postMessage(ask, transfer as ArrayBuffer[]),
    onreply: () => undefined,
    onfail: () => undefined,
    close: () => void worker.terminate()
  };
  worker.on('message', (reply: Reply) => port.onreply(reply));
  worker.on('error', (error: Error) => port.onfail(error.message));
  return port;
}

/** The demo with a fourteenth case group; its figures are invented, and only the work that they make is measured. */
function workbookOf14Rows(): Workbook {
  const demo = demoWorkbook();
  const [first] = demo.caseMix;
  if (first === undefined) throw new Error('The demo has no case group.');
  return { ...demo, caseMix: [...demo.caseMix, { ...first, id: 'more', name: 'One more', minutes: 82 }] };
}

async function secondsFor(workbook: Workbook, workers: number): Promise<number> {
  const start = performance.now();
  await drawOverWorkers(workbook, { workers, openPort, onProgress: () => undefined }).summary;
  return (performance.now() - start) / 1000;
}

/** Milliseconds for a draw in one thread, of the fastest slice: what disturbs a run only ever slows it. */
function fastestDrawMs(workbook: Workbook): number {
  const { model, draws, figureCount } = setUpRun(coreInput(workbook), new Set());
  let best = Infinity;
  for (let from = 0; from < 2000; from += 50) {
    const start = performance.now();
    runDraws({ model, draws, figureCount, from, to: from + 50 });
    best = Math.min(best, (performance.now() - start) / 50);
  }
  return best;
}

export async function bench(): Promise<BenchRow[]> {
  const workbook = workbookOf14Rows();
  const price = 'agents.sevoflurane.bottlePrice';
  const onlyPrice: Workbook = {
    ...workbook,
    ranges: { [price]: workbook.ranges[price] ?? { low: 85, high: 140 } },
    sampling: { ...workbook.sampling, overBodyModels: false, overModelError: false }
  };
  const drawMs = fastestDrawMs(workbook);
  const priceMs = fastestDrawMs(onlyPrice);
  const seconds = await secondsFor(workbook, 2);
  const alone = await secondsFor(workbook, 1);
  const reference = (await secondsForReference(1)) / (await secondsForReference(2));
  return [
    {
      name: '10,000 draws of 14 rows and 4 scenarios, two workers',
      value: seconds,
      unit: 's',
      target: 'at most 10 s',
      met: seconds <= 10
    },
    {
      name: 'one draw in one thread, the fastest slice',
      value: drawMs,
      unit: 'ms',
      target: 'at most 2 ms, which makes 10,000 in 10 s on two cores',
      met: drawMs <= 2
    },
    {
      name: 'a draw that solves cases against one of a price alone',
      value: drawMs / priceMs,
      unit: 'times',
      target: 'at most 3 times',
      met: drawMs / priceMs <= 3
    },
    {
      // Each worker has its code compiled for itself, beside the run: that is as much work again as a thousand draws.
      name: '10,000 draws by one worker against two',
      value: alone / seconds,
      unit: 'times',
      target: 'at least 1.5 times, on two free cores',
      met: alone / seconds >= 1.5
    },
    {
      name: 'plain arithmetic by one thread against two',
      value: reference,
      unit: 'times',
      target: 'at least 1.5 times, else no two cores were free',
      met: reference >= 1.5
    }
  ];
}
