// The maps as they lie on the plan's floor, and the handles over it. The solver
// sends every ring in room metres; here they are scaled, hatched and labelled.
import { s } from "../app/dom.js";
import { inRoom } from "./golfer.js";

const HATCHES = { // name: size of the tile, px, and its lines
  strike: [6, "M0 0L6 6M-1 5L1 7M5 -1L7 1"],
  tight: [11, "M0 11L11 0"],
  closed: [7, "M0 0L7 7M0 7L7 0"],
  region: [9, "M4 4.500h1"],
};

/**
 * The map of a mode under the room's lines: a list of SVG elements. follow(...children)
 * is a group that moves with the tee, where there is one.
 */
export function mapUnder(mode, /** @type {Wire.StandAnswer | Wire.HangAnswer | Wire.WatchAnswer | undefined} */ answer, /** @type {Paper} */ map, follow) {
  if (!answer) return [];
  const shapes = answer.shapes;
  const of = (name) => shapes.filter((one) => one.name === name).flatMap((one) => one.rings);
  const d = (rings) => rings.map((ring) => `${ring.map(([x, y], i) => `${i ? "L" : "M"}${map.px(x).toFixed(1)} ${map.py(y).toFixed(1)}`).join("")}Z`).join("");
  const area = (name, rings) => s("path", { class: `map-area map-${name}`, d: rings, fill: `url(#map-${name})`, "fill-rule": "evenodd" });
  const line = (name, rings) => s("path", { class: `map-line map-line-${name}`, d: d(rings) });
  const defs = s("defs", {}, ...Object.entries(HATCHES).map(([name, [size, lines]]) =>
    s("pattern", { id: `map-${name}`, width: size, height: size, patternUnits: "userSpaceOnUse" }, s("path", { class: `map-hatch-${name}`, d: lines }))));

  if (mode === "stand") {
    const [x0, x1, y0, y1] = [map.px(0), map.px(map.length), map.py(map.across), map.py(0)];
    const room = `M${x0} ${y0}H${x1}V${y1}H${x0}Z`;
    const names = ["strike", "margin", "comfort"];
    return [defs,
      area("strike", room + d(of("strike"))),
      area("tight", d(of("strike")) + d(of("margin"))),
      s("path", { class: "map-barred", d: d(of("barred")), "fill-rule": "evenodd" }),
      ...names.map((name) => line(name, of(name))),
      ...labels(shapes.filter((one) => one.name === "margin" || one.name === "comfort"), map, underPin(/** @type {Wire.StandAnswer} */ (answer).best, map)),
      of("strike").length === 0 ? text("touches wherever the tee is", (x0 + x1) / 2, y1 - 14, "middle") : null];
  }
  if (mode === "hang") {
    return [defs, inRoom(map, "map-moving", follow(
      area("closed", d(of("closed"))), line("swept", of("swept")), line("level", of("level")), line("closed", of("closed")),
      ...labels(shapes.filter((one) => one.name === "level"), map)))];
  }
  return [defs, area("region", d(of("region"))), line("region", of("region")),
    inRoom(map, "map-moving", follow(line("club", of("club"))), line("ball", of("ball"))),
    ...labels(shapes.filter((one) => one.name === "region"), map)];
}

const SHORT = 30; // points of a ring that is looked at whole
const LINE = 15; // px that a line of text takes
const EVERY = 3; // of a ring's points that are looked at for its label

/** A label on the longest ring of each shape, where the others are farthest from it and nothing is taken: [x, y, half the width]. */
function labels(shapes, map, taken = []) {
  const rings = shapes.map((shape) => shape.rings.reduce((a, b) => (b.length > a.length ? b : a), []).filter((_, i, all) => i % EVERY === 0 || all.length < SHORT)
    .map(([x, y]) => [map.px(x), map.py(y)]));
  const placed = [...taken];
  return shapes.map(({ label }, i) => {
    const half = label.length * 2.9 + 3;
    const covered = ([x, y]) => placed.some(([px, py, wide]) => Math.abs(px - x) < wide + half && Math.abs(py - y) < LINE);
    const others = rings.flatMap((ring, k) => (k === i ? [] : ring));
    const room = ([x, y]) => others.reduce((least, [ox, oy]) => Math.min(least, Math.hypot((x - ox) / 2, y - oy)), 1e6);
    let best = null;
    let most = -1;
    for (const at of rings[i]) {
      const now = covered(at) ? -1 : room(at);
      if (now > most) [best, most] = [at, now];
    }
    if (!best) return null;
    placed.push([...best, half]);
    const within = (v, low, high) => Math.min(Math.max(v, low), high);
    return text(label, within(best[0], map.px(0) + half, map.px(map.length) - half), within(best[1] + 4, map.py(map.across) + 13, map.py(0) - 4), "middle");
  });
}

