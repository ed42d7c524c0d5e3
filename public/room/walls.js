// The bare room drawn flat on the sheet of its numbers. The ends of its measures
// are handles: a wall goes where its end is dragged, by whole inches or
// centimetres, and is built there when it is let go. Keys have the fields.
import { $, s, setText } from "../app/dom.js";
import { MARGIN, dimsOf, drawView } from "../drawings/drawings.js";

const SNAP = { imperial: 0.0254, metric: 0.01 }; // m
const OUT = 16; // px from the room to its dimension lines
const TALLEST = 300; // px of the plan on paper
const SHARE = 0.86; // of the width that a drawing takes: a wall may be dragged outwards

const WALLS = {
  length: { view: "plan", along: "x", word: "Length" },
  width: { view: "plan", along: "y", word: "Width" },
  height: { view: "side", along: "y", word: "Height" },
};

/** label(metres) resolves to how a length is written, or null. @param {State} state @param {(metres: number) => Promise<string | null>} label */
export function createWalls(state, label) {
  const views = [...new Set(Object.values(WALLS).map(({ view }) => view))];
  const holder = (view) => $(`#walls-${view} .drawing`);
  let held = false;

  function render() {
    if (held || !state.answer) return;
    const { flat, figures } = state.answer;
    const dims = dimsOf(figures);
    const [length, width] = flat.plan.size;
    const space = $("#walls-plan").clientWidth;
    if (space === 0) return; // on another sheet; it is drawn when that is shown
    const across = Math.min(space * SHARE, (TALLEST - 2 * MARGIN) * length / width + 2 * MARGIN);
    for (const view of views) {
      const bare = { ...flat[view], sweep: [], path: [], figure: [], tape: undefined, first: undefined }; // nobody swings here
      holder(view).style.width = `${across}px`;
      holder(view).replaceChildren(drawView(view, bare, dims, wordsOf(view, dims), across, undefined, {
        under: () => [],
        over: (map) => Object.keys(WALLS).filter((wall) => WALLS[wall].view === view).map((wall) => handle(wall, map)),
        words: () => "",
      }));
    }
  }

  /** The end of a measure, as it lies on a view's paper. @param {Paper} map */
  function handle(wall, map) {
    const { along, word } = WALLS[wall];
    const level = along === "x";
    const start = state.good.room[wall];
    const at = (metres) => (level ? [map.px(metres), map.height - MARGIN + OUT] : [MARGIN - OUT, map.py(metres)]);
    const ghost = [s("path", { class: "wall-edge" }), s("path", { class: "wall-tape" })]; // where the wall would be
    const text = s("text", { class: "wall-label", "text-anchor": "middle" });
    const grip = s("g", { class: "wall-grip" }, s("circle", { class: "handle-touch", r: 22 }), s("circle", { class: "wall-knob", r: 8 }),
      s("path", { class: "wall-arrows", d: level ? "M-3 -3L-6 0L-3 3M3 -3L6 0L3 3" : "M-3 -3L0 -6L3 -3M-3 3L0 6L3 3" }));
    const el = s("g", { class: `wall-handle is-${level ? "level" : "upright"}`, "data-wall": wall }, s("title", {}, `Drag: ${word.toLowerCase()}`), ...ghost, grip, text);
    let pointer = null; // {id, x, y} where it was taken hold of
    let now = start;

    function show(metres) {
      const [x, y] = at(metres);
      grip.setAttribute("transform", `translate(${x.toFixed(1)} ${y.toFixed(1)})`);
      const [far, near] = [map.py(map.across), map.py(0)];
      const d = metres === start ? "" : level ? `M${x} ${far}V${near}` : `M${map.px(0)} ${y}H${map.px(map.length)}`;
      for (const path of ghost) path.setAttribute("d", d);
      text.setAttribute("x", String(level ? x : x + 34));
      text.setAttribute("y", String(level ? near + OUT - 14 : y - 14));
    }
    show(start);

    async function follow(e) {
      if (e.pointerId !== pointer?.id) return;
      const px = level ? e.clientX - pointer.x : pointer.y - e.clientY;
      const step = SNAP[state.good.units];
      const next = Math.max(Math.round((start + px / map.scale) / step), 1) * step;
      if (next === now) return;
      now = next;
      show(now);
      const words = await label(now);
      if (words && pointer) setText(text, words);
    }
    function release() {
      pointer = null;
      held = false;
      setText(text, "");
    }
    grip.addEventListener("touchstart", (e) => e.preventDefault(), { passive: false }); // elsewhere a finger scrolls
    grip.addEventListener("pointerdown", (e) => {
      if (e.button !== 0 || held) return;
      e.preventDefault();
      held = true;
      pointer = { id: e.pointerId, x: e.clientX, y: e.clientY };
      grip.setPointerCapture(e.pointerId);
    });
    grip.addEventListener("pointermove", follow);
    grip.addEventListener("pointerup", async (e) => {
      if (e.pointerId !== pointer?.id) return;
      release();
      if (now !== start) await state.edit((plan) => { plan.room[wall] = Math.round(now * 1e4) / 1e4; });
      render(); // as it was, if the wall cannot stand there
    });
    grip.addEventListener("lostpointercapture", () => {
      if (!pointer) return;
      release();
      render();
    });
    return el;
  }

  let width = 0;
  new ResizeObserver(([{ target }]) => {
    if (target.clientWidth === width) return;
    width = target.clientWidth;
    render();
  }).observe($("#walls-plan"));
  state.onAnswered(render);
}

const wordsOf = (view, { length, width, height }) => (view === "plan" ? `The room from above: ${length} by ${width}.` : `The room from the right: ${length} long, ${height} high.`);
