import type { Port, Reply } from './draws-messages.ts';

/** Starts a worker. One that cannot be loaded, or breaks, replies that it failed. */
export function openPort(): Port {
  const worker = new Worker(new URL('./draws-worker.ts', import.meta.url), { type: 'module' });
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
