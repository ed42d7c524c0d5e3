// Keeps the answers of the plan that is open, once it is left alone: the next visit begins
// with them (known.js).
import { debounce } from "../app/dom.js";
import { LAST } from "./known.js";
import { ANYBODY } from "../app/state.js";
import { unpack } from "../app/link.js";
import { keptLink } from "../app/store.js";

const STILL_MS = 3000; // without an answer

/** @param {Shared} shared */
export function createLast({ state, solver, cards, idle }) {
  let there = ""; // the plan whose answers are kept
  const keep = debounce(async () => {
    if (!idle()) return; // an answer is under way, and keeps in its turn
    const plan = state.good;
    const saved = JSON.stringify(plan);
    if (saved === there) return; // another check of the same plan was looked at
    const exchanges = [];
    const note = (request, reply) => exchanges.push({ request, reply });
    const ask = async (request) => {
      const reply = await solver.warm(request);
      note(request, reply);
      return reply;
    };
    // As openFirst asks: of what is kept, of the link, of both.
    const { text: linked } = await unpack(keptLink());
    for (const texts of [{ saved }, { linked }, { linked, saved }]) note({ kind: "start", ...texts }, { plan, cards });
    const reply = await ask({ kind: "solve", plan, focus: ANYBODY });
    if (reply.error) return;
    await ask({ kind: "reel", plan: reply.plan, focus: reply.focus });
    try {
      if (plan !== state.good) return;
      await (await caches.open(LAST.cache)).put(LAST.name, new Response(JSON.stringify(exchanges)));
      there = saved;
    } catch {
      // A full store, or a window that keeps nothing: the next visit asks the solver.
    }
  }, STILL_MS);
  state.onAnswered(keep);
}
