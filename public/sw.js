// Keeps the page for use without a network. build/files.js, made by the build, says
// which files belong to this version and what their sums are. Every file is kept under
// its sum, so versions never mix: a newer worker keeps its files beside those of the
// one at work, takes over when the visitor says so (offline/offline.js), and only then
// clears what it has no use for.
const here = /** @type {any} */ (self);
here.importScripts("build/files.js");

const CACHE = "wide-berth";
const AT_ONCE = 4; // files fetched side by side
const files = new Map(Object.entries(here.FILES));
const base = new URL("./", location.href);

const keyOf = (name, sum) => new URL(`${name}?sum=${sum}`, base).href;

here.addEventListener("install", (e) => e.waitUntil(keepAll()));
here.addEventListener("activate", (e) => e.waitUntil(clear()));
here.addEventListener("message", ({ data }) => {
  if (data === "take over") here.skipWaiting();
});
here.addEventListener("fetch", (e) => {
  const name = nameOf(e.request);
  if (files.has(name)) e.respondWith(answer(name, e.request));
});

/** Which file a request is for, "" when it is none of ours. */
function nameOf({ method, url }) {
  const { origin, pathname } = new URL(url);
  if (method !== "GET" || origin !== base.origin || !pathname.startsWith(base.pathname)) return "";
  return pathname.slice(base.pathname.length).replace(/(^|\/)$/, "$1index.html");
}

async function answer(name, request) {
  const kept = await (await caches.open(CACHE)).match(keyOf(name, files.get(name)));
  return kept ?? fetch(request);
}

/** Fetches what is not kept yet. One file that is not of this version, and nothing is taken over. */
async function keepAll() {
  const cache = await caches.open(CACHE);
  const left = [...files];
  const work = async () => {
    for (let next = left.pop(); next; next = left.pop()) {
      const key = keyOf(...next);
      if (!await cache.match(key)) await cache.put(key, await whole(...next));
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
}

/** A file as it is on the host, if it is the one of this version. */
async function whole(name, sum) {
  const address = new URL(name.replace(/(^|\/)index\.html$/, "$1"), base);
  const response = await fetch(address, { cache: "no-cache" });
  if (!response.ok) throw new Error(`${name}: HTTP ${response.status}`);
  const program = name.endsWith(".wasm") && response.clone();
  const bytes = await response.arrayBuffer();
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  const found = Array.from(digest, (b) => b.toString(16).padStart(2, "0")).join("");
  if (!found.startsWith(sum)) throw new Error(`${name} is of another version`);
  if (program) return program; // as it came: of no other does the browser keep the machine code
  const headers = new Headers(response.headers);
  for (const one of ["content-encoding", "content-length"]) headers.delete(one); // it is unpacked already
  return new Response(bytes, { headers });
}

async function clear() {
  const cache = await caches.open(CACHE);
  const mine = new Set([...files].map(([name, sum]) => keyOf(name, sum)));
  for (const { url } of await cache.keys()) if (!mine.has(url)) await cache.delete(url);
}
