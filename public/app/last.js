// Keeps the answers of the plan that is open, once it is left alone: the next visit begins
// with them (app/known.js).
import { debounce } from "./dom.js";
import { LAST } from "./known.js";
import { ANYBODY } from "./state.js";
import { unpack } from "./link.js";
import { keptLink } from "./store.js";

const STILL_MS = 3000; // without an answer

/** @param {Shared} shared */
export function createLast({ state, solver, cards, idle }) {
  const keep = debounce(async () => {
    if (!idle()) return; // an answer is under way, and keeps in its turn
    const plan = state.good;
    const exchanges = [];
    const note = (request, reply) => exchanges.push({ request, reply });
    const ask = async (request) => note(request, await solver.warm(request));
    // As openFirst asks: of what is kept, of the link, of both.
    const saved = JSON.stringify(plan);
    const { text: linked } = await unpack(keptLink());
    for (const texts of [{ saved }, { linked }, { linked, saved }]) note({ kind: "start", ...texts }, { plan, cards });
    await ask({ kind: "solve", plan, focus: ANYBODY });
    const { reply } = exchanges.at(-1);
    if (reply.error) return;
    await ask({ kind: "reel", plan: reply.plan, focus: reply.focus });
    try {
      if (plan === state.good) await (await caches.open(LAST.cache)).put(LAST.name, new Response(JSON.stringify(exchanges)));
    } catch {
      // A full store, or a window that keeps nothing: the next visit asks the solver.
    }
  }, STILL_MS);
  state.onAnswered(keep);
}
