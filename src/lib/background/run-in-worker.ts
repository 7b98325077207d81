/** One task in a worker of its own, so that the page stays quick. */
import { openPort, serve } from './worker-port.ts';

/** How far a task has come. */
export interface Progress {
  /** 0 to 1. */
  readonly share: number;
  /** What is being done; '' where the task has one part only. */
  readonly words: string;
}

export type TaskReply<Result> =
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'result'; readonly result: Result };

export interface Watch {
  readonly progress?: (progress: Progress) => void;
  /** Ends the work at once. */
  readonly signal?: AbortSignal;
}

export type WorkerOutcome<Result> =
  | { readonly kind: 'result'; readonly result: Result }
  | { readonly kind: 'cancelled' }
  | { readonly kind: 'failed'; readonly sentence: string };

/** Gives a worker its task and waits for the outcome; the worker is ended in any case. */
export async function runInWorker<Task, Result>(
  open: () => Worker,
  task: Task,
  { progress = () => undefined, signal }: Watch = {}
): Promise<WorkerOutcome<Result>> {
  if (signal?.aborted === true) return { kind: 'cancelled' };
  const port = openPort<Task, TaskReply<Result>>(open);
  return new Promise<WorkerOutcome<Result>>((resolve) => {
    port.onreply = (reply) => {
      if (reply.kind === 'progress') progress(reply.progress);
      else resolve(reply);
    };
    port.onfail = (sentence) => resolve({ kind: 'failed', sentence });
    signal?.addEventListener('abort', () => resolve({ kind: 'cancelled' }), { once: true });
    port.post(task);
  }).finally(() => port.close());
}

/** The worker's side: does the task that it is given, and tells how far it is. */
export function workOn<Task, Result>(
  work: (task: Task, tell: (progress: Progress) => void) => Promise<Result>
): void {
  serve<Task, TaskReply<Result>>(async (task, reply) => {
    const result = await work(task, (progress) => reply({ kind: 'progress', progress }));
    reply({ kind: 'result', result });
  });
}