const text = (words, x, y, anchor) => s("text", { class: "map-label", x: x.toFixed(1), y: y.toFixed(1), "text-anchor": anchor }, words);

const MOST = 16; // letters of a name beside its handle

function brief(name) {
  const letters = [...name];
  return letters.length > MOST ? `${letters.slice(0, MOST - 1).join("")}…` : name;
}

/** A handle to drag with mouse or finger; keys have the two fields below the plan. */
export function handle(kind, name, x, y, map, on) {
  const put = (el, px, py) => el.setAttribute("transform", `translate(${px.toFixed(1)} ${py.toFixed(1)})`);
  const el = s("g", { class: `handle handle-${kind}`, "data-handle": name },
    s("circle", { class: "handle-touch", r: 24 }), s("circle", { class: "handle-ring", r: 10 }), s("path", { class: "handle-cross", d: "M-15 0H-5M5 0H15M0 -15V-5M0 5V15" }),
    s("text", { class: "map-label", y: -18, "text-anchor": "middle" }, brief(name)));
  put(el, map.px(x), map.py(y));
  let held = null; // pointer and offset from where it was taken hold of
  const place = (e) => {
    const box = document.querySelector("#view-plan svg.view").getBoundingClientRect();
    const k = map.width / box.width;
    return [map.x((e.clientX - box.left) * k), map.y((e.clientY - box.top) * k)];
  };
  // The window is listened to, for the drawing may be made anew meanwhile.
  const follow = (e) => {
    if (e.pointerId !== held.id) return;
    const [px, py] = place(e);
    x = Math.min(Math.max(px + held.dx, 0), map.length);
    y = Math.min(Math.max(py + held.dy, 0), map.across);
    put(el, map.px(x), map.py(y));
    on.move(x, y);
  };
  const drop = (e) => {
    if (e.pointerId !== held.id) return;
    held = null;
    removeEventListener("pointermove", follow);
    removeEventListener("pointerup", drop);
    removeEventListener("pointercancel", drop);
    on.drop();
  };
  // A finger on the handle drags it; anywhere else it scrolls the page. (The
  // property touch-action is not heeded on a group of an SVG everywhere.)
  el.addEventListener("touchstart", (e) => e.preventDefault(), { passive: false });
  el.addEventListener("pointerdown", (e) => {
    if (e.button !== 0 || held) return;
    e.preventDefault();
    const [px, py] = place(e);
    held = { id: e.pointerId, dx: x - px, dy: y - py };
    addEventListener("pointermove", follow);
    addEventListener("pointerup", drop);
    addEventListener("pointercancel", drop);
  });
  el.moveTo = (nx, ny) => {
    if (held) return;
    [x, y] = [nx, ny];
    put(el, map.px(x), map.py(y));
  };
  return el;
}

/** A mark that is not moved: the best place. */
export function pin(kind, words, x, y, map) {
  return s("g", { class: `pin pin-${kind}`, transform: `translate(${map.px(x).toFixed(1)} ${map.py(y).toFixed(1)})` },
    s("path", { class: "pin-mark", d: "M0 0V-26M0 -26H16L11 -20L16 -14H0" }),
    s("circle", { class: "pin-foot", r: 3 }),
    words ? s("text", { class: "map-label", x: 4, y: 16, "text-anchor": "middle" }, words) : null);
}

/** What a pin and its word cover, as labels() takes it. */
const underPin = (best, map) => (best ? [-20, -8, 4, 16].map((down) => [map.px(best.x) + 6, map.py(best.y) + down, 16]) : []);

/** The whole floor as a place to press. */
export function floorTarget(map, press) {
  const el = s("rect", { class: "floor-target", x: map.px(0), y: map.py(map.across), width: map.px(map.length) - map.px(0), height: map.py(0) - map.py(map.across) });
  el.addEventListener("click", (e) => {
    const box = el.ownerSVGElement.getBoundingClientRect();
    const k = map.width / box.width;
    press(map.x((e.clientX - box.left) * k), map.y((e.clientY - box.top) * k));
  });
  return el;
}
