const SHELF = 'drives-1';
addEventListener('install', () => skipWaiting());
addEventListener('activate', e => e.waitUntil(clients.claim()));
addEventListener('fetch', e => {
  const ask = e.request;
  if (ask.method !== 'GET') return;
  e.respondWith(fetch(ask).then(got => {
    const copy = got.clone();
    if (got.ok) e.waitUntil(caches.open(SHELF).then(s => s.put(ask.url.split('?')[0], copy)));
    if (ask.mode === 'navigate' && (got.status === 404 || got.status === 410)) caches.delete(SHELF);
    return got;
  }, () => caches.match(ask, {ignoreSearch: true, ignoreVary: true}).then(kept => kept || Response.error())));
});
