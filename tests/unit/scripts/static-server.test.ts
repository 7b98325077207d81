import {
  appendFileSync,
  mkdirSync,
  mkdtempSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync
} from 'node:fs';
import { Agent, request, type IncomingHttpHeaders } from 'node:http';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createStaticServer, listen } from '../../../scripts/static-server.mjs';

const outside = mkdtempSync(path.join(os.tmpdir(), 'static-server-'));
const folder = path.join(outside, 'build');
const server = createStaticServer(folder);
let port = 0;

function write(file: string, text: string): void {
  mkdirSync(path.dirname(path.join(folder, file)), { recursive: true });
  writeFileSync(path.join(folder, file), text);
}

beforeAll(async () => {
  writeFileSync(path.join(outside, 'secret.txt'), 'secret');
  write('index.html', 'start');
  write('prices/index.html', 'prices');
  write('empty/data.csv', 'a,b');
  write('_app/immutable/entry/start.abc.js', 'export {}');
  write('service-worker.js', 'self');
  write('.built-from', 'hidden');
  write('with space.txt', 'space');
  port = await listen(server, { host: '127.0.0.1', port: 0 });
});

afterAll(() => {
  server.close();
  rmSync(outside, { recursive: true });
});

interface Answer {
  status: number;
  headers: IncomingHttpHeaders;
  text: string;
}

/** Sends the address as it stands: a browser or `fetch` would tidy it first. */
function ask(
  address: string,
  {
    method = 'GET',
    headers = {},
    at = port,
    agent
  }: { method?: string; headers?: Record<string, string>; at?: number; agent?: Agent } = {}
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    request(
      { host: '127.0.0.1', port: at, path: address, method, headers, ...(agent && { agent }) },
      (response) => {
        let text = '';
        response.setEncoding('utf8');
        response.on('data', (part: string) => (text += part));
        response.on('end', () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, text })
        );
      }
    )
      .on('error', reject)
      .end();
  });
}

