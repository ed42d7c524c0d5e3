// From what is typed into a field of the cards to an edit of the plan.
import { debounce } from "../app/dom.js";
import { setAt, valueAt } from "../app/state.js";
import { parseNumber } from "./field.js";
import { renameIn } from "../app/edits.js";

const LIVE_MS = 250;
const QUANTITIES = new Set(["speed", "temperature", "altitude"]); // forms that are no lengths
const USUAL_OF_KIND = ["length", "lie", "loft", "ball"]; // what a club's kind sets when left out

/**
 * Returns changed(field, settled) for the form. Lengths and numbers apply while
 * they are typed, names once they are left.
 */
export function createTyping({ state, parse, edit, solve, revision, busy, tidy, unreadable }) {
  const later = debounce(apply, LIVE_MS);

  async function apply(field) {
    const { path, text } = field;
    const before = valueAt(state.draft, path);
    const mine = revision();
    field.applied = text;
    busy();
    const value = await read(field);
    if (mine !== revision()) return; // undone or replaced while it was read
    if (value?.error) {
      field.hold(value.error);
      unreadable(value.error);
      return;
    }
    field.unhold();
    edit((plan) => {
      setAt(plan, path, value);
      const [, list, index, key] = /^(clubs|tees)\[(\d+)\]\.(\w+)$/.exec(path) ?? [];
      if (key === "name") renameIn(plan, list, before, text);
      if (list === "clubs" && key === "kind") for (const usual of USUAL_OF_KIND) delete plan.clubs[index][usual];
    });
    await solve(path);
  }

  /** The value typed, undefined for a blank optional field, or {error: sentence}. */
  async function read({ spec, text, input }) {
    if (spec.kind === "check") return input.checked;
    if (text === "" && spec.optional) return undefined;
    if (spec.kind === "length") {
      const reply = await parse(text, QUANTITIES.has(spec.form) ? spec.form : "");
      return reply.error ? { error: reply.error.message } : reply.metres ?? reply.value;
    }
    if (spec.kind === "number") {
      const n = parseNumber(text);
      return Number.isNaN(n) ? { error: `${spec.label}: “${text}” is not a number of ${spec.unit}` } : n;
    }
    return text;
  }

  return (field, settled) => {
    later.cancel();
    if (settled && field.text === field.applied) tidy(field);
    else if (settled) apply(field);
    else if (field.spec.kind !== "text") later(field);
  };
}
