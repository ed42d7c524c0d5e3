// The map of where others may be: the seats with their verdicts.
import { h } from "../app/dom.js";
import { addRow } from "../app/edits.js";
import { handle } from "./layer.js";
import { put } from "../app/mover.js";

export function createWatch(/** @type {State} */ state, { verdicts }) {
  const seats = h("ul", { class: "map-things" });
  const add = () => state.edit((plan) => addRow(plan, "seats", state.answer.fresh.seats));

  return {
    key: [["region", "others may be here"]],
    parts: [seats, h("button", { type: "button", onclick: add }, "Add a seat")],
    request: () => ({}),

    /** @param {Wire.WatchAnswer} answer */
    show(answer) {
      seats.replaceChildren(...verdicts(answer.seats));
    },

    over: (map) => (state.good.seats ?? []).map((seat, i) => {
      let to = null;
      return handle("seat", seat.name, seat.x, seat.y, map, {
        move: (x, y) => { to = [x, y]; },
        drop: () => to && put(state, "seats", i, to[0], to[1]),
      });
    }),
  };
}
