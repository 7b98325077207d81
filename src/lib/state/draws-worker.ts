/** A worker that draws what-ifs and solves for break-even values, so that the page stays free for the user. */
import type { Ask } from './draws-messages.ts';
import { drawsService } from './draws-service.ts';

const answer = drawsService((reply, transfer = []) =>
  self.postMessage(reply, { transfer: transfer as ArrayBuffer[] })
);

self.addEventListener('message', ({ data }: MessageEvent<Ask>) => answer(data));
