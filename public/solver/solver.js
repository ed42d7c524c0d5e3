// Client of a program's worker, the solver's if none is named. ask() queues; latest() keeps one request under
// way and one waiting per channel, so that the newest edit always wins. A worker
// that fails or falls silent is replaced when something is asked again.
import { again as tryAgain } from "../app/again.js";

// What may wait: it is long, and nobody's next step depends on it.
const PATIENT = new Set(["maps", "changes", "remedies", "limits", "ball"]);
const AT_ONCE = 0, PATIENCE = 1, ALL_PATIENCE = 2; // the order in which a worker serves what waits
const SILENT_MS = 30_000; // a solver at work is heard of several times a second, a program that comes with every piece of it

/**
 * A frame in a sandbox has no origin, and may start no worker by its address; one of
 * its own making may import, if the host lets anybody fetch (CORS). What is asked
 * before that is kept.
 */
function startWorker(address, name) {
  if (globalThis.origin !== "null") return new Worker(address, { type: "module", name });
  const code = `const early = [];
    onmessage = ({ data }) => early.push(data);
    import(${JSON.stringify(address)}).then(() => {
      onmessage = null;
      for (const data of early) dispatchEvent(new MessageEvent("message", { data }));
    }, () => postMessage({ fatal: "The solver cannot be fetched from inside this frame. Open the page by itself." }));`;
  return new Worker(URL.createObjectURL(new Blob([code], { type: "text/javascript" })), { name });
}

/**
 * onProgress(share) tells how far the first or the newest plan is, 0 to 1. silent is how
 * long the program may work without a word, ms. known are replies that need no worker, by
 * their requests, both as text.
 */
export function createSolver({ onFatal, program = "solver.wasm", silent = SILENT_MS, onProgress = (/** @type {number} */ _share) => {}, known = new Map() }) {
  let worker = null; // started by the first who asks
  let silence = 0; // timer
  const pending = new Map(); // id → {resolve, waits: a person, for the plan}
  const channels = new Map(); // name → {id of what is under way, next}
  let lastId = 0;
  let isThere; // resolves started
  const started = new Promise((resolve) => { isThere = resolve; });

  function die(message) {
    clearTimeout(silence);
    worker?.terminate();
    worker = null;
    const all = [...pending.values()];
    pending.clear();
    for (const { resolve } of all) resolve({ error: { message } });
    onFatal(message);
  }

  /** Waits for the next sign of life, twice: a page that was frozen wakes before its worker. */
  function listen(again = true) {
    clearTimeout(silence);
    if (!pending.size) return;
    silence = setTimeout(() => {
      if (again) listen(false);
      else die("The solver does not answer any more. Change any number to try again; your numbers are in the address.");
    }, silent / 2);
  }

  function start() {
    const own = startWorker(new URL("worker.js", import.meta.url).href, program);
    own.addEventListener("message", ({ data }) => {
      if (own !== worker) return;
      if (data.started) isThere();
      if (data.fatal) {
        die(`${data.fatal} Your numbers are in the address; ${tryAgain()}`);
        return;
      }
      const asked = pending.get(data.id);
      if (data.progress !== undefined) {
        if (asked?.waits && data.progress >= 0) onProgress(data.progress);
      } else if (asked) {
        pending.delete(data.id);
        asked.resolve(data.bytes ? { bytes: data.bytes } : JSON.parse(data.body));
      }
      listen();
    });
    own.addEventListener("error", (e) => {
      e.preventDefault();
      if (own === worker) die(`The solver could not be started. Your numbers are in the address; ${tryAgain()}`);
    });
    return own;
  }

  function post(request, as, patience = PATIENT.has(request.kind) ? PATIENCE : AT_ONCE) {
    const body = JSON.stringify(request).normalize(); // so that names which look the same are the same
    const id = ++lastId;
    if (patience < ALL_PATIENCE && known.has(body)) return { id, reply: Promise.resolve(JSON.parse(known.get(body))) };
    worker ??= start();
    return {
      id,
      reply: new Promise((resolve) => {
        pending.set(id, { resolve, waits: request.kind === "solve" && patience < ALL_PATIENCE });
        if (pending.size === 1) listen();
        worker.postMessage({ id, [as]: body, patience });
      }),
    };
  }

  /** Gives up what is under way under an id; whoever asked is told reply. */
  function stop(id, reply) {
    const asked = pending.get(id);
    if (!asked) return;
    pending.delete(id);
    worker.postMessage({ stop: id });
    asked.resolve(reply);
    listen();
  }

  async function drain(channel) {
    while (channel.next) {
      const { request, as, resolve } = channel.next;
      channel.next = null;
      const { id, reply } = post(request, as);
      channel.id = id;
      resolve(await reply);
    }
    channel.id = 0;
  }

  function coalesce(name, request, as) {
    const channel = channels.get(name) ?? { id: 0, next: null };
    channels.set(name, channel);
    return new Promise((resolve) => {
      channel.next?.resolve(null);
      channel.next = { request, as, resolve };
      if (!channel.id) drain(channel);
      // Of short ones under a finger each would stop the one before.
      else if (request.kind === "solve" || PATIENT.has(request.kind)) stop(channel.id, null);
    });
  }

  return {
    /** Sends one request; resolves to the parsed reply. */
    ask: (request) => post(request, "body").reply,
    /** The same, but resolves to null when a newer one on the channel replaced it. */
    latest: (channel, request) => coalesce(channel, request, "body"),
    /** The scene's binary show; null when a newer one replaced it, or it could not be made. */
    show: async (request) => (await coalesce("show", request, "show"))?.bytes ?? null,
    /** Has the worker learn what a request needs, once nothing else is to be done. */
    warm: (request) => post(request, "body", ALL_PATIENCE).reply,
    /** Resolves when the program is there. */
    started,
    /** Gives up what a channel has under way: it resolves to an error. */
    giveUp: (channel) => stop(channels.get(channel)?.id, { error: { message: "this was stopped before it was answered" } }),
  };
}
