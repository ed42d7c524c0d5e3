// The map of what may hang how low: any spot asked about, a thing to hang there,
// and the hung things, to drag and to take away.
import { h, s, setText } from "../app/dom.js";
import { removeRow } from "../app/edits.js";
import { createSpot } from "./spot.js";
import { createThing } from "./thing.js";
import { floorTarget, handle } from "./layer.js";

const LABEL_BELOW = 14; // px from a footprint to its name
const toMillimetre = (v) => Math.round(v * 1000) / 1000;

export function createHang(/** @type {State} */ state, { ask, fieldsOf, speak, redraw, whose, verdicts, change }) {
  let at = [0, 0]; // the spot asked about, m
  let placed = false;
  const told = h("p", { class: "map-reading" });
  const things = h("ul", { class: "map-things", "aria-label": "Hung things" });
  const hint = h("p", { class: "hint" }, "Drag an outline on the map; Room and people has its distances.");
  const fields = fieldsOf((x, y) => look(x, y), () => {});
  const spot = createSpot("Spot", fields);
  const thing = createThing(state, { ask, read: fields.read, speak, spot: () => at, changed: redraw });

  function tell(reply) {
    at = [reply.x, reply.y];
    spot.show(reply.x, reply.y, reply.labels);
    setText(told, reply.text);
  }

  async function look(x, y, drawn = false) {
    at = [x, y];
    if (!drawn) redraw();
    thing.judge();
    const reply = await ask("spot", { kind: "hangAt", x, y, focus: whose() });
    if (!reply || reply.error || at[0] !== x || at[1] !== y) return;
    tell(reply);
  }

  /** Moves a hung thing by so much, m. By name: the list may be of a plan before this one. */
  const shift = (name, by) => state.edit((plan) => {
    const moved = state.good.hung.find((one) => one.name === name);
    const own = (plan.hung ?? []).find((one) => one.name === name);
    if (!moved || !own) return;
    for (const end of ["min", "max"]) own[end] = moved[end].map((v, axis) => toMillimetre(v + (by[axis] ?? 0)));
  });

  const remove = (name) => h("button", {
    type: "button", "aria-label": `Remove ${name}`, onclick: () => {
      const i = (state.draft.hung ?? []).findIndex((one) => one.name === name);
      if (i >= 0) state.edit((plan) => removeRow(plan, "hung", i));
    },
  }, "Remove");

  /** A footprint on the map with its name, to drag. */
  function footprint(kind, name, x, y, length, width, map, on) {
    const el = handle(kind, name, x, y, map, on);
    const [w, t] = [length * map.scale, width * map.scale];
    const label = el.querySelector("text");
    if (kind === "hung") label.setAttribute("y", t / 2 + LABEL_BELOW); // above it stands a tee's
    else label.remove(); // the key says what it is
    el.prepend(s("rect", { class: "footprint", x: -w / 2, y: -t / 2, width: w, height: t }));
    return el;
  }

  function outline(one, map) {
    const [x, y] = [0, 1].map((axis) => (one.min[axis] + one.max[axis]) / 2);
    let to = null;
    return footprint("hung", one.name, x, y, one.max[0] - one.min[0], one.max[1] - one.min[1], map, {
      move: (nx, ny) => { to = [nx - x, ny - y]; },
      drop: () => to && shift(one.name, to),
    });
  }

  return {
    key: [["closed", "nothing may hang"], ["line", "nothing lower inside"], ["footprint", "the thing to hang"]],
    parts: [spot.el, told, thing.el, things, hint],
    request() {
      const { length, width } = state.good.room;
      if (!placed) at = [length / 2, width / 2];
      placed = true;
      return { x: at[0], y: at[1] };
    },

    /** @param {Wire.HangAnswer} answer */
    async show(answer) {
      tell(answer.spot);
      things.replaceChildren(...verdicts(answer.things, ({ name, remedies }) =>
        [...remedies.map(change), ...(remedies.some(({ kind }) => kind === "remove") ? [] : [remove(name)])]));
      await thing.relabel();
      thing.judge(true);
      redraw();
    },
    over(map) {
      const [length, width] = thing.size;
      return [floorTarget(map, look), ...(state.good.hung ?? []).map((one) => outline(one, map)),
        ...(placed ? [footprint("thing", thing.name, ...thing.place, length, width, map, { move: (x, y) => look(x, y, true), drop: redraw })] : [])];
    },
  };
}
