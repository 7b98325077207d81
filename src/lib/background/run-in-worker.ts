/** One task in a worker of its own, so that the page stays quick: what both sides say to each other. */

/** How far a task has come. */
export interface Progress {
  /** 0 to 1. */
  readonly share: number;
  /** What is being done; '' where the task has one part only. */
  readonly words: string;
}

export type WorkerNews<Result> =
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'result'; readonly result: Result }
  | { readonly kind: 'failed'; readonly sentence: string };

export interface Watch {
  readonly progress?: (progress: Progress) => void;
  /** Ends the work at once. */
  readonly signal?: AbortSignal;
}

export type WorkerOutcome<Result> =
  | { readonly kind: 'result'; readonly result: Result }
  | { readonly kind: 'cancelled' }
  | { readonly kind: 'failed'; readonly sentence: string };

/** What is said where the browser does not start a worker: a page's security settings may forbid it. */
const notStarted =
  'This browser does no work in the background for this page, because of its age or of security settings, and files need that. Use a current browser, or ask whoever looks after this computer.';

/** Gives a worker its task and waits for the outcome; the worker is ended in any case. */
export async function runInWorker<Task, Result>(
  open: () => Worker,
  task: Task,
  { progress = () => undefined, signal }: Watch = {}
): Promise<WorkerOutcome<Result>> {
  let worker: Worker;
  try {
    worker = open();
  } catch {
    return { kind: 'failed', sentence: notStarted };
  }
  return new Promise<WorkerOutcome<Result>>((resolve) => {
    if (signal?.aborted === true) return resolve({ kind: 'cancelled' });
    const broken = () =>
      resolve({
        kind: 'failed',
        sentence:
          'The browser ended the work, perhaps for want of memory. Close other tabs, reload the page and try it again.'
      });
    worker.onmessage = ({ data }: MessageEvent<WorkerNews<Result>>) => {
      if (data.kind === 'progress') progress(data.progress);
      else resolve(data);
    };
    worker.onerror = broken;
    worker.onmessageerror = broken;
    signal?.addEventListener('abort', () => resolve({ kind: 'cancelled' }), { once: true });
    worker.postMessage(task);
  }).finally(() => worker.terminate());
}

/** The worker's side: does the task that it is given, and tells how far it is. */
export function workOn<Task, Result>(
  work: (task: Task, tell: (progress: Progress) => void) => Promise<Result>
): void {
  const post = (news: WorkerNews<Result>) => globalThis.postMessage(news);
  globalThis.onmessage = ({ data }: MessageEvent<Task>) => {
    work(data, (progress) => post({ kind: 'progress', progress })).then(
      (result) => post({ kind: 'result', result }),
      (error: unknown) =>
        post({ kind: 'failed', sentence: error instanceof Error ? error.message : String(error) })
    );
  };
}
