/// <reference lib="webworker" />
import type { Precache } from "./vite-sw.ts";

declare const __PRECACHE__: Precache;
declare const self: ServiceWorkerGlobalScope;

const CACHE = `roundbook-${__PRECACHE__.revision}`;
const PAGE = "/index.html";
/** The build manifest is for the build alone. */
const urls = __PRECACHE__.urls.filter((url) => !url.includes("/.vite/"));

self.addEventListener("install", (event) => {
  event.waitUntil(
    caches
      .open(CACHE)
      .then((cache) => cache.addAll(urls.map((url) => new Request(url, { cache: "reload" })))),
  );
});

self.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(
          names
            .filter((name) => name.startsWith("roundbook-") && name !== CACHE)
            .map((name) => caches.delete(name)),
        ),
      )
      .then(() => self.clients.claim()),
  );
});

/** The page asks for the new version only while nothing is half filled. */
self.addEventListener("message", (event) => {
  if (event.data === "activate") void self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  const ours = url.origin === self.location.origin && request.method === "GET";
  if (!ours || url.pathname.startsWith("/api/") || url.pathname.startsWith("/designer")) return;
  const wanted = request.mode === "navigate" ? PAGE : url.pathname;
  event.respondWith(
    caches
      .open(CACHE)
      .then((cache) => cache.match(wanted))
      .then((kept) => kept ?? fetch(request)),
  );
});
