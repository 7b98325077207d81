import type { WhatIfPort } from './what-if-messages.ts';
import { openPort } from './worker-port.ts';

/** Starts a worker that draws what-ifs and solves for break-even values. */
export const openWhatIfPort = (): WhatIfPort =>
  openPort(() => new Worker(new URL('./what-if-worker.ts', import.meta.url), { type: 'module' }));
