// Client of the solver's worker. ask() queues; latest() keeps one request under
// way and one waiting per channel, so that the newest edit always wins.
import { again } from "./again.js";

/**
 * A frame in a sandbox has no origin, and may start no worker by its address; one of
 * its own making may import, if the host lets anybody fetch (CORS). What is asked
 * before that is kept.
 */
function startWorker(address) {
  if (globalThis.origin !== "null") return new Worker(address, { type: "module" });
  const code = `const early = [];
    onmessage = ({ data }) => early.push(data);
    import(${JSON.stringify(address)}).then(() => {
      onmessage = null;
      for (const data of early) dispatchEvent(new MessageEvent("message", { data }));
    }, () => postMessage({ fatal: "The solver cannot be fetched from inside this frame. Open the page by itself." }));`;
  return new Worker(URL.createObjectURL(new Blob([code], { type: "text/javascript" })));
}

export function createSolver({ onFatal }) {
  const worker = startWorker(new URL("worker.js", import.meta.url).href);
  const pending = new Map(); // id → resolve
  const channels = new Map(); // name → {busy, next}
  let lastId = 0;
  let dead = null;

  function die(message) {
    if (dead) return;
    dead = { error: { message } };
    for (const resolve of pending.values()) resolve(dead);
    pending.clear();
    onFatal(message);
  }

  worker.addEventListener("message", ({ data }) => {
    if (data.fatal) die(`${data.fatal} Your numbers are in the address; ${again()}`);
    const resolve = pending.get(data.id);
    if (!resolve) return;
    pending.delete(data.id);
    resolve(data.bytes ? { bytes: data.bytes } : JSON.parse(data.body));
  });
  worker.addEventListener("error", (e) => {
    e.preventDefault();
    die(`The solver could not be started. Your numbers are in the address; ${again()}`);
  });

  function post(message) {
    if (dead) return Promise.resolve(dead);
    const id = ++lastId;
    return new Promise((resolve) => {
      pending.set(id, resolve);
      worker.postMessage({ id, ...message });
    });
  }

  async function drain(channel) {
    while (channel.next) {
      const { message, resolve } = channel.next;
      channel.next = null;
      resolve(await post(message));
    }
    channel.busy = false;
  }

  function coalesce(name, message) {
    const channel = channels.get(name) ?? { busy: false, next: null };
    channels.set(name, channel);
    return new Promise((resolve) => {
      channel.next?.resolve(null);
      channel.next = { message, resolve };
      if (!channel.busy) {
        channel.busy = true;
        drain(channel);
      }
    });
  }

  return {
    /** Sends one request; resolves to the parsed reply. */
    ask: (request) => post({ body: JSON.stringify(request) }),
    /** The same, but resolves to null when a newer one on the channel replaced it. */
    latest: (channel, request) => coalesce(channel, { body: JSON.stringify(request) }),
    /** The scene's binary show; null when a newer one replaced it, or it could not be made. */
    show: async (request) => (await coalesce("show", { show: JSON.stringify(request) }))?.bytes ?? null,
  };
}
