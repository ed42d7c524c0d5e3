// How deep the returns must be: sentences, and the curve of depth against balls
// missed with its numbers in a table; what mishits and launch take.
import { h, s } from "../app/dom.js";
import { mark, table } from "./table.js";

const TALL = 210; // px of the chart
const [FULL, NARROW] = [460, 320]; // px of its width; narrow on a phone, so that its lettering stays readable
const phone = matchMedia("(max-width: 34rem)");
const PAD = { left: 46, right: 14, top: 14, bottom: 40 };

export function renderEnclosure(/** @type {Wire.BallEnclosure | undefined} */ e) {
  if (!e) return [];
  const [lead, ...rest] = e.sentences;
  return [
    h("p", {}, lead),
    h("ul", { class: "detail enclosure-told" },
      ...rest.map((text) => h("li", {}, text === e.side.text ? verdict(e.side) : text === e.top.text ? verdict(e.top) : null, text)),
      h("li", {}, e.behind)),
    h("figure", {}, h("figcaption", {}, "Balls missed, by depth of return"), chart(e), numbers(e)),
  ];
}

const verdict = ({ verdict: v }) => mark(v === "clear", "deep enough:", "not deep enough:");

export function mishitNeeds(/** @type {Wire.MishitNeed[]} */ lines) {
  return table("What a return must do for them, over everybody", ["Mishit", "It takes"],
    lines.map((line) => h("tr", {}, h("th", { scope: "row" }, mark(line.ok, "caught:", "not caught:"), line.name), h("td", {}, line.text))), "mishits stack");
}

export function launch(/** @type {Wire.LaunchLine[]} */ lines) {
  const tees = new Set(lines.map((line) => line.tee)).size > 1;
  return [table("Steepest start that still meets the screen", ["Player, club", "Own launch", "Steepest", "To spare", "Steeper meets"],
    lines.map((line) => h("tr", {},
      h("th", { scope: "row" }, mark(line.ok, "within:", "too steep:"), `${line.player}, ${line.club}${tees ? `, ${line.tee}` : ""}`),
      h("td", { class: "fig" }, line.own), h("td", { class: "fig" }, line.screen), h("td", { class: "fig" }, line.spare || "–"), h("td", {}, line.next))))];
}

function numbers(/** @type {Wire.BallEnclosure} */ { curve }) {
  return h("details", {}, h("summary", {}, "The curve's numbers"),
    table("Share of ordinary balls that pass in front of a return, for whoever misses most", ["Depth", "Past the sides", "Over the top"],
      curve.map((at) => h("tr", {}, h("th", { scope: "row", class: "fig" }, at.label), h("td", { class: "fig" }, at.sideLabel), h("td", { class: "fig" }, at.topLabel))), ""));
}

/** Depth across, share missed upward; the plan's own depths as uprights. */
function chart(/** @type {Wire.BallEnclosure} */ e) {
  const WIDE = phone.matches ? NARROW : FULL;
  const last = e.curve[e.curve.length - 1];
  const deep = Math.max(last.depth, e.side.have, e.top.have, 0.1) * 1.04;
  const share = Math.max(...e.curve.flatMap((at) => [at.side, at.top]), 1 - e.rate) * 1.08;
  const x = (m) => PAD.left + (WIDE - PAD.left - PAD.right) * m / deep;
  const y = (v) => TALL - PAD.bottom - (TALL - PAD.top - PAD.bottom) * v / share;
  const line = (key) => e.curve.map((at, i) => `${i ? "L" : "M"}${x(at.depth).toFixed(1)} ${y(at[key]).toFixed(1)}`).join("") + `L${x(deep).toFixed(1)} ${y(0).toFixed(1)}`;
  const ticks = e.curve.filter((_, i) => i % Math.max(1, Math.ceil(e.curve.length / (phone.matches ? 3 : 5))) === 0);
  const first = e.curve[0];
  const words = `Without returns ${first.topLabel} of the worst pair's balls pass over the top and ${first.sideLabel} past the sides; at ${last.label} none that were flown. ${e.top.text} ${e.side.text}`;
  const upright = (m, name, row) => (m > 0 ? s("g", { class: "have" },
    s("path", { d: `M${x(m)} ${TALL - PAD.bottom}V${PAD.top}` }),
    s("text", { x: x(m) - 4, y: PAD.top + 10 + 14 * row, "text-anchor": "end" }, name)) : null);
  return s("svg", { viewBox: `0 0 ${WIDE} ${TALL}`, role: "img", "aria-label": words, class: "view curve" },
    s("path", { class: "axis", d: `M${PAD.left} ${PAD.top}V${TALL - PAD.bottom}H${WIDE - PAD.right}` }),
    ...ticks.map((at) => s("text", { class: "tick", x: x(at.depth), y: TALL - PAD.bottom + 16, "text-anchor": "middle" }, at.label)),
    s("text", { class: "tick", x: PAD.left - 5, y: y(Math.max(first.top, first.side)) + 4, "text-anchor": "end" }, first.top >= first.side ? first.topLabel : first.sideLabel),
    s("text", { class: "tick", x: PAD.left - 5, y: y(0) + 4, "text-anchor": "end" }, "0 %"),
    s("path", { class: "allowed", d: `M${PAD.left} ${y((1 - e.rate) / 2)}H${WIDE - PAD.right}` }),
    s("text", { class: "tick", x: x(deep * 0.6), y: y((1 - e.rate) / 2) - 4, "text-anchor": "middle" }, "may miss"),
    s("path", { class: "curve-side", d: line("side") }), s("path", { class: "curve-top", d: line("top") }),
    upright(e.side.have, "sides, as planned", 1), upright(e.top.have, "top, as planned", 0),
    s("text", { class: "place-name", x: (PAD.left + WIDE - PAD.right) / 2, y: TALL - 6, "text-anchor": "middle" }, "depth of return; solid: over the top, dashed: past the sides"));
}
