// Three views of recorded clubs over the modelled family. What is drawn comes
// from internal/modeltable in centimetres, ball at the origin; here it becomes SVG.
import { h, s } from "../app/dom.js";

const RULERS = {
  metric: { step: 50, every: 2, count: 0.5, unit: "m" },
  imperial: { step: 30.48, every: 2, count: 1, unit: "ft" },
};

/** The three figures; say(text) picks the words of the units. */
export function pictures(list, units, say) {
  return h("div", { class: "sure-pictures" },
    h("p", { class: "sure-key" },
      key("Where the middle of the clubface goes in the family", band({ band: "M0 -7H36V7H0Z" })),
      key("Golfer 1, recorded", ...line(0, "M0 0H36")), key("Golfer 2, recorded", ...line(1, "M0 0H36")),
      key("The same times after impact", s("circle", { class: "path-moment", cx: 10, r: 3.5 }), s("circle", { class: "path-moment", cx: 26, r: 3.5 }))),
    h("div", { class: "sure-views" }, ...list.map((p) => view(p, units, say))));
}

const key = (text, ...drawing) => h("span", { class: "path-key" },
  s("svg", { class: "path-swatch", viewBox: "-2 -10 40 20", "aria-hidden": "true", focusable: "false" }, ...drawing), text);

function view(p, units, say) {
  const [x, y, width, height] = p.box;
  const title = `Seen ${p.name}`;
  return h("figure", { class: "sure-view" },
    s("svg", { viewBox: `${x - 30} ${y - 10} ${width + 34} ${height + 58}`, role: "img", "aria-label": `${title}: two recorded drivers over the band of the modelled family` },
      band(p),
      p.ground ? s("path", { class: "path-ground", d: `M${x} 0H${x + width}` }) : null,
      ...p.traces.flatMap(({ line: d }, i) => line(i, d)),
      s("circle", { class: "path-ball", r: 4 }),
      ...p.moments.map(({ at: [cx, cy] }) => s("circle", { class: "path-moment", cx, cy, r: 3.5 })),
      ...[...p.moments, ...p.traces.map(({ label }) => label)].filter(({ text }) => text).map(words),
      ...ruler(p.across, units, (v) => [v, y + height], [0, 1]), ...ruler(p.up, units, (v) => [x, v], [-1, 0])),
    h("figcaption", {}, h("b", {}, `${title}. `), say(p.says)));
}

const band = ({ band: d }) => s("path", { class: "path-band", d });

/** A recorded line is tape with ink along it; the second one's ink is dashed. */
const line = (i, d) => [s("path", { class: "path-tape", d }), s("path", { class: i ? "path-ink path-dashed" : "path-ink", d })];

function words({ at, to, text }) {
  const side = to[0] - at[0];
  return s("text", { class: "path-words", x: to[0], y: to[1] + 6, "text-anchor": side > 8 ? "start" : side < -8 ? "end" : "middle" }, text);
}

/** A scale along an edge: ticks outwards, a number at every second one, and what it counts. */
function ruler({ from, to, flip, title }, units, place, [ox, oy]) {
  const { step, every, count, unit } = RULERS[units];
  const ticks = [];
  const numbers = [];
  for (let i = Math.ceil(-1000 / step); i * step <= 1000; i++) {
    const at = flip ? -i * step : i * step;
    if (at < from || at > to) continue;
    const [x, y] = place(at);
    const length = i % every ? 4 : 8;
    ticks.push(`M${x} ${y}l${ox * length} ${oy * length}`);
    if (i % every === 0) numbers.push(s("text", { class: "path-words path-number", x: x + ox * 11, y: y + oy * 22 + (ox ? 5 : 0), "text-anchor": ox ? "end" : "middle" }, String(i * count).replace("-", "−")));
  }
  const [ax, ay] = place(from);
  const [bx, by] = place(to);
  const name = oy
    ? s("text", { class: "path-words path-axis", x: (ax + bx) / 2, y: ay + 42, "text-anchor": "middle" }, `${unit} ${title}`)
    : s("text", { class: "path-words path-axis", x: ax + 6, y: ay + 14 }, `${unit} ${title}`);
  return [s("path", { class: "path-rule", d: `M${ax} ${ay}L${bx} ${by}${ticks.join("")}` }), ...numbers, name];
}
