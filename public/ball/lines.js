// The ball in the drawings: its flight to what it meets first, the way back
// dashed, and from the side the fan of launch angles. Check boxes choose which.
import { $, active, h, s } from "../app/dom.js";

const FAN = " fan"; // no club can be called so: names are trimmed
const CLUB_ALONG = 0.55; // of a flight, where the club's name stands
const LABEL_FROM_END = 0.12; // of a ray's length, back from its end, for the angle
const NEAREST = 24; // px between two labels of angles

/** createBallLines(lay): hands lay a function (view name, map) → SVG group, anew whenever the lines change. */
export function createBallLines(lay) {
  const holder = $("#ball-toggles");
  const shown = new Map(); // club or FAN → chosen by the visitor
  let lines = null;

  function toggles(focus) {
    const clubs = [...new Set(lines.plan.map((line) => line.club))];
    const names = lines.side.some((line) => line.kind === "fan") ? [...clubs, FAN] : clubs;
    const had = active()?.dataset?.ball;
    holder.replaceChildren(h("span", {}, "Show the ball of"), ...names.map((name) => {
      const box = h("input", { type: "checkbox", "data-ball": name, onchange: () => { shown.set(name, box.checked); lay(layer); } });
      if (!shown.has(name) && name === FAN) shown.set(name, true);
      box.checked = shown.get(name) ?? name === focus;
      return h("label", {}, box, name === FAN ? `fan of launch angles, ${focus}` : name);
    }));
    if (had) $(`[data-ball="${CSS.escape(had)}"]`, holder)?.focus();
  }
  const isShown = (line, focus) => (line.kind === "fan" ? shown.get(FAN) : shown.get(line.club) ?? line.club === focus);
  let focus = "";

  function layer(name, map) {
    const some = (lines[name] ?? []).filter((line) => isShown(line, focus));
    const taken = [];
    return s("g", { class: "layer-ball" }, ...some.map((line) => drawLine(line, map, taken)));
  }

  return {
    /** Takes the ball's lines, {plan, side, face}; club is the one looked at. */
    take(trajectory, club) {
      lines = trajectory;
      focus = club;
      toggles(club);
      lay(layer);
    },
  };
}

function drawLine(/** @type {Wire.BallPath} */ { club, kind, label, points }, map, taken) {
  const at = points.map(([a, b]) => [map.px(a), map.py(b)]);
  const path = s("path", { class: `ball-${kind}`, d: at.map(([x, y], i) => `${i ? "L" : "M"}${x.toFixed(1)} ${y.toFixed(1)}`).join("") });
  const [x, y] = at[at.length - 1];
  if (kind === "bounce") return path;
  if (kind === "fan") return s("g", {}, path, angle(label, at, taken));
  return s("g", {}, path, s("circle", { class: "ball-met", cx: x, cy: y, r: 5 }, s("title", {}, `${club}: ${label}`)),
    s("text", { class: "ball-club", x: at[0][0] + CLUB_ALONG * (x - at[0][0]), y: at[0][1] + CLUB_ALONG * (y - at[0][1]) - 6, "text-anchor": "middle" }, club));
}

/** The angle beside its ray, near the end; left out where another stands already. */
function angle(label, at, taken) {
  const [[x0, y0], [x1, y1]] = [at[0], at[at.length - 1]];
  const spot = [x1 - LABEL_FROM_END * (x1 - x0), y1 - LABEL_FROM_END * (y1 - y0)];
  if (taken.some(([x, y]) => Math.hypot(x - spot[0], y - spot[1]) < NEAREST)) return null;
  taken.push(spot);
  return s("text", { class: "ball-angle", x: spot[0], y: spot[1] + 4, "text-anchor": "middle" }, label);
}
