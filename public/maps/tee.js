// A tee that is moved over the plan, by mouse, finger, keys or the tape from two
// walls: its verdict comes at once, the plan changes when it is let go.
import { h, icon, debounce } from "../app/dom.js";
import { createSpot } from "./spot.js";
import { handle } from "./layer.js";

const KEYS_MS = 600; // without a key before a tee that was moved by keys is let go

const toMillimetre = (v) => Math.round(v * 1000) / 1000;

/** Puts the i-th tee or seat of the plan to a place. */
export const put = (/** @type {State} */ state, list, i, x, y) => state.edit(
  (plan) => Object.assign(plan[list][i], { x: toMillimetre(x), y: toMillimetre(y) }), `${list}[${i}]`);

/** lead asks the solver of the verdict, which knows the swings already; speak tells of what stands still. */
export function createTee(/** @type {State} */ state, { lead, fieldsOf, speak, chosen }) {
  let name = ""; // of the tee that moves
  let moving = null; // [x, y] of the tee on its way
  let mine = null; // its handle, drawn last
  let round = 0;

  const spot = createSpot("Tee", fieldsOf(move, () => drop()));
  const select = h("select", { id: "map-tee", onchange: () => { name = select.value; chosen(); } });
  const row = h("p", { class: "map-tee" }, h("label", { for: "map-tee" }, "Tee to move"), " ", select);
  const reading = h("p", { class: "map-reading" });
  const release = debounce(drop, KEYS_MS);

  function tell({ x, y, labels, free, verdict, sentence }) {
    spot.show(x, y, labels);
    const shown = free ? verdict : "strikes";
    reading.dataset.verdict = shown;
    reading.replaceChildren(icon(shown), ` ${sentence}`);
  }

  async function move(x, y, byKeys = true) {
    const asked = ++round;
    moving = [x, y];
    mine?.moveTo(x, y);
    if (byKeys) release(); // keys have no end as a finger has
    const reply = await lead("drag", { kind: "drag", plan: state.good, focus: { player: "", club: "", tee: name }, x, y });
    if (!reply || asked !== round || reply.error) return;
    moving = [reply.x, reply.y];
    mine?.moveTo(reply.x, reply.y);
    tell(reply);
    speak(reading.textContent);
  }

  async function drop() {
    release.cancel();
    if (!moving) return;
    const [x, y] = moving;
    moving = null;
    await to(x, y);
  }

  async function to(x, y) {
    const i = state.draft.tees.findIndex((one) => one.name === name);
    if (i >= 0) await put(state, "tees", i, x, y);
  }

  state.onAnswered(({ good: { tees }, focus }) => {
    const names = tees.map((one) => one.name);
    name = [name, focus.tee, names[0]].find((one) => names.includes(one));
    select.replaceChildren(...names.map((one) => h("option", { value: one }, one)));
    select.value = name;
    row.hidden = names.length < 2;
  });

  return {
    parts: [row, reading, spot.el],
    get name() { return name; },
    /** Shows what the solver read of the tee where it is. */
    show(read) {
      if (!moving) tell(read);
    },
    to,
    /** The handles of all tees, as they lie on a map of the plan. */
    handles(map) {
      mine = null;
      return state.good.tees.map((one) => {
        const own = one.name === name;
        const [x, y] = own && moving ? moving : [one.x, one.y];
        const el = handle("tee", one.name, x, y, map, {
          move: (nx, ny) => {
            name = select.value = one.name;
            move(nx, ny, false);
          },
          drop,
        });
        if (own) mine = el;
        return el;
      });
    },
  };
}
