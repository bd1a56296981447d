// Keeps the page of a survey at hand while the server is away: the newest page, script and style are fetched first, those seen last are taken when
// nothing answers. Readings are no part of it: they wait in the browser's database.
const STORE = 'parfield-measure-1';

self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', event => event.waitUntil(self.clients.claim()));

function kept(url) {
  return url.origin === self.location.origin
    && (/^\/bench\/[0-9a-f-]{36}\/measure\/[0-9a-f-]{36}(\/data)?$/.test(url.pathname)
      || /^\/(scripts|styles|libraries)\//.test(url.pathname));
}

self.addEventListener('fetch', event => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || !kept(url)) return;
  event.respondWith((async () => {
    const store = await caches.open(STORE);
    try {
      const response = await fetch(event.request);
      if (response.ok && !response.redirected) await store.put(url.pathname, response.clone());
      return response;
    } catch (problem) {
      const known = await store.match(url.pathname);
      if (known) return new Response(known.body, { status: known.status, headers: [...known.headers, ['X-Parfield-Kept', 'yes']] });
      throw problem;
    }
  })());
});
