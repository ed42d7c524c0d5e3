// The signature: a yellow carpenter's tape from the club to the nearest
// surface, with its reading on a plate beside it; and the mark of a strike.
import { s } from "../app/dom.js";

const TICK = 6; // px between the ticks on the tape
const PLATE_HEIGHT = 24;
const PLATE_GAP = 30; // px from the tape's middle to the plate
const PLATE_DIRECTIONS = [[1, 1], [1, 0], [1, -1], [-1, 1], [-1, 0], [-1, -1], [0, 1.4], [0, -1.4]];
const THREADS = [0.78, 1, 0.6, 0.92, 0.7]; // of the frayed end: how long, as shares of the fray
const GLYPH = 7.6; // px a character of the plate's face takes, at most

/**
 * Draws tape = {a, b, label, verdict, surface, fray}; a is on the club, and fray is
 * the share of the tape, from there, that the model may be wrong by. busy lists
 * the points of the paper that the reading should leave free.
 */
export function drawTape(/** @type {Wire.TapeLine} */ { a, b, label, verdict, surface, fray = 0 }, map, busy) {
  const [ax, ay, bx, by] = [map.px(a[0]), map.py(a[1]), map.px(b[0]), map.py(b[1])];
  const long = Math.hypot(bx - ax, by - ay);
  const [ux, uy] = long > 0.5 ? [(bx - ax) / long, (by - ay) / long] : [0, -1];
  const [nx, ny] = [-uy, ux];
  const whole = fray * long; // px from the club to where the blade begins
  const at = (t, off) => `${(ax + ux * t + nx * off).toFixed(1)} ${(ay + uy * t + ny * off).toFixed(1)}`;
  const d = whole < long ? `M${at(whole, 0)}L${at(long, 0)}` : "";
  const threads = THREADS.map((share, i) => `M${at(whole, 1.7 * (i - 2))}L${at(whole * (1 - share), 1.7 * (i - 2) * (1 + 0.6 * share))}`).join("");
  let ticks = "";
  for (let t = TICK, i = 1; t < long - 1; t += TICK, i++) if (t > whole + 1) ticks += `M${at(t, 4)}L${at(t, i % 4 === 0 ? -2 : 1)}`;

  return s("g", { class: `pull is-${verdict}` },
    s("path", { class: "tape-thread-edge", d: threads }), s("path", { class: "tape-thread", d: threads }),
    s("path", { class: "tape-edge", d }), s("path", { class: "tape-body", d }), s("path", { class: "tape-ticks", d: ticks }),
    s("path", { class: "tape-hook", d: `M${at(long, -8)}L${at(long, 8)}` }),
    readingPlate(label, surface, (ax + bx) / 2, (ay + by) / 2, map, busy));
}

/** An eight-pointed mark where something is struck first: first = {name, at}. */
export function drawFirst({ name, at }, map) {
  const [x, y] = [map.px(at[0]), map.py(at[1])];
  const points = Array.from({ length: 16 }, (_, i) => {
    const r = i % 2 ? 5 : 11;
    return `${(x + r * Math.sin(i * Math.PI / 8)).toFixed(1)},${(y - r * Math.cos(i * Math.PI / 8)).toFixed(1)}`;
  });
  return s("polygon", { class: "burst", points: points.join(" ") }, s("title", {}, `First touch: ${name}`));
}

/**
 * The reading on its plate, on the paper, with a leader to the tape; of the
 * places round the tape it takes the one that hides least of the golfer.
 */
function readingPlate(label, surface, x, y, map, busy) {
  const text = label || surface;
  const width = text.length * GLYPH + 18;
  const clamp = (v, low, high) => Math.max(low, Math.min(v, high));
  const places = PLATE_DIRECTIONS.map(([dx, dy], rank) => {
    const left = clamp(x + dx * (width / 2 + PLATE_GAP) - width / 2, 2, map.width - width - 2);
    const top = clamp(y + dy * PLATE_GAP - PLATE_HEIGHT / 2, 2, map.height - PLATE_HEIGHT - 2);
    const hides = ([px, py]) => px > left - 6 && px < left + width + 6 && py > top - 6 && py < top + PLATE_HEIGHT + 6;
    return { left, top, cost: 10 * busy.filter(hides).length + (hides([x, y]) ? 100 : 0) + rank };
  });
  const { left, top } = places.reduce((a, b) => (b.cost < a.cost ? b : a));
  const toX = clamp(x, left + 4, left + width - 4);
  const toY = clamp(y, top, top + PLATE_HEIGHT);
  return s("g", { class: "reading" },
    s("path", { class: "leader", d: `M${x} ${y}L${toX} ${toY}` }),
    s("rect", { class: "reading-plate", x: left, y: top, width, height: PLATE_HEIGHT, rx: 2 }),
    s("text", { class: "reading-text", x: left + width / 2, y: top + PLATE_HEIGHT / 2 + 5, "text-anchor": "middle" }, text));
}
