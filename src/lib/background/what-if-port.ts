import type { Port, Reply } from './what-if-messages.ts';

/** Starts a worker. One that cannot be started or loaded, or breaks, replies that it failed. */
export function openPort(): Port {
  let worker: Worker;
  try {
    worker = new Worker(new URL('./what-if-worker.ts', import.meta.url), { type: 'module' });
  } catch {
    return withoutWorker();
  }
  const port: Port = {
    post: (ask, transfer = []) => worker.postMessage(ask, transfer as ArrayBuffer[]),
    onreply: () => undefined,
    close: () => worker.terminate()
  };
  worker.addEventListener('message', ({ data }: MessageEvent<Reply>) => port.onreply(data));
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    const why = event.message ? ` ${event.message}` : '';
    port.onreply({
      kind: 'failed',
      sentence: `The calculation in the background stopped.${why} Reload the page and run it again.`
    });
  });
  return port;
}

/** What an old browser, or a strict policy of the hospital's, leaves: a port that says so. */
function withoutWorker(): Port {
  const port: Port = {
    post: () =>
      queueMicrotask(() =>
        port.onreply({
          kind: 'failed',
          sentence:
            'This browser starts no calculation in the background. Try a current one, or ask whether a policy forbids it.'
        })
      ),
    onreply: () => undefined,
    close: () => undefined
  };
  return port;
}
