/* The service worker of one book. It answers from what the reader chose to keep, and from the network otherwise.
   It fetches and keeps nothing itself: keep/store.js does, whole and verified. Only caches of this book are opened. */
"use strict";

const ROOT = new URL("./", self.registration.scope);
const NAME = new URL(self.location).searchParams.get("book") + " " + ROOT.pathname;
const CHOSEN = NAME + " chosen";

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

/** What is kept: [{machine, cache, fetched, date}], one a machine. */
async function chosen() {
  if (!(await caches.has(CHOSEN))) return [];
  const cache = await caches.open(CHOSEN);
  return Promise.all((await cache.keys()).map(async (key) => (await cache.match(key)).json()));
}

function machineOf(address, kept) {
  const path = new URL(address).pathname.slice(ROOT.pathname.length);
  return kept.find((one) => path.startsWith(one.machine + "/"));
}

/** The machine's own cache first, then that of the page that asks: what two machines share may be of two builds. */
async function fromKept(url, asking) {
  const kept = (await chosen()).sort((a, b) => b.fetched.localeCompare(a.fetched));
  const order = [machineOf(url, kept), asking && machineOf(asking, kept), ...kept].filter(Boolean);
  const path = url.pathname.endsWith("/") ? url.pathname + "index.html" : url.pathname;
  for (const one of new Set(order)) {
    const cache = await caches.open(one.cache);
    const hit = await cache.match(new URL(path, ROOT).href);
    if (hit) return hit;
    if (await cache.match(new URL(path + "/index.html", ROOT).href)) return Response.redirect(url.pathname + "/" + url.search, 302);
  }
  return null;
}

async function away() {
  for (const one of await chosen()) {
    const hit = await (await caches.open(one.cache)).match(new URL("assets/witnessmark/keep/away.html", ROOT).href);
    if (hit) return hit;
  }
  return Response.error();
}

async function answer(event, url) {
  const client = event.clientId ? await self.clients.get(event.clientId) : null;
  const hit = await fromKept(url, client && client.url);
  if (hit) return hit;
  try {
    return await fetch(event.request);
  } catch {
    return event.request.mode === "navigate" ? away() : Response.error();
  }
}

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  const mine = url.origin === ROOT.origin && url.pathname.startsWith(ROOT.pathname);
  if (event.request.method !== "GET" || !mine || event.request.cache === "no-store") return;       // no-store: a build being fetched
  event.respondWith(answer(event, url));
});
