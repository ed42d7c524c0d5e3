// The flat drawings that do not move: the plan under the maps, the side elevation
// with the balls. The solver sends every line in room metres; here they are only
// scaled onto paper and given the class that drawings.css inks.
import { $, h, painted, s, setText } from "../app/dom.js";
import { drawFirst, drawTape } from "./tape.js";
import { describeViews, titleBlock } from "./words.js";

/** px of paper round the room, for the dimension lines. */
export const MARGIN = 30;
const NAMES = ["plan", "side"];
const HATCH_STEP = 9; // px between hatch lines

/** The room's sizes as text. */
export function dimsOf(/** @type {Wire.Figures} */ { fields }) {
  return { length: fields["room.length"], width: fields["room.width"], height: fields["room.height"] };
}

/** Draws the views into their figures. */
export function createDrawings(/** @type {State} */ state) {
  let last = null;
  let overlay = () => null; // (view name, map) → more lines over the drawing, or null
  let floor = null; // draws the maps and handles of the plan
  let due = false; // somebody draws anyway where a sheet is shown
  function redraw() {
    due = false;
    if (last) draw(last, overlay, floor);
  }
  const widths = new WeakMap();
  const observer = new ResizeObserver(async (entries) => {
    const turned = entries.filter(({ target }) => widths.get(target) !== target.clientWidth); // text that grows below a drawing does not change it
    for (const { target } of turned) widths.set(target, target.clientWidth);
    due ||= turned.length > 0;
    await painted();
    if (due) redraw();
  });
  for (const name of NAMES) observer.observe($(`#view-${name} .drawing`));

  function render(/** @type {State} */ { answer: { flat, figures }, good, focus, check }) {
    const dims = dimsOf(figures);
    const shown = { ...flat, side: flat.side && { ...flat.side, sweep: [], path: [], tape: undefined, first: undefined } }; // the side is of the balls
    last = { flat: shown, dims, words: describeViews(shown, dims, focus, check) };
    $("#title-block").replaceChildren(...titleBlock(good, focus).flatMap(([term, text]) => [h("dt", {}, term), h("dd", {}, text)]));
    overlay = () => null; // of an older plan
    redraw();
  }
  state.onAnswered(render);

  return {
    /**
     * Has the plan's floor drawn by maps = {under(map), over(map), about(dims), words()}:
     * lists of SVG elements below the room's lines and over everything; what is
     * drawn, and what it says.
     */
    setFloor(maps) {
      floor = maps;
      redraw();
    },
    redraw,

    /** Draws more lines over the views until the next render: layer(view name, map) makes them. */
    lay(layer) {
      overlay = layer;
      redraw();
    },
  };
}

function draw(/** @type {{flat: Wire.Set, dims: any, words: any}} */ { flat, dims, words }, overlay, floor) {
  for (const name of NAMES) {
    const view = flat?.[name];
    const figure = $(`#view-${name}`);
    figure.hidden = !view;
    if (!view) continue;
    const holder = $(".drawing", figure);
    const told = name === "plan" && floor ? floor.about(dims) : (words[name] ?? "");
    setText($(".alt", figure), told);
    if (holder.clientWidth === 0) continue; // on another sheet; it is drawn when that is shown
    holder.replaceChildren(drawView(name, view, dims, told, holder.clientWidth, overlay, name === "plan" ? floor : null));
  }
}

/** Maps the view's room coordinates to paper; the end view has left on the left. */
export function mapping(name, /** @type {Wire.View} */ view, width) {
  const [across, up] = view.size;
  const scale = (width - 2 * MARGIN) / across;
  const px = (v) => MARGIN + (name === "face" ? across - v : v) * scale;
  const py = (v) => MARGIN + (up - v) * scale;
  return { scale, px, py, x: (p) => (p - MARGIN) / scale, y: (p) => up - (p - MARGIN) / scale, length: across, across: up, width, height: up * scale + 2 * MARGIN };
}

