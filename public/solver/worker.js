// A thread of its own for a Go program, the one that the worker is named after: loads it
// and passes requests to it.
// In:  {id, body, patience} → out {id, body}   (JSON text both ways)
//      {id, show: body}     → out {id, bytes} or {id, body} when the show failed
//      {stop: id}           gives up a request, which is not answered
// Also out: {id, progress} several times a second while it works on id, 0 to 1, or −1
// where nobody knows; {progress: −1} while the program is on its way; {started: true}
// when it is there; or {fatal: "sentence"} when it cannot start or has stopped.
//
// The least patient is served first. What has patience is begun again when something with
// less came in between: what was learnt on the way is kept.
const READY_TRIES = 100; // × 50 ms: how long main may take to register itself
const MEMORY_LIMIT = "300MiB"; // from which on garbage is collected at once: memory that a page once took is never given back

const built = (file) => new URL(`../build/${file}`, import.meta.url);

/** All of a response, whose every piece is told to the page as it comes. */
async function heard(response) {
  const pieces = [];
  for (const reader = response.body.getReader(); ;) {
    const { done, value } = await reader.read();
    if (done) return new Blob(pieces).arrayBuffer();
    postMessage({ progress: -1 });
    pieces.push(value);
  }
}

async function instantiate(response, imports) {
  if (!response.ok) throw new Error(`the solver could not be fetched (HTTP ${response.status})`);
  const bytes = heard(response.clone());
  try {
    // The response itself, as it came: of no other does the browser keep the machine code.
    return await WebAssembly.instantiateStreaming(response, imports);
  } catch (e) {
    // A host that serves .wasm under another content type rejects streaming.
    if (!(e instanceof TypeError)) throw e;
    return WebAssembly.instantiate(await bytes, imports);
  }
}

async function start() {
  if (typeof WebAssembly !== "object") throw new Error("this browser has no WebAssembly");
  const [response] = await Promise.all([fetch(built(self.name)), import(built("wasm_exec.js").href)]);
  const go = new globalThis.Go();
  go.env = { GOMEMLIMIT: MEMORY_LIMIT };
  const { instance } = await instantiate(response, go.importObject);
  go.run(instance).then(() => postMessage({ fatal: "The solver stopped." }));
  for (let i = 0; typeof globalThis.wideBerthSolve !== "function"; i++) {
    if (i >= READY_TRIES) throw new Error("the solver did not answer");
    await new Promise((done) => setTimeout(done, 50));
  }
  postMessage({ started: true });
}

const started = start().catch((e) => postMessage({ fatal: `The answer cannot be worked out here: ${e.message}.` }));

const queue = []; // not yet answered, as they came
let serving = false;

/** Lets messages in that have come meanwhile. */
const turn = () => new Promise((done) => {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => { port1.close(); done(); };
  port2.postMessage(0);
});

/** What is served next. */
const next = () => queue.reduce((first, one) => (one.patience < first.patience ? one : first));

/** Works on a message until it is answered, given up, or something comes that has less patience. */
async function work(message) {
  if (message.show !== undefined) return globalThis.wideBerthShow(message.show);
  let reply = globalThis.wideBerthSolve(message.body);
  while (typeof reply === "number") {
    postMessage({ id: message.id, progress: reply });
    await turn();
    if (!queue.includes(message) || next().patience < message.patience) {
      globalThis.wideBerthStop();
      return null;
    }
    reply = globalThis.wideBerthNext();
  }
  return reply;
}

async function serve() {
  if (serving) return;
  serving = true;
  await started;
  while (queue.length) {
    const message = next();
    let reply;
    try {
      reply = await work(message);
    } catch (e) {
      reply = JSON.stringify({ error: { message: `the solver failed: ${e.message}` } });
    }
    const at = queue.indexOf(message);
    if (at < 0 || reply === null) continue;
    queue.splice(at, 1);
    if (typeof reply === "string") postMessage({ id: message.id, body: reply });
    else postMessage({ id: message.id, bytes: reply }, { transfer: [reply.buffer] });
  }
  serving = false;
}

addEventListener("message", ({ data }) => {
  if (data.stop !== undefined) {
    const at = queue.findIndex(({ id }) => id === data.stop);
    if (at >= 0) queue.splice(at, 1);
  } else queue.push(data);
  serve();
});
