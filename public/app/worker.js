// A thread of its own for a Go program, the one that the worker is named after: loads it
// and passes requests to it.
// In:  {id, body}        → out {id, body}   (JSON text both ways)
//      {id, show: body}  → out {id, bytes} or {id, body} when the show failed
// Also out: {ready: true} once, or {fatal: "sentence"} when it cannot start.
const READY_TRIES = 100; // × 50 ms: how long main may take to register itself

const built = (file) => new URL(`../build/${file}`, import.meta.url);

async function instantiate(response, imports) {
  if (!response.ok) throw new Error(`the solver could not be fetched (HTTP ${response.status})`);
  const spare = response.clone();
  try {
    return await WebAssembly.instantiateStreaming(response, imports);
  } catch (e) {
    // A host that serves .wasm under another content type rejects streaming.
    if (!(e instanceof TypeError)) throw e;
    return WebAssembly.instantiate(await spare.arrayBuffer(), imports);
  }
}

async function start() {
  if (typeof WebAssembly !== "object") throw new Error("this browser has no WebAssembly");
  const [response] = await Promise.all([fetch(built(self.name)), import(built("wasm_exec.js").href)]);
  const go = new globalThis.Go();
  const { instance } = await instantiate(response, go.importObject);
  go.run(instance).then(() => postMessage({ fatal: "The solver stopped. Reload the page; your numbers are in its address." }));
  for (let i = 0; typeof globalThis.wideBerthSolve !== "function"; i++) {
    if (i >= READY_TRIES) throw new Error("the solver did not answer");
    await new Promise((done) => setTimeout(done, 50));
  }
}

const started = start().then(
  () => postMessage({ ready: true }),
  (e) => {
    postMessage({ fatal: `The answer cannot be worked out here: ${e.message}.` });
    throw e;
  },
);
started.catch(() => {}); // already reported

addEventListener("message", async ({ data }) => {
  const { id } = data;
  try {
    await started;
    if (data.show === undefined) {
      postMessage({ id, body: globalThis.wideBerthSolve(data.body) });
      return;
    }
    const out = globalThis.wideBerthShow(data.show);
    if (typeof out === "string") postMessage({ id, body: out });
    else postMessage({ id, bytes: out }, { transfer: [out.buffer] });
  } catch (e) {
    postMessage({ id, body: JSON.stringify({ error: { message: `The solver failed: ${e.message}` } }) });
  }
});