describe('the server of the built app', () => {
  test.each([
    ['/', 'start', 'text/html; charset=utf-8'],
    ['/prices/', 'prices', 'text/html; charset=utf-8'],
    ['/prices/?sheet=1', 'prices', 'text/html; charset=utf-8'],
    ['/empty/data.csv', 'a,b', 'text/csv; charset=utf-8'],
    ['/with%20space.txt', 'space', 'text/plain; charset=utf-8'],
    ['/_app/immutable/entry/start.abc.js', 'export {}', 'text/javascript; charset=utf-8']
  ])('hands out %s', async (address, text, type) => {
    const answer = await ask(address);
    expect(answer).toMatchObject({ status: 200, text });
    expect(answer.headers['content-type']).toBe(type);
    expect(answer.headers['content-length']).toBe(String(text.length));
  });

  test('leads from a folder without its slash to the one with it, and keeps the question', async () => {
    expect(await ask('/prices?a=1&b=?')).toMatchObject({
      status: 308,
      headers: { location: '/prices/?a=1&b=?' }
    });
  });

  test('never leads to another host', async () => {
    expect((await ask('//prices')).headers['location']).toBe('/prices/');
    expect((await ask('/\\prices')).headers['location']).toBe('/prices/');
  });

  test.each([
    '/no-such-page/',
    '/index.html/',
    '/empty/',
    '/.built-from',
    '/../secret.txt',
    '/prices/../../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/..%5csecret.txt',
    '/..\\secret.txt',
    '/%00',
    '/index.html%00.png',
    '/C:/secret.txt'
  ])('does not know %s', async (address) => {
    const answer = await ask(address);
    expect(answer.status).toBe(404);
    expect(answer.text).toContain('There is no such page');
  });

  test('refuses an address that cannot be decoded', async () => {
    expect((await ask('/%E0%A4%A')).status).toBe(400);
  });

  test('lets names with a hash be kept, and has the rest asked for again', async () => {
    const kept = await ask('/_app/immutable/entry/start.abc.js');
    expect(kept.headers['cache-control']).toBe('public, max-age=31536000, immutable');
    const { headers } = await ask('/service-worker.js');
    expect(headers['cache-control']).toBe('no-cache');
    const again = await ask('/service-worker.js', { headers: { 'if-none-match': headers['etag'] ?? '' } });
    expect(again).toMatchObject({ status: 304, text: '' });
  });

  test('lets no page frame it', async () => {
    for (const address of ['/', '/no-such-page/']) {
      const { headers } = await ask(address);
      expect(headers['content-security-policy']).toBe("frame-ancestors 'none'");
      expect(headers['x-content-type-options']).toBe('nosniff');
    }
  });

  test('answers for the head alone, and takes nothing in', async () => {
    expect(await ask('/prices/', { method: 'HEAD' })).toMatchObject({ status: 200, text: '' });
    expect(await ask('/prices/', { method: 'POST' })).toMatchObject({
      status: 405,
      headers: { allow: 'GET, HEAD' }
    });
  });

  test('shows a file as it is at the moment', async () => {
    write('changed.txt', 'before');
    const { headers } = await ask('/changed.txt');
    write('changed.txt', 'afterwards');
    const answer = await ask('/changed.txt', { headers: { 'if-none-match': headers['etag'] ?? '' } });
    expect(answer).toMatchObject({ status: 200, text: 'afterwards' });
  });

  test.each([
    ['grows', 'ends where it ended when it was asked for, and the next answer is whole'],
    ['shrinks', 'is broken off']
  ])('a file that %s while it is sent %s', async (way) => {
    // More than a connection holds, so that most of it is still to be read when it changes.
    const bytes = 32 * 1024 * 1024;
    write('large.txt', 'x'.repeat(bytes));
    const agent = new Agent({ keepAlive: true, maxSockets: 1 });
    const received = new Promise<number>((resolve, reject) => {
      request({ host: '127.0.0.1', port, path: '/large.txt', agent }, (response) => {
        const file = path.join(folder, 'large.txt');
        if (way === 'grows') appendFileSync(file, 'x'.repeat(bytes));
        else truncateSync(file, 1024);
        let count = 0;
        response.on('data', (chunk: Buffer) => (count += chunk.length));
        response.on('end', () => resolve(count)).on('error', reject);
      })
        .on('error', reject)
        .end();
    });
    if (way === 'grows') {
      expect(await received).toBe(bytes);
      expect(await ask('/index.html', { agent })).toMatchObject({ status: 200, text: 'start' });
    } else await expect(received).rejects.toThrow('aborted');
    agent.destroy();
  });

  test('takes the next port where one is taken', async () => {
    const second = createStaticServer(folder);
    try {
      expect(await listen(second, { host: '127.0.0.1', port })).toBeGreaterThan(port);
    } finally {
      second.close();
    }
  });
});

// Windows lets few users make links.
describe.skipIf(process.platform === 'win32')('links in the folder', () => {
  beforeAll(() => {
    mkdirSync(path.join(outside, 'elsewhere'));
    writeFileSync(path.join(outside, 'elsewhere/index.html'), 'secret');
    const links = {
      'link.txt': '../secret.txt',
      'linked-folder': '../elsewhere',
      'link-upwards': '..',
      'link-to-hidden.txt': '.built-from',
      'link-to-itself': 'link-to-itself',
      'link-inside': 'prices'
    };
    for (const [link, target] of Object.entries(links)) symlinkSync(target, path.join(folder, link));
    symlinkSync('build', path.join(outside, 'link-to-build'));
  });

  test.each([
    '/link.txt',
    '/linked-folder/',
    '/linked-folder',
    '/linked-folder/index.html',
    '/link-upwards/secret.txt',
    '/link-to-hidden.txt',
    '/link-to-itself'
  ])('lead nowhere outside it, nor to what is hidden: %s', async (address) => {
    expect(await ask(address)).toMatchObject({
      status: 404,
      text: expect.stringContaining('There is no such page')
    });
  });

  test('may lead to what is in it', async () => {
    expect(await ask('/link-inside/')).toMatchObject({ status: 200, text: 'prices' });
  });

  test('may lead to the whole of it', async () => {
    const second = createStaticServer(path.join(outside, 'link-to-build'));
    try {
      const at = await listen(second, { host: '127.0.0.1', port: 0 });
      expect(await ask('/prices/', { at })).toMatchObject({ status: 200, text: 'prices' });
    } finally {
      second.close();
    }
  });
});
