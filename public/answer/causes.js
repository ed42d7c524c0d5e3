// What decides the tightest clearance from one swing to the next: each habit's
// share as a bar, towards the surface or away from it.
import { $, h, s } from "../app/dom.js";
import { named } from "../drawings/words.js";

/** Shows what one ordinary step of each habit takes, or gives. */
export function showCauses(/** @type {State} */ { answer, check }) {
  const open = $("#sensitivity details")?.open ?? false;
  const { causes } = answer.figures;
  const longest = Math.max(...causes.map((c) => Math.abs(c.cost)));
  $("#sensitivity").replaceChildren(...(causes.length === 0 ? [] : [h("details", { class: "causes", open },
    h("summary", {}, h("h3", {}, "What decides it from swing to swing")),
    h("p", { class: "hint" }, `One ordinary step of each habit, measured at ${named(check.nearest.surface)}.`),
    h("ul", {}, ...causes.map(({ trait, cost, label }) => h("li", {},
      h("span", { class: "cause-name" }, trait), bar(cost / longest),
      h("span", { class: "num" }, `${cost > 0 ? "takes" : "gives"} ${label}`)))))]));
}

/** share in [-1, 1]; what takes room points left, towards the surface. */
function bar(share) {
  const width = 48 * Math.abs(share);
  return s("svg", { class: `cause-bar ${share > 0 ? "takes" : "gives"}`, viewBox: "0 0 100 12", preserveAspectRatio: "none", "aria-hidden": "true", focusable: "false" },
    s("rect", { x: share > 0 ? 50 - width : 50, y: 2, width, height: 8 }), s("path", { d: "M50 0V12" }));
}
