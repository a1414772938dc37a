"use strict";
// Keeps the pages for when there is no signal: first what every page needs, then all the rest, a few at a time.
// A new version of the library brings a new copy of this file; its pages replace the old ones as a whole.
const { version, first, rest } = self.drillpathPages;
const NAME = `drillpath-${version}`, AT_ONCE = 6;

// asked of the server again, whatever the browser's own cache still has: an old page must not get into a new version
const fresh = (address) => new Request(address, { cache: "no-cache" });

const keepRest = async () => {
  const cache = await caches.open(NAME);
  const waiting = [...rest];
  const one = async () => {
    for (let page = waiting.shift(); page; page = waiting.shift()) {
      if (await cache.match(page)) continue;
      try { await cache.add(fresh(page)); } catch { return; } // no signal any more: the rest is fetched another time
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, one));
};

self.addEventListener("install", (event) => {
  event.waitUntil(caches.open(NAME).then((cache) => cache.addAll(first.map(fresh))).then(() => self.skipWaiting()));
});
self.addEventListener("activate", (event) => {
  const others = caches.keys().then((names) => Promise.all(names.filter((name) => name.startsWith("drillpath-") && name !== NAME).map((name) => caches.delete(name))));
  event.waitUntil(others.then(() => self.clients.claim()));
});
self.addEventListener("message", (event) => {
  if (event.data === "keep") event.waitUntil(keepRest());
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== self.location.origin) return;
  const asks = new URL(request.url).search !== "";
  event.respondWith((async () => {
    const cache = await caches.open(NAME);
    if (!asks) {
      const kept = await cache.match(request);
      if (kept) return kept;
    }
    try {
      return await fetch(request);
    } catch (lost) {
      // a question that only the server can answer: its page as it was kept answers with script
      const kept = await cache.match(request, { ignoreSearch: true });
      if (kept) return kept;
      // a code for the address is drawn by the server alone: without it there is none, and nothing is broken
      if (request.destination === "image") return new Response("\u003csvg xmlns='http://www.w3.org/2000/svg'/>", { headers: { "Content-Type": "image/svg+xml" } });
      throw lost;
    }
  })());
});
