import { afterEach, expect, test, vi } from 'vitest';
import { openPort } from '#lib/background/what-if-port.ts';
import type { Reply } from '#lib/background/what-if-messages.ts';

afterEach(() => vi.unstubAllGlobals());

test('a browser that starts no worker says so instead of waiting for ever', async () => {
  vi.stubGlobal('Worker', function Worker() {
    throw new Error('Refused by a policy.');
  });
  const port = openPort();
  const reply = new Promise<Reply>((resolve) => (port.onreply = resolve));
  port.post({ kind: 'slice', from: 0, to: 1 });
  expect(await reply).toMatchObject({ kind: 'failed', sentence: expect.stringContaining('policy') });
  port.close();
});
