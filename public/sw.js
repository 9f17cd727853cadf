// Keeps one complete version of the page on the device and serves it from there, network or not.
//
// The build replaces the next line: `version` changes whenever any file does.
const BUILD = { version: "", files: [], further: [], practice: [] };

// Several copies of the page can live under one origin; the scope keeps their caches apart.
const OWN_CACHES = `coldcase ${self.registration.scope} `;
const CACHE = OWN_CACHES + BUILD.version;

// A file with its content's hash in its name is the same for ever, and the page has just loaded it: nobody pays for it
// twice. All others pass by the HTTP cache, which may hold those of the version before.
const howToFetch = (file) => (/-[0-9a-f]{8,16}[-_.]/.test(file) ? "force-cache" : "reload");

async function fetchAll(files) {
  const cache = await caches.open(CACHE);
  await cache.addAll(files.map((file) => new Request(file, { cache: howToFetch(file) })));
}

// Practising is kept from its first use on, and from version to version.
async function install() {
  await fetchAll(BUILD.files);
  if (await caches.match("./practice.js")) await fetchAll(BUILD.practice).catch(() => {});
}

async function deleteOldCaches() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(OWN_CACHES) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

// What no screen needs at first is fetched once the version is in use, and again where that failed.
async function fetchFurther() {
  const cache = await caches.open(CACHE);
  const found = await Promise.all(BUILD.further.map((file) => cache.match(file)));
  const missing = BUILD.further.filter((file, place) => !found[place]);
  if (missing.length > 0) await fetchAll(missing).catch(() => {});
}

async function isComplete() {
  await fetchFurther();
  const cache = await caches.open(CACHE);
  const all = BUILD.files.concat(BUILD.further);
  const found = await Promise.all(all.map((file) => cache.match(file)));
  return found.length > 0 && found.every(Boolean);
}

async function answer(request) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request, { ignoreSearch: true });
  if (kept) return kept;
  if (request.mode === "navigate") {
    const index = await cache.match("./");
    if (index) return index;
  }
  return fetch(request);
}

self.addEventListener("install", (event) => event.waitUntil(install()));

self.addEventListener("activate", (event) => event.waitUntil(deleteOldCaches()));

self.addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  if (method === "GET" && url.startsWith(self.registration.scope)) event.respondWith(answer(event.request));
});

self.addEventListener("message", (event) => {
  // A new version takes over only when the person says so.
  if (event.data === "take over") event.waitUntil(self.skipWaiting());
  // Without a network it is kept the next time.
  if (event.data === "keep practice") event.waitUntil(fetchAll(BUILD.practice).catch(() => {}));
  if (event.data === "complete?") event.waitUntil(isComplete().then((complete) => event.ports[0].postMessage(complete)));
});
