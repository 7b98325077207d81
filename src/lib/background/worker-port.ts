/**
 * What every worker and the page say to each other, and what holds where the browser starts none: the port fails with a
 * sentence. Who can do the work on the page as well, in pieces, then does (`cases-on-page.ts`); all others show the sentence.
 */

/** A worker as the page sees it. */
export interface Port<Ask, Reply> {
  readonly post: (ask: Ask, transfer?: readonly ArrayBufferLike[]) => void;
  /** Who is told its replies; set before anything is posted. */
  onreply: (reply: Reply) => void;
  /** Who is told, in a sentence, that it could not be started or loaded, that it broke, or that its work threw. */
  onfail: (sentence: string) => void;
  /** Ends the worker at once, whatever it is doing; nothing is heard of it from then on. */
  readonly close: () => void;
}

/** What crosses from a worker. */
export type News<Reply> =
  { readonly kind: 'reply'; readonly reply: Reply } | { readonly kind: 'failed'; readonly sentence: string };

/** A policy of the page may forbid workers, and an old browser has none of this kind. */
const notStarted =
  'This browser does no work in the background for this page, because of its age or of security settings. Use a current browser, or ask whoever looks after this computer.';
const ended =
  'The browser ended the work in the background, perhaps for want of memory. Close other tabs, reload the page and try it again.';

/** Starts a worker. One that cannot be started fails once it is asked. */
export function openPort<Ask, Reply>(open: () => Worker): Port<Ask, Reply> {
  const worker = started(open);
  const port: Port<Ask, Reply> = {
    post: (ask, transfer = []) => {
      if (worker === null) queueMicrotask(() => port.onfail(notStarted));
      else worker.postMessage(ask, { transfer: transfer as ArrayBuffer[] });
    },
    onreply: () => undefined,
    onfail: () => undefined,
    close: () => {
      if (worker === null) return;
      // What the worker said before it ended may still be under way.
      worker.onmessage = worker.onerror = worker.onmessageerror = null;
      worker.terminate();
    }
  };
  if (worker === null) return port;
  worker.onmessage = ({ data }: MessageEvent<News<Reply>>) => {
    if (data.kind === 'reply') port.onreply(data.reply);
    else port.onfail(data.sentence);
  };
  worker.onerror = (event) => {
    event.preventDefault();
    port.onfail(event.message ? `${ended} (${event.message})` : ended);
  };
  worker.onmessageerror = () => port.onfail(ended);
  return port;
}

function started(open: () => Worker): Worker | null {
  try {
    return open();
  } catch {
    return null;
  }
}

/** The worker's side: answers what it is asked, in any number of replies; where that throws, the page is told why. */
export function serve<Ask, Reply>(
  answer: (
    ask: Ask,
    reply: (reply: Reply, transfer?: readonly ArrayBufferLike[]) => void
  ) => void | Promise<void>
): void {
  const post = (news: News<Reply>, transfer: readonly ArrayBufferLike[] = []): void =>
    globalThis.postMessage(news, { transfer: transfer as ArrayBuffer[] });
  const take = async (ask: Ask): Promise<void> => {
    try {
      await answer(ask, (reply, transfer) => post({ kind: 'reply', reply }, transfer));
    } catch (error) {
      post({ kind: 'failed', sentence: error instanceof Error ? error.message : String(error) });
    }
  };
  globalThis.onmessage = ({ data }: MessageEvent<Ask>) => void take(data);
}
