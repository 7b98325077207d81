/** A worker that draws what-ifs and solves for break-even values, so that the page stays free for the user. */
import type { Ask } from './what-if-messages.ts';
import { whatIfService } from './what-if-service.ts';

const answer = whatIfService((reply, transfer = []) =>
  self.postMessage(reply, { transfer: transfer as ArrayBuffer[] })
);

self.addEventListener('message', ({ data }: MessageEvent<Ask>) => answer(data));
