// The tees on a map of the floor: their handles, what the one on its way would mean,
// which one the two typed distances move.
import { h, icon } from "../app/dom.js";
import { createSpot } from "./spot.js";
import { handle } from "./layer.js";

/** speak tells of what stands still; chosen is called when another tee is. @param {State} state @param {{mover: Mover, [part: string]: any}} ctx */
export function createTee(state, { mover, fieldsOf, speak, chosen }) {
  let name = ""; // of the tee that moves
  let mine = null; // its handle, drawn last

  const spot = createSpot("Tee", fieldsOf((x, y) => mover.move(name, x, y), mover.drop));
  const select = h("select", { id: "map-tee", onchange: () => { name = select.value; chosen(); } });
  const row = h("p", { class: "map-tee" }, h("label", { for: "map-tee" }, "Tee to move"), " ", select);
  const reading = h("p", { class: "map-reading", id: "tee-reading" });

  function tell(verdict, sentence) {
    reading.dataset.verdict = verdict;
    reading.replaceChildren(icon(verdict), ` ${sentence}`);
  }

  mover.onMoved((reply, going) => {
    if (going.tee !== name) return;
    mine?.moveTo(going.x, going.y);
    if (!reply) return;
    spot.show(reply.x, reply.y, reply.labels);
    tell(reply.verdict, reply.sentence);
    reading.hidden = false;
    speak(reading.textContent);
  });

  state.onAnswered(({ good: { tees }, focus, answer: { report, sentences } }) => {
    if (!mover.going) tell(report.verdict, `${sentences.headline} ${sentences.worst}`);
    const names = tees.map((one) => one.name);
    name = [name, focus.tee, names[0]].find((one) => names.includes(one));
    select.replaceChildren(...names.map((one) => h("option", { value: one }, one)));
    select.value = name;
    row.hidden = names.length < 2;
  });

  return {
    reading,
    parts: [row, spot.el],
    get name() { return name; },
    /** Shows where the tee is, as the solver reads it. */
    show({ x, y, labels }) {
      if (!mover.going) spot.show(x, y, labels);
    },
    to: (x, y) => mover.to(name, x, y),
    /** The handles of all tees, as they lie on a map of the plan. */
    handles(map) {
      mine = null;
      return state.good.tees.map((one) => {
        const { x, y } = mover.at(one.name);
        const el = handle("tee", one.name, x, y, map, {
          move: (nx, ny) => {
            name = select.value = one.name;
            mine = el;
            mover.move(name, nx, ny, false);
          },
          drop: mover.drop,
        });
        if (one.name === name) mine = el;
        return el;
      });
    },
  };
}
