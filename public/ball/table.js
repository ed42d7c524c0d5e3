// Tables of the part about the ball, and their marks.
import { h, icon } from "../app/dom.js";

const heads = (...names) => h("thead", {}, h("tr", {}, ...names.map((name) => h("th", { scope: "col" }, name))));

const ROLES = { TABLE: "table", THEAD: "rowgroup", TBODY: "rowgroup", TR: "row", TD: "cell" };

/**
 * A table in a box of its own that scrolls sideways where it must. On a phone
 * its rows are stacked, which takes display:table away: so the roles are spelled
 * out, and each cell carries its column's name.
 */
export function table(caption, names, rows, className = "stack") {
  const el = h("table", { class: className }, h("caption", {}, caption), heads(...names), h("tbody", {}, ...rows));
  for (const part of [el, ...el.querySelectorAll("thead, tbody, tr, th, td")]) {
    part.setAttribute("role", ROLES[part.tagName] ?? (part.scope === "col" ? "columnheader" : "rowheader"));
    if (part.tagName === "TD") part.dataset.head = names[part.cellIndex];
  }
  return h("div", { class: "table-box", tabindex: "0", role: "region", "aria-label": caption }, el);
}

/** Yes or no with a shape and a word. */
export function mark(ok, good, bad) {
  return h("span", { class: "mark", "data-verdict": ok ? "clear" : "strikes" }, icon(ok ? "clear" : "strikes"), h("span", { class: "visually-hidden" }, ok ? good : bad), " ");
}