/** Draws one view as an SVG of that width, px. */
export function drawView(name, /** @type {Wire.View} */ view, dims, words, width, overlay = (_name, _map) => null, floor = null) {
  const map = mapping(name, view, width);
  const path = (points, closed) => points.map(([a, b], i) => `${i ? "L" : "M"}${map.px(a).toFixed(1)} ${map.py(b).toFixed(1)}`).join("") + (closed ? "Z" : "");
  const hatch = `hatch-${name}`;
  const sweep = (view.sweep ?? []).map((ring) => path(ring, true)).join("");

  return s("svg", { viewBox: `0 0 ${map.width.toFixed(1)} ${map.height.toFixed(1)}`, role: "img", "aria-label": [words, floor?.words()].filter(Boolean).join(" "), class: "view" },
    sweep ? s("defs", {}, s("pattern", { id: hatch, width: HATCH_STEP, height: HATCH_STEP, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" },
      s("path", { class: "hatch-line", d: `M0 0V${HATCH_STEP}` }))) : null,
    s("rect", { class: "room-paper", x: MARGIN, y: MARGIN, width: view.size[0] * map.scale, height: view.size[1] * map.scale }),
    s("g", { class: "layer-map" }, ...(floor?.under(map) ?? [])),
    s("g", { class: "layer-sweep" },
      s("path", { class: "sweep-wash", d: sweep, "fill-rule": "nonzero" }),
      s("path", { class: "sweep-hatch", d: sweep, fill: `url(#${hatch})`, "fill-rule": "nonzero" })),
    s("g", { class: "layer-lines" }, ...(view.lines ?? []).map((line) => s("path", {
      class: `ln ln-${line.kind}${line.closed ? " is-closed" : ""}${line.hidden ? " is-hidden" : ""}`, d: path(line.points, line.closed), "data-name": line.name,
    }, s("title", {}, line.name)))),
    s("g", { class: "layer-path" }, view.path?.length ? s("path", { class: "club-path", d: path(view.path, false) }) : null),
    s("g", { class: "layer-figure" }, ...(view.figure ?? []).map((capsule) => drawCapsule(capsule, map))),
    overlay(name, map),
    s("g", { class: "layer-marks" }, ...(view.marks ?? []).map((mark) => drawMark(mark, map))),
    ...placeNames(name, map),
    dimension(map, "across", dims[name === "face" ? "width" : "length"]),
    dimension(map, "up", dims[name === "plan" ? "width" : "height"]),
    view.first ? drawFirst(view.first, map) : null,
    view.tape ? drawTape(view.tape, map, busyPoints(view, map)) : null,
    floor ? s("g", { class: "layer-handles" }, ...floor.over(map)) : null);
}

/** Points of the golfer, the club, the first touch and the place names, for the reading to keep clear of. */
export function busyPoints(/** @type {Wire.View} */ { figure = [], first }, map) {
  const placeName = [map.width - MARGIN - 20, MARGIN - 12];
  const touch = first ? [[map.px(first.at[0]), map.py(first.at[1])]] : [];
  return [placeName, ...touch].concat(figure.flatMap(({ a, b }) => [0, 0.25, 0.5, 0.75, 1].map((k) => [map.px(a[0] + k * (b[0] - a[0])), map.py(a[1] + k * (b[1] - a[1]))])));
}

/** A jointed limb: an inked outline under a graphite core, both round-ended. */
export function drawCapsule(/** @type {Wire.Limb} */ { part, a, b, r }, map) {
  const across = Math.max(2 * r * map.scale, part === "shaft" ? 1.6 : 3);
  const ends = { x1: map.px(a[0]), y1: map.py(a[1]), x2: map.px(b[0]), y2: map.py(b[1]) };
  const kind = /^(shaft|grip|clubhead)$/.test(part) ? part : "limb";
  return s("g", { class: `capsule is-${kind}` },
    s("line", { class: "outline", ...ends, "stroke-width": across + 2 }),
    s("line", { class: "core", ...ends, "stroke-width": across }));
}

function drawMark(/** @type {Wire.Mark} */ { name, at }, map) {
  const [x, y] = [map.px(at[0]), map.py(at[1])];
  if (name === "ball") return s("circle", { class: "mark-ball", cx: x, cy: y, r: 4 }, s("title", {}, "ball"));
  return s("g", { class: "mark-cross" }, s("path", { d: `M${x - 5} ${y}H${x + 5}M${x} ${y - 5}V${y + 5}` }), s("title", {}, name));
}

const PLACES = { plan: ["left wall", "target"], side: ["ceiling", "target"], face: ["ceiling", "right wall"] };

/** What lies beyond the top and the right edge of the paper. */
function placeNames(name, map) {
  const [top, right] = PLACES[name];
  const [x, y] = [map.width - MARGIN + 12, map.height / 2];
  return [
    s("text", { class: "place-name", x: map.width - MARGIN, y: MARGIN - 9, "text-anchor": "end" }, top),
    s("text", { class: "place-name", x, y, "text-anchor": "middle", transform: `rotate(90 ${x} ${y})` }, right),
  ];
}

/** A dimension line with arrowheads and its reading, below or left of the room. */
function dimension(map, direction, label) {
  if (!label) return null;
  const [x0, x1, y0, y1] = [MARGIN, map.width - MARGIN, MARGIN, map.height - MARGIN];
  if (direction === "across") {
    const y = y1 + 16;
    return s("g", { class: "dimension" },
      s("path", { d: `M${x0} ${y}H${x1}M${x0} ${y - 6}V${y + 6}M${x1} ${y - 6}V${y + 6}M${x0 + 7} ${y - 3}L${x0} ${y}L${x0 + 7} ${y + 3}M${x1 - 7} ${y - 3}L${x1} ${y}L${x1 - 7} ${y + 3}` }),
      plate(label, (x0 + x1) / 2, y, ""));
  }
  const x = x0 - 16;
  return s("g", { class: "dimension" },
    s("path", { d: `M${x} ${y0}V${y1}M${x - 6} ${y0}H${x + 6}M${x - 6} ${y1}H${x + 6}M${x - 3} ${y0 + 7}L${x} ${y0}L${x + 3} ${y0 + 7}M${x - 3} ${y1 - 7}L${x} ${y1}L${x + 3} ${y1 - 7}` }),
    plate(label, x, (y0 + y1) / 2, `rotate(-90 ${x} ${(y0 + y1) / 2})`));
}

function plate(label, x, y, transform) {
  const width = label.length * 6.4 + 10;
  return s("g", { transform: transform || null },
    s("rect", { class: "dimension-plate", x: x - width / 2, y: y - 8, width, height: 16 }),
    s("text", { class: "dimension-text", x, y: y + 4, "text-anchor": "middle" }, label));
}
