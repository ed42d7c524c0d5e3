// The lens as a handle over a drawing of the sheet Projector, for mouse, finger and keys.
import { h } from "../app/dom.js";
import { AXES } from "../stage/reel.js";

const STEPS = { imperial: [0.0254, 0.1524], metric: [0.01, 0.1] }; // m, of an arrow key, and with Shift
const WAYS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
const SETTLED_MS = 600; // after the last key
const TENTH_MM = 1e4; // of a metre, as links keep it

/**
 * Where a lens (m) goes by so much across and up a view (m), in whole steps and no
 * farther than it may be at all; along an axis that it is not moved by it stays.
 * @param {number[]} from @param {number[]} by @param {"plan" | "side"} view
 * @param {number} step @param {{min: number[], max: number[]}} reach
 */
export function lensAt(from, by, view, step, reach) {
  const to = [...from];
  for (const [i, axis] of AXES[view].entries()) {
    if (by[i] === 0) continue;
    const stepped = Math.round((from[axis] + by[i]) / step) * step;
    to[axis] = Math.round(Math.min(Math.max(stepped, reach.min[axis]), reach.max[axis]) * TENTH_MM) / TENTH_MM;
  }
  return to;
}

/**
 * A handle over paper that shows that view. now() is {lens, reach, where}; move(lens) is
 * called on the way, drop() when it is let go, back() when that is taken back.
 */
export function createLensHandle(paper, /** @type {"plan" | "side"} */ view, { units, now, move, drop, back }) {
  const el = h("div", { class: "build-handle", role: "slider", tabindex: "0", "aria-label": view === "side" ? "Lens, in elevation: arrow keys move it" : "Lens, in plan: arrow keys move it" });
  let held = null; // pointer, where it was, and where the lens was
  let settling = 0; // timer of the keys
  paper.holder.append(el);

  el.addEventListener("pointerdown", (e) => {
    if (e.button !== 0) return;
    e.preventDefault();
    el.focus({ preventScroll: true });
    el.setPointerCapture(e.pointerId);
    held = { id: e.pointerId, x: e.clientX, y: e.clientY, from: now().lens, moved: false };
  });
  el.addEventListener("pointermove", (e) => {
    if (e.pointerId !== held?.id) return;
    held.moved = true;
    move(lensAt(held.from, [(e.clientX - held.x) / paper.map.scale, (held.y - e.clientY) / paper.map.scale], view, STEPS[units()][0], now().reach));
  });
  el.addEventListener("pointerup", (e) => {
    if (e.pointerId !== held?.id) return;
    const { moved } = held;
    held = null;
    if (moved) drop();
  });
  el.addEventListener("lostpointercapture", () => {
    if (!held) return;
    held = null;
    back();
  });
  el.addEventListener("keydown", (e) => {
    if (e.key === "Escape" && (held || settling)) {
      held = null;
      clearTimeout(settling);
      settling = 0;
      back();
      return;
    }
    const way = WAYS[e.key];
    if (!way || e.altKey || e.ctrlKey || e.metaKey) return;
    e.preventDefault();
    const far = STEPS[units()][e.shiftKey ? 1 : 0];
    move(lensAt(now().lens, way.map((one) => one * far), view, STEPS[units()][0], now().reach));
    clearTimeout(settling);
    settling = setTimeout(settle, SETTLED_MS);
  });
  el.addEventListener("blur", () => settling && settle());

  function settle() {
    clearTimeout(settling);
    settling = 0;
    drop();
  }

  return {
    /** Lays the handle over the lens. */
    show() {
      const { lens, reach, where } = now();
      const { map, left } = paper;
      if (!map) return;
      const [across, up] = AXES[view];
      el.style.setProperty("left", `${left + map.px(lens[across])}px`);
      el.style.setProperty("top", `${map.py(lens[up])}px`);
      for (const [name, value] of [["valuemin", reach.min[across]], ["valuemax", reach.max[across]], ["valuenow", lens[across]]]) el.setAttribute(`aria-${name}`, value.toFixed(3));
      el.setAttribute("aria-valuetext", where);
    },
  };
}
