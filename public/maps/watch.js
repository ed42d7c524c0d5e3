// The map of where others may be: the seats with their verdicts, to drag, to add and
// to take away.
import { h, setText } from "../app/dom.js";
import { addRow, removeRow } from "../app/edits.js";
import { handle } from "./layer.js";
import { put } from "../app/mover.js";

export function createWatch(/** @type {State} */ state, { verdicts }) {
  const note = h("p", {});
  const seats = h("ul", { class: "map-things map-seats" });
  const add = h("button", { type: "button", onclick: () => state.edit((plan) => addRow(plan, "seats", state.answer.fresh.seats)) }, "Add a seat");
  const hint = h("p", { class: "hint" }, "Drag a seat on the map; Room and people has its distances.");

  const remove = (name) => h("button", {
    type: "button", "aria-label": `Remove ${name}`, onclick: () => {
      // By name: the list may be of a plan before this one.
      const i = (state.draft.seats ?? []).findIndex((seat) => seat.name === name);
      if (i >= 0) state.edit((plan) => removeRow(plan, "seats", i));
      add.focus();
    },
  }, "Remove");

  return {
    key: [["region", "others may be here"], ["club", "clubs and golfers come within your margin"], ["ball", "balls on their first flight do"]],
    parts: [note, seats, add, hint],
    request: () => ({}),

    /** @param {Wire.WatchAnswer} answer */
    show(answer) {
      setText(note, answer.note ?? "");
      seats.replaceChildren(...verdicts(answer.seats, ({ name }) => [remove(name)]));
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
