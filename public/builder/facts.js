// Figures in words. Each opens to the rule that it comes from and to where that is known
// from.
import { h, icon, keptTogether } from "../app/dom.js";

/** @param {{term: string, text: string, rule?: string, mark?: string}} figure @param {Map<string, any>} rules */
export function fact({ term, text, rule, mark }, rules) {
  const line = [h("span", { class: "fact-term" }, term), h("span", { class: "fact-text" }, mark ? icon(mark) : null, mark ? h("span", { class: "visually-hidden" }, WORDS[mark]) : null, ...keptTogether(text))];
  const from = rules.get(rule);
  if (!from) return h("div", { class: "fact", "data-verdict": mark }, h("div", { class: "fact-line" }, ...line));
  return h("details", { class: "fact", "data-verdict": mark },
    h("summary", { class: "fact-line" }, ...line),
    h("p", { class: "fact-rule" }, from.says, " ", h("span", { class: "status" }, `${from.source}: ${from.status}`)));
}

const WORDS = { clear: "Good: ", tight: "Mind: ", strikes: "Not good: " };

export const rulesOf = (reply) => new Map(reply.rules.map((rule) => [rule.id, rule]));

/** What is first said of a sheet. */
export const facts = (figures, rules) => figures.map((figure) => fact(figure, rules));

/** A part that folds away under its name. */
export const fold = (title, ...children) => h("details", { class: "build-part" }, h("summary", {}, h("h3", {}, title)), ...children);

/** Lines of care, each with its source. */
export function cautions(list) {
  return h("ul", { class: "build-cautions" }, ...list.map(({ line, source }) => h("li", {}, line, " ", h("span", { class: "status" }, source))));
}

/** Keeps which folds of a part are open while it is drawn anew. */
export function refill(el, ...children) {
  const open = new Set([...el.querySelectorAll("details[open]")].map(nameOf));
  const held = document.activeElement instanceof HTMLElement && el.contains(document.activeElement) ? nameOf(document.activeElement.closest("summary")?.parentElement) : "";
  el.replaceChildren(...children);
  for (const fold of el.querySelectorAll("details")) {
    if (open.has(nameOf(fold))) fold.open = true;
    if (held && nameOf(fold) === held) fold.querySelector("summary").focus();
  }
}

const nameOf = (fold) => fold?.querySelector(".fact-term, h3")?.textContent ?? "";
