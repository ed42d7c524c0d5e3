// The map of what may hang how low: the hung things, and any spot asked about.
import { h, setText } from "../app/dom.js";
import { createSpot } from "./spot.js";
import { floorTarget, pin } from "./layer.js";

export function createHang(/** @type {State} */ state, { ask, fieldsOf, speak, redraw, whose, verdicts, change }) {
  let at = null; // [x, y] asked about
  const told = h("p", { class: "map-reading" });
  const things = h("ul", { class: "map-things" });
  const spot = createSpot("Spot", fieldsOf(look, () => {}));

  function tell(reply) {
    at = [reply.x, reply.y];
    spot.show(reply.x, reply.y, reply.labels);
    setText(told, reply.text);
  }

  async function look(x, y) {
    at = [x, y];
    redraw();
    const reply = await ask("spot", { kind: "hangAt", x, y, focus: whose() });
    if (!reply || reply.error || at[0] !== x || at[1] !== y) return;
    tell(reply);
    speak(reply.text);
  }

  return {
    key: [["closed", "nothing may hang"], ["line", "nothing lower inside"]],
    parts: [told, spot.el, things],
    request() {
      const { length, width } = state.good.room;
      at ??= [length / 2, width / 2];
      return { x: at[0], y: at[1] };
    },

    /** @param {Wire.HangAnswer} answer */
    show(answer) {
      tell(answer.spot);
      things.replaceChildren(...verdicts(answer.things, (thing) => thing.remedies.map(change)));
    },
    over: (map) => [floorTarget(map, look), ...(at ? [pin("spot", "", at[0], at[1], map)] : [])],
  };
}
