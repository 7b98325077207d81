import { afterEach, describe, expect, test, vi } from 'vitest';
import { openPort, serve } from '#lib/background/worker-port.ts';

afterEach(() => vi.unstubAllGlobals());

/** A worker and the global scope of its inside, joined: what is posted at one side arrives, cloned, at the other. */
function joined(answer: Parameters<typeof serve<number, number>>[0]): Worker {
  const outside = { terminate: () => undefined } as unknown as Worker;
  vi.stubGlobal('postMessage', (data: unknown) =>
    outside.onmessage?.({ data: structuredClone(data) } as MessageEvent)
  );
  vi.stubGlobal('onmessage', null);
  serve<number, number>(answer);
  outside.postMessage = (data: unknown) =>
    globalThis.onmessage?.call(globalThis as never, { data: structuredClone(data) } as MessageEvent);
  return outside;
}

function listening(open: () => Worker) {
  const port = openPort<number, number>(open);
  const heard: (number | string)[] = [];
  port.onreply = (reply) => heard.push(reply);
  port.onfail = (sentence) => heard.push(sentence);
  return { port, heard };
}
/** Lets all that waits for nothing but its turn take it. */
const settled = async (): Promise<void> => {
  for (let turn = 0; turn < 20; turn++) await Promise.resolve();
};

describe('a worker and the page', () => {
  test('a question has as many replies as the worker gives, in their order', async () => {
    const worker = joined((ask, reply) => [ask, ask + 1].forEach((each) => reply(each)));
    const { port, heard } = listening(() => worker);
    port.post(1);
    port.post(5);
    await settled();
    expect(heard).toEqual([1, 2, 5, 6]);
  });

  test.each([
    [
      'at once',
      () => {
        throw new Error('Too many.');
      }
    ],
    ['later', () => Promise.reject(new Error('Too many.'))]
  ])('work that throws, %s, tells the page why', async (_, answer) => {
    const worker = joined(answer);
    const { port, heard } = listening(() => worker);
    port.post(1);
    await settled();
    expect(heard).toEqual(['Too many.']);
  });

  test('a worker that breaks, or cannot be loaded, fails with a sentence', () => {
    const worker = joined(() => undefined);
    const { heard } = listening(() => worker);
    const event = { preventDefault: vi.fn(), message: 'Out of memory' };
    worker.onerror?.(event as unknown as ErrorEvent);
    expect(event.preventDefault).toHaveBeenCalled();
    expect(heard).toEqual([
      expect.stringMatching(/^The browser ended the work.*try it again\. \(Out of memory\)$/)
    ]);
  });

  test('nothing is heard of a worker that was ended, of what was under way neither', async () => {
    const under: (() => void)[] = [];
    const worker = joined((ask, reply) => void under.push(() => reply(ask)));
    const { port, heard } = listening(() => worker);
    port.post(1);
    port.post(2);
    await settled();
    under[0]?.();
    port.close();
    under[1]?.();
    expect(heard).toEqual([1]);
  });

  test('a browser that starts no worker says so once it is asked, instead of waiting for ever', async () => {
    const { port, heard } = listening(() => {
      throw new Error('Refused by a policy.');
    });
    await settled();
    expect(heard).toEqual([]);
    port.post(1);
    await settled();
    expect(heard).toEqual([expect.stringContaining('security settings')]);
    port.close();
  });
});
