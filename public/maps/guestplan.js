// The room from above with a guest at the ball: golfer and club as the solver has
// them at address, the walls, the screen and the mat by name, the tapes to measure,
// and the nearest thing.
import { s } from "../app/dom.js";
import { drawCapsule } from "../drawings/drawings.js";

/** What stands for the tapes, on the plan and beside their distances. */
export const LETTERS = "ABCDEFGH";

const LARGE = 600; // px: a plan as wide has room for large letters
const BESIDE = 0.55; // m from the trailing heel to where the heels are measured, clear of the feet
const SHARES = [0.5, 0.35, 0.65, 0.2, 0.8]; // of a tape: where its letter may lie
const BURST = Array.from({ length: 16 }, (_, i) => [(i % 2 ? 6 : 14) * Math.sin(i * Math.PI / 8), -(i % 2 ? 6 : 14) * Math.cos(i * Math.PI / 8)].map((v) => v.toFixed(1)).join()).join(" ");

/** As an SVG that fits into wide × tall px, with the first tapes. size is the room's, m. */
export function guestPlan(/** @type {Wire.GuestMark} */ mark, [length, width], tapes, wide, tall) {
  const large = wide > LARGE;
  const edge = large ? 34 : 22; // px of paper round the room for the names of the walls
  const scale = Math.max(Math.min((wide - 2 * edge) / length, (tall - 2 * edge) / width), 10);
  const map = { scale, px: (x) => edge + x * scale, py: (y) => edge + (width - y) * scale };
  const { px, py } = map;
  const [w, t] = [length * scale + 2 * edge, width * scale + 2 * edge];
  const heels = Math.max(mark.trail.heel[0] - BESIDE, BESIDE / 4);
  const shown = mark.tapes.slice(0, tapes).map((tape) => (tape.to === "heels" ? { ...tape, a: [heels, tape.a[1]], b: [heels, tape.b[1]] } : tape));
  const path = (points, closed) => points.map(([x, y], i) => `${i ? "L" : "M"}${px(x).toFixed(1)} ${py(y).toFixed(1)}`).join("") + (closed ? "Z" : "");
  const text = (words, x, y, anchor = "middle", more = {}) => s("text", { class: "guest-name", x, y, "text-anchor": anchor, ...more }, words);
  const turned = (words, x, y) => text(words, x, y, "middle", { transform: `rotate(90 ${x} ${y})` });
  const heel = (mark.lead.heel[1] + mark.trail.heel[1]) / 2;
  const taken = [mark.nearest.at, ...mark.figure.flatMap(({ a, b }) => [a, b])].map(([x, y]) => [px(x), py(y)]); // where no letter should lie
  const words = `The room from above, the target to the right. ${mark.player} stands at the ball with the ${mark.club}. Nearest: ${mark.nearest.name}. ${shown.map((one) => `${one.from} to ${one.to}: ${one.label}`).join(". ")}.`;
  return s("svg", { viewBox: `0 0 ${w.toFixed(1)} ${t.toFixed(1)}`, width: w.toFixed(1), height: t.toFixed(1), role: "img", "aria-label": words, class: large ? "guest-drawing is-large" : "guest-drawing" },
    s("rect", { class: "guest-room", x: px(0), y: py(width), width: length * scale, height: width * scale }),
    s("g", { class: "guest-paper" },
      ...mark.lines.map((line) => s("path", { class: `ln ln-${line.kind}${line.closed ? " is-closed" : ""}${line.hidden ? " is-hidden" : ""}`, d: path(line.points, line.closed) })),
      ...mark.lines.flatMap((line) => named(line, mark, map, text, (words, x, y) => turned(words, x - (large ? 26 : 18), y)))),
    text("left wall", w / 2, 0.7 * edge),
    text("right wall", w / 2, t - 0.25 * edge),
    turned("back wall", 0.3 * edge, t / 2),
    turned("target", w - 0.75 * edge, t / 2),
    s("path", { class: "guest-heels", d: path([[heels, heel], [mark.lead.heel[0], heel]]) }),
    ...shown.map(({ a, b }) => s("g", {}, s("path", { class: "tape-edge", d: path([a, b]) }), s("path", { class: "tape-body", d: path([a, b]) }))),
    ...[mark.lead, mark.trail].map((foot) => s("path", { class: "guest-foot", d: path([foot.heel, foot.toe]) })),
    s("g", { class: "guest-figure" }, ...mark.figure.map((limb) => drawCapsule(limb, map))),
    s("circle", { class: "mark-ball", cx: px(mark.ball[0]), cy: py(mark.ball[1]), r: large ? 7 : 5 }, s("title", {}, "ball")),
    ...shown.map((tape, i) => plate(LETTERS[i], tape, map, large ? 19 : 12, taken)),
    nearest(mark, map, w, large ? 13 : 8.5));
}

/** The names of what has no wall to lean on. */
function named({ kind, points }, mark, map, text, before) {
  const [xs, ys] = [points.map(([x]) => map.px(x)), points.map(([, y]) => map.py(y))];
  if (kind === "screen") return [before("screen", xs[0], (ys[0] + ys[1]) / 2)];
  // In the corner that the golfer leaves free.
  if (kind === "mat") return [text("mat", Math.max(...xs) - 6, mark.hand === "left" ? Math.min(...ys) + 20 : Math.max(...ys) - 8, "end")];
  return [];
}

/** The letter of a tape on its plate, where it hides least. */
function plate(letter, { a, b }, map, half, taken) {
  /** @type {[number, number][]} */
  const places = SHARES.map((share) => [map.px(a[0] + share * (b[0] - a[0])), map.py(a[1] + share * (b[1] - a[1]))]);
  const clear = ([x, y]) => Math.min(3 * half, ...taken.map(([tx, ty]) => Math.hypot(tx - x, ty - y)));
  const [x, y] = places.reduce((best, at) => (clear(at) > clear(best) ? at : best));
  taken.push([x, y]);
  return s("g", { transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})` },
    s("rect", { class: "reading-plate", x: -half, y: -half, width: 2 * half, height: 2 * half, rx: 2 }),
    s("text", { class: "guest-letter", y: 0.45 * half, "text-anchor": "middle" }, letter));
}

/** The nearest thing, by name, where it is nearest; as much of a long name as the plan is wide. */
function nearest(/** @type {Wire.GuestMark} */ { nearest: { name, at }, verdict }, map, wide, glyph) {
  const x = map.px(at[0]);
  const letters = [...name], most = Math.floor(wide / glyph);
  const short = letters.length > most ? `${letters.slice(0, most - 1).join("")}…` : name;
  const long = short.length * glyph; // px, at most
  const [anchor, dx, dy] = x + 18 + long < wide ? ["start", 18, 6] : x - 18 - long > 0 ? ["end", -18, 6] : ["middle", wide / 2 - x, -16];
  return s("g", { class: `guest-nearest is-${verdict}`, transform: `translate(${x.toFixed(1)} ${map.py(at[1]).toFixed(1)})` },
    verdict === "strikes" ? s("polygon", { class: "burst", points: BURST }) : s("circle", { r: 9 }),
    s("text", { x: dx, y: dy, "text-anchor": anchor, ...(short !== name && { textLength: most * glyph, lengthAdjust: "spacingAndGlyphs" }) }, short));
}
