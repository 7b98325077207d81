/// <reference no-default-lib="true" />
/// <reference lib="esnext" />
/// <reference lib="webworker" />
/// <reference types="@sveltejs/kit" />
import { base, build, files, prerendered, version } from '$service-worker';

/**
 * Lets the app work without a network after the first visit. One version of it is kept whole and answers alone, so
 * that a page never gets parts of another. A newer version is fetched aside and waits: the page may offer it and, with
 * the message `{ type: 'activate-now' }`, let it take over; else it does so once every page of the old one is closed.
 */
const worker = globalThis as unknown as ServiceWorkerGlobalScope;

// A host may hold the app in several folders, each with its own versions.
const ownCaches = `vapour-ledger${base}@`;
const cacheName = `${ownCaches}${version}`;

worker.addEventListener('install', (event) => {
  event.waitUntil(keepThisVersion());
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(takeOver());
});

worker.addEventListener('message', (event: ExtendableMessageEvent) => {
  const message: unknown = event.data;
  if (
    typeof message === 'object' &&
    message !== null &&
    'type' in message &&
    message.type === 'activate-now'
  ) {
    event.waitUntil(worker.skipWaiting());
  }
});

worker.addEventListener('fetch', (event) => {
  const { method, url } = event.request;
  if (method === 'GET' && new URL(url).origin === worker.location.origin) {
    event.respondWith(answer(event.request));
  }
});

/** All or nothing: a version that cannot be fetched whole is not installed, and the old one goes on. */
async function keepThisVersion(): Promise<void> {
  const cache = await caches.open(cacheName);
  // Only names with a hash may come from the browser's own store; the rest could be of an older version there.
  // The licences are made by the build, and so stand in none of its lists.
  const fresh = [...files, ...prerendered, `${base}/THIRD-PARTY-NOTICES.txt`].map(
    (address) => new Request(address, { cache: 'reload' })
  );
  await cache.addAll([...build, ...fresh]);
}

/**
 * Drops the older versions, unless a page beside the one that asked goes on with its own; and answers for the pages that
 * are open already: the first visit counts.
 */
async function takeOver(): Promise<void> {
  const pages = await worker.clients.matchAll({ type: 'window', includeUncontrolled: true });
  if (pages.length <= 1) {
    const names = await caches.keys();
    const old = names.filter((name) => name.startsWith(ownCaches) && name !== cacheName);
    await Promise.all(old.map((name) => caches.delete(name)));
  }
  await worker.clients.claim();
}

async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(cacheName);
  // What differs from the address as kept: hosts send Vary for files that do not, pages may carry a question, and a
  // page's address may come without its slash, which only a server could put right.
  const kept = await cache.match(request, { ignoreVary: true, ignoreSearch: request.mode === 'navigate' });
  if (kept) return kept;
  // A page that goes on with an older version asks for parts of it, whose names, with a hash, are of that version alone.
  if (new URL(request.url).pathname.startsWith(`${base}/_app/immutable/`)) {
    const older = await caches.match(request, { ignoreVary: true });
    if (older) return older;
  }
  if (request.mode === 'navigate') {
    const url = new URL(request.url);
    if (await cache.match(`${url.pathname}/`, { ignoreVary: true })) {
      return Response.redirect(`${url.pathname}/${url.search}`, 302);
    }
  }
  return fetch(request);
}
