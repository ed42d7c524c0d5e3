// Two fields for a place on the floor, by tape from two walls. Up and down move
// it by an inch or a centimetre, with Shift by six inches or ten centimetres.
import { h } from "../app/dom.js";

const STEPS = { imperial: [0.0254, 0.1524], metric: [0.01, 0.1] }; // m
const WALLS = ["from the back wall", "from the right wall"];
let serial = 0;

/**
 * read(text) resolves to {metres} or {error}; move(x, y) is called while the place
 * changes, commit() when it is let go.
 */
export function createSpot(name, { units, read, move, commit }) {
  const id = `spot-${++serial}`;
  const at = [0, 0];
  const hint = h("p", { class: "hint", id: `${id}-hint` }, "Up and Down move it, with Shift by more.");
  const error = h("p", { class: "error", id: `${id}-error` });
  const inputs = WALLS.map((wall, axis) => {
    const input = h("input", {
      id: `${id}-${axis}`, type: "text", role: "spinbutton", "aria-valuenow": "0", autocomplete: "off", spellcheck: "false",
      "aria-describedby": `${id}-hint ${id}-error`,
    });
    input.addEventListener("keydown", (e) => {
      const way = { ArrowUp: 1, ArrowDown: -1 }[e.key];
      if (!way || e.altKey || e.ctrlKey || e.metaKey) return;
      e.preventDefault();
      at[axis] += way * STEPS[units()][e.shiftKey ? 1 : 0];
      move(...at);
    });
    input.addEventListener("change", async () => {
      const reply = await read(input.value);
      error.textContent = reply.error?.message ?? "";
      input.toggleAttribute("aria-invalid", Boolean(reply.error));
      if (reply.error) return;
      at[axis] = reply.metres;
      await move(...at);
      commit();
    });
    input.addEventListener("blur", () => commit());
    return input;
  });
  const el = h("div", { class: "spot", role: "group", "aria-label": name },
    ...inputs.map((input, axis) => h("div", { class: "field" }, h("label", { for: input.id }, `${name}, ${WALLS[axis]}`), input)), error, hint);
  return {
    el,
    /** Shows a place (m) with its two labels. */
    show(x, y, labels) {
      [x, y].forEach((v, axis) => {
        at[axis] = v;
        inputs[axis].value = labels[axis];
        inputs[axis].setAttribute("aria-valuenow", v.toFixed(3));
        inputs[axis].setAttribute("aria-valuetext", labels[axis]);
      });
      error.textContent = "";
    },
  };
}
