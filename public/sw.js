// Keeps the files of one build, so that the app opens with no network after a single visit.
//
// `./dev precache` writes BUILD and FILES from the built folder. A newer worker waits until a tab asks for it;
// nothing is ever fetched from another origin and nothing outside FILES is kept.

const BUILD = 'development';
const FILES = [];

const PREFIX = 'slantlight-';
const CACHE = PREFIX + BUILD;
// How trunk names a file after its bytes.
const HASHED = /-[0-9a-f]{12,16}(_bg)?\.\w+$/;

self.addEventListener('install', (event) => event.waitUntil(keep()));
self.addEventListener('activate', (event) => event.waitUntil(tidy()));
self.addEventListener('message', (event) => {
  if (event.data === 'swap') self.skipWaiting();
});
self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== location.origin) return;
  event.respondWith(answer(request));
});

async function keep() {
  const cache = await caches.open(CACHE);
  // A hashed name never changes its bytes: the copy that the page has just fetched will do.
  const requests = FILES.map((file) => new Request(file, { cache: HASHED.test(file) ? 'default' : 'no-cache' }));
  await cache.addAll(requests);
}

/** Older builds go, unless another open tab may still run one of them. */
async function tidy() {
  const tabs = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
  if (tabs.length > 1) return;
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name)));
}

async function answer(request) {
  const cache = await caches.open(CACHE);
  if (request.mode === 'navigate') return (await cache.match('./index.html')) ?? fetch(request);
  return (await cache.match(request)) ?? (await caches.match(request)) ?? fetch(request);
}
