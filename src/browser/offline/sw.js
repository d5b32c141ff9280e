// @ts-check
/**
 * Works without network. Everything of one build lies in one cache, named after it: pages come from there first, and pages that
 * are not in it are kept when they are visited. A new build waits until the person takes it.
 *
 * Plain JavaScript with its types in comments, since it is published as it stands, with the name and the files of the build
 * written before it.
 */
/** @type {ServiceWorkerGlobalScope & { IDLE: { build: string, files: string[] } }} */
const worker = /** @type {any} */ (globalThis);

const PREFIX = 'idle-season-';
const { build, files } = worker.IDLE;
const CACHE = PREFIX + build;
/** @param {string} path */
const here = (path) => new URL(path, worker.registration.scope).href;

worker.addEventListener('install', (event) => {
  event.waitUntil(fill());
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(takeOver());
});

worker.addEventListener('message', ({ data }) => {
  if (data === 'take') void worker.skipWaiting();
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method === 'GET' && request.url.startsWith(worker.registration.scope)) event.respondWith(answer(request));
});

/** All or nothing: a worker without its files must not take the place of one that has them. */
async function fill() {
  const cache = await caches.open(CACHE);
  await cache.addAll(files.map((path) => new Request(here(path), { cache: 'reload' })));
}

/** Visited pages of the build before are fetched anew while that can be done; then its cache goes. */
async function takeOver() {
  const cache = await caches.open(CACHE);
  for (const name of await caches.keys()) {
    if (!name.startsWith(PREFIX) || name === CACHE) continue;
    for (const { url } of await (await caches.open(name)).keys()) {
      if (url.includes('/_astro/') || (await cache.match(url))) continue;
      await cache.add(new Request(url, { cache: 'reload' })).catch(() => undefined);
    }
    await caches.delete(name);
  }
  await worker.clients.claim();
}

/**
 * @param {Request} request
 * @returns {Promise<Response>}
 */
async function answer(request) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request, { ignoreSearch: true, ignoreVary: true });
  if (kept) return kept;
  try {
    const fetched = await fetch(request);
    if (fetched.ok && fetched.type === 'basic') await cache.put(request, fetched.clone()).catch(() => undefined);
    return fetched;
  } catch (error) {
    const page = request.mode === 'navigate' ? await cache.match(here('offline/')) : undefined;
    if (page) return page;
    throw error;
  }
}
