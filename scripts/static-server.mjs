import { createReadStream } from 'node:fs';
import { realpath, stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';

/** @type {Readonly<Record<string, string>>} */
const mediaTypes = {
  '.css': 'text/css; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.png': 'image/png',
  '.sql': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.woff2': 'font/woff2',
  '.xlsx': 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'
};

const notFoundPage = `<!doctype html>
<html lang="en-GB">
  <meta charset="utf-8" />
  <meta name="viewport" content="width=device-width, initial-scale=1" />
  <title>Not found · Vapour Ledger</title>
  <h1>There is no such page</h1>
  <p>Your workbooks are safe: they lie in this browser. <a href="/">Back to Vapour Ledger</a></p>
</html>
`;

/**
 * A server that hands out the files of one folder, read afresh for each request, so that it may be rebuilt meanwhile.
 * `/x/` gives `x/index.html`, and `/x` leads there. Hidden files and everything outside the folder, also what a link
 * in it leads to, do not exist for it.
 *
 * @param {string} folder
 */
export function createStaticServer(folder) {
  return createServer((request, response) => {
    answer(folder, request, response).catch((/** @type {unknown} */ error) => {
      // A reader who goes away in the middle of a file is no fault of the server.
      if (response.headersSent) response.destroy();
      else
        sendText(
          response,
          500,
          `The file could not be read: ${error instanceof Error ? error.message : error}`
        );
    });
  });
}

/**
 * Starts the server at the port or, where that is taken, at one of the next twenty.
 *
 * @param {import('node:http').Server} server
 * @param {{ host: string, port: number }} place port 0 takes any free one
 * @returns {Promise<number>} the port
 * @throws {Error} where the host is unknown, or none of the ports is to be had
 */
export async function listen(server, { host, port }) {
  for (let candidate = port; ; candidate++) {
    try {
      await new Promise((resolve, reject) => {
        server.once('error', reject);
        server.listen(candidate, host, () => {
          server.off('error', reject);
          resolve(undefined);
        });
      });
      const address = server.address();
      return typeof address === 'object' && address ? address.port : candidate;
    } catch (error) {
      const isTaken = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
      if (!isTaken || candidate - port >= 20 || candidate >= 65535) throw error;
    }
  }
}

/**
 * @param {string} folder
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 */
async function answer(folder, request, response) {
  response.setHeader('X-Content-Type-Options', 'nosniff');
  response.setHeader('Referrer-Policy', 'no-referrer');
  // The pages carry their content policy themselves; a page cannot say of itself who may frame it.
  response.setHeader('Content-Security-Policy', "frame-ancestors 'none'");
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.setHeader('Allow', 'GET, HEAD');
    return sendText(response, 405, 'Files can only be read here.');
  }

  const [, rawPath = '/', query = ''] = /^([^?]*)(.*)$/s.exec(request.url ?? '/') ?? [];
  const segments = readPath(rawPath);
  if (!segments) return sendText(response, 400, 'That address cannot be read.');

  const asksForFolder = rawPath.endsWith('/');
  const isFolder = (await find(folder, segments))?.isDirectory ?? false;
  const file = isFolder ? [...segments, 'index.html'] : segments;
  const found = await find(folder, file);
  if (!found || found.isDirectory || (asksForFolder && !isFolder)) {
    return sendText(response, 404, notFoundPage, mediaTypes['.html']);
  }
  if (isFolder && !asksForFolder) {
    // Pages refer to their files by relative paths, which only holds with the slash.
    const target = `/${segments.map(encodeURIComponent).join('/')}/${query}`;
    response.setHeader('Location', target);
    return sendText(response, 308, `Moved to ${target}`);
  }

  const tag = `W/"${found.bytes.toString(36)}-${Math.trunc(found.changedMs).toString(36)}"`;
  response.setHeader('ETag', tag);
  // Names under `immutable` carry a hash of their content; all else is asked for again.
  const isImmutable = segments.includes('immutable') && segments[0] === '_app';
  response.setHeader('Cache-Control', isImmutable ? 'public, max-age=31536000, immutable' : 'no-cache');
  if (request.headers['if-none-match'] === tag) {
    response.writeHead(304).end();
    return;
  }
  response.writeHead(200, {
    'Content-Type': mediaTypes[path.extname(file.at(-1) ?? '').toLowerCase()] ?? 'application/octet-stream',
    'Content-Length': found.bytes
  });
  if (request.method === 'HEAD' || found.bytes === 0) {
    response.end();
    return;
  }
  // What a file grows by while it is sent would run on into the next answer; where it shrinks, the reader is told.
  const content = createReadStream(found.place, { end: found.bytes - 1 });
  await pipeline(content, response, { end: false });
  if (content.bytesRead < found.bytes) response.destroy();
  else response.end();
}

/**
 * @param {string} rawPath as asked for, still encoded
 * @returns {string[] | null} its segments, none of which can leave the folder; null where it cannot be decoded
 */
function readPath(rawPath) {
  try {
    return decodeURIComponent(rawPath)
      .split(/[/\\]/)
      .filter((segment) => segment !== '');
  } catch {
    return null;
  }
}

/**
 * A file or folder inside the folder. Links are followed before anything is looked at, so that none leads out of it.
 *
 * @param {string} folder
 * @param {readonly string[]} segments
 * @returns {Promise<{ place: string, isDirectory: boolean, bytes: number, changedMs: number } | null>} null where
 *   there is none, where it is hidden, and where it lies outside
 */
async function find(folder, segments) {
  if (segments.some(isShut)) return null;
  try {
    const place = await realpath(path.join(folder, ...segments));
    const inside = path.relative(await realpath(folder), place);
    if (path.isAbsolute(inside) || inside.split(path.sep).some(isShut)) return null;
    const found = await stat(place);
    if (!found.isDirectory() && !found.isFile()) return null;
    return { place, isDirectory: found.isDirectory(), bytes: found.size, changedMs: found.mtimeMs };
  } catch {
    return null;
  }
}

/**
 * The dot shuts out hidden files and every way upwards, however it was encoded.
 *
 * @param {string} segment
 */
function isShut(segment) {
  return segment.startsWith('.') || segment.includes('\0') || segment.includes(':');
}

/**
 * @param {import('node:http').ServerResponse} response
 * @param {number} status
 * @param {string} text
 * @param {string} [mediaType]
 */
function sendText(response, status, text, mediaType = 'text/plain; charset=utf-8') {
  response.setHeader('Cache-Control', 'no-cache');
  response.writeHead(status, { 'Content-Type': mediaType, 'Content-Length': Buffer.byteLength(text) });
  response.end(response.req.method === 'HEAD' ? undefined : text);
}
