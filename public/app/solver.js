// Client of a program's worker, the solver's if none is named. ask() queues; latest() keeps one request under
// way and one waiting per channel, so that the newest edit always wins.

export function createSolver({ onFatal, program = "solver.wasm" }) {
  const worker = new Worker(new URL("worker.js", import.meta.url), { type: "module", name: program });
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
    if (data.fatal) die(data.fatal);
    const resolve = pending.get(data.id);
    if (!resolve) return;
    pending.delete(data.id);
    resolve(data.bytes ? { bytes: data.bytes } : JSON.parse(data.body));
  });
  worker.addEventListener("error", (e) => {
    e.preventDefault();
    die("The solver could not be started. Reload the page; your numbers are in its address.");
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
