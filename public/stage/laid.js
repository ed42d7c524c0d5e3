// The maps laid into the 3D room, on demand: where to stand on its floor, what may
// hang under its ceiling. They are everybody's, and those of the plan shown.
import { h } from "../app/dom.js";

const MAPS = { // of the solver → its toggle
  stand: ["Floor map", "Floor map: where to stand"],
  hang: ["Ceiling map", "Ceiling map: what may hang"],
};

/** ask(which) resolves to a map, null when there is something newer; say(message) tells the scene. */
export function createLaid(/** @type {State} */ state, { ask, say }) {
  const shapes = {}; // which → what lies in the room
  const on = (which) => toggles[which].getAttribute("aria-pressed") === "true";
  const toggles = Object.fromEntries(Object.entries(MAPS).map(([which, [label, name]]) => [which,
    h("button", { type: "button", "aria-pressed": "false", "aria-label": name, onclick: () => press(which) }, label)]));

  const lay = () => say({ type: "maps", ...shapes });

  function press(which) {
    toggles[which].setAttribute("aria-pressed", String(!on(which)));
    fetchMap(which);
  }

  /** A map of another plan is taken away until its own is there. */
  async function fetchMap(which) {
    delete shapes[which];
    lay();
    if (!on(which)) return;
    const plan = state.good;
    const answer = await ask(which);
    if (!answer?.shapes || !on(which) || plan !== state.good) return;
    shapes[which] = answer.shapes;
    lay();
  }

  state.onAnswered(() => Object.keys(MAPS).filter(on).forEach(fetchMap));

  return { toggles: Object.values(toggles), lay };
}
