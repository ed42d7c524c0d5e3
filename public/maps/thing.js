// A thing to hang where the spot is: its name and sizes, its footprint on the map,
// how it would fare there, and the button that puts it into the plan.
import { debounce, h, icon } from "../app/dom.js";
import { freshName } from "../app/edits.js";

const FIELDS = [["length", "Long"], ["width", "Wide"], ["drop", "Drop"]];
const FIRST = { // a lamp in the plan's units: text and m, by field
  imperial: [["12 in", 0.3048], ["12 in", 0.3048], ["10 in", 0.254]],
  metric: [["300 mm", 0.3], ["300 mm", 0.3], ["250 mm", 0.25]],
};
const PAUSE_MS = 60; // of stillness before a moving thing is judged

/**
 * spot() is where it would hang; read(text) resolves to {metres} or {error};
 * changed() is called when its footprint is another one.
 */
export function createThing(/** @type {State} */ state, { ask, read, speak, spot, changed }) {
  let units = "";
  let sizes = [0, 0, 0]; // m
  let touched = false;
  let judged = null; // the thing as the plan would have it, once it is judged
  let place = null; // where it is judged: within the walls

  const error = h("p", { class: "error", id: "thing-error" });
  const field = (id, label, className) => {
    const input = h("input", { id: `thing-${id}`, type: "text", autocomplete: "off", spellcheck: "false", "aria-describedby": "thing-error", onchange: () => take(id) });
    return { input, el: h("div", { class: `field ${className}` }, h("label", { for: input.id }, label), input) };
  };
  const name = field("name", "Name", "thing-name");
  const inputs = FIELDS.map(([id, label]) => field(id, label, ""));
  name.input.value = "lamp";
  const told = h("p", { class: "thing-told", id: "thing-told" });
  const hang = h("button", { type: "button", class: "stamp", onclick: put }, "Hang it here");
  const el = h("div", { class: "thing", role: "group", "aria-label": "Hang a thing here" }, name.el, ...inputs.map((one) => one.el), error, told, hang);

  const wrong = (id, message = "") => {
    error.textContent = message;
    for (const one of [name, ...inputs]) one.input.toggleAttribute("aria-invalid", Boolean(message) && one.input.id === `thing-${id}`);
  };

  async function take(id) {
    const i = FIELDS.findIndex(([one]) => one === id);
    if (i >= 0) {
      const reply = await read(inputs[i].input.value);
      if (reply.error) {
        wrong(id, reply.error.message);
        return;
      }
      touched = true;
      sizes[i] = reply.metres;
    }
    changed();
    await judge();
  }

  /** The thing's name in the plan: nothing else there is called so. */
  const named = () => freshName(state.good.hung, name.input.value.trim());

  async function judge() {
    const [x, y] = spot();
    const [length, width, drop] = sizes;
    judged = null;
    const text = name.input.value.trim() && named();
    const reply = await ask("thing", { kind: "hangThing", x, y, length, width, drop, text });
    if (!reply) return;
    wrong(reply.error?.field, reply.error?.message);
    judged = reply.error ? null : reply.thing;
    if (!reply.error && (reply.x !== x || reply.y !== y)) {
      place = [reply.x, reply.y];
      changed();
    }
    told.dataset.verdict = reply.error ? "" : reply.verdict;
    told.replaceChildren(...(reply.error ? [] : [icon(reply.verdict), ` ${reply.text}`]));
    speak(told.textContent);
  }
  const later = debounce(judge, PAUSE_MS);

  /** Puts it into the plan as it was judged. */
  async function put() {
    if (!judged) await judge();
    const thing = judged;
    if (thing) await state.edit((plan) => { plan.hung = [...(plan.hung ?? []), { ...thing, name: freshName(plan.hung, name.input.value.trim()) }]; });
  }

  async function relabel() {
    if (units === state.good.units) return;
    units = state.good.units;
    if (!touched) sizes = FIRST[units].map(([, m]) => m);
    for (const [i, { input }] of inputs.entries()) input.value = touched ? (await read(`${sizes[i]} m`)).label : FIRST[units][i][0];
  }

  return {
    el, relabel,
    /** Judges it where the spot is now, once that is still, or at once. */
    judge(atOnce = false) {
      place = judged = null;
      if (atOnce) judge();
      else later();
    },
    /** The middle of its footprint. */
    get place() { return place ?? spot(); },
    /** Its length, width and drop, m. */
    get size() { return sizes; },
    get name() { return `here: ${name.input.value.trim()}`; },
  };
}
