// The model beside every measured figure of the golf swing. The table is made
// when the page is built (internal/modeltable); here it is fetched and laid out.
//
// Hook for tests, read-only: aria-busy of #measured-table is "true" until the
// figures are there.
import { $, h, s, setText, styles } from "../app/dom.js";
import { pictures } from "./pictures.js";

const box = $("#measured-table");
const wait = $("#measured-wait");
let table = null; // once it is there
let shown = ""; // the units it is laid out in
let wanted = ""; // the units asked for last
let fetching = false;

styles("model/model.css").catch(() => {}); // plainer without

/** Shows the table in "metric" or "imperial" units, fetching it the first time. */
export async function renderMeasured(units) {
  wanted = units;
  if (!table) {
    if (fetching) return;
    fetching = true;
    box.setAttribute("aria-busy", "true");
    setText(wait, "Fetching the figures…");
    try {
      table = await fetchTable();
    } catch {
      setText(wait, "The figures could not be fetched. Close this and open it again to try once more.");
      return;
    } finally {
      fetching = false;
      box.removeAttribute("aria-busy");
    }
  }
  setText(wait, table.summary);
  if (shown === wanted) return;
  shown = wanted;
  const open = new Set([...box.querySelectorAll("details[open]")].map((group) => group.dataset.name));
  // No line ends between a number and its unit.
  const say = (text) => (shown === "imperial" ? text[text.length - 1] : text[0]).replace(/(\d) /g, "$1\u00a0");
  box.replaceChildren(reading(table, say), pictures(table.pictures, shown, say), ...table.groups.map((group) => groupOf(group, table, say, open.has(group.name))), sources(table));
}

async function fetchTable() {
  const reply = await fetch(new URL("../build/sure.json", import.meta.url));
  if (!reply.ok) throw new Error(`build/sure.json: ${reply.status}`);
  return reply.json();
}

/** How to read the table: the golfer, the strip, the status words. */
function reading(table, say) {
  const strip = { measured: [34, 58], central: 66, family: [46, 88] };
  return h("div", { class: "sure-reading" },
    h("p", {}, `Compared is a golfer of ${say(table.golfer)}, between the heights of those who were measured, or another where a row says so, swinging in no special style. A figure with one value is an average; one with two is a range of averages.`),
    h("p", {}, table.spread),
    h("p", {}, say(table.near)),
    h("p", { class: "sure-key" }, drawn(strip), h("span", {}, "Yellow: measured. Grey: the family of swings. Upright line: its central swing.")),
    h("dl", {}, ...table.statuses.flatMap(({ word, meaning }) => [h("dt", {}, upperFirst(word)), h("dd", {}, meaning)])));
}

const upperFirst = (text) => text.replace(/^\p{Ll}/u, (c) => c.toUpperCase());

function groupOf({ name, about, tally, rows }, { swings }, say, open) {
  const names = ["Measured", "Central swing", `Family of ${swings}`, "", "Agreement"];
  return h("details", { class: "sure-group", "data-name": name, open },
    h("summary", {}, h("h4", {}, name), h("span", { class: "quiet" }, tally)),
    h("p", { class: "hint" }, about),
    h("table", { class: "sure-table", role: "table", "aria-label": name },
      h("thead", { role: "rowgroup" }, h("tr", { role: "row" },
        ...["What", ...names].map((text) => h("th", { role: "columnheader", scope: "col" }, text || h("span", { class: "visually-hidden" }, "Drawn"))))),
      h("tbody", { role: "rowgroup" }, ...rows.map((row) => rowOf(row, names, say)))));
}

// The roles are spelled out because the phone layout takes display:table away.
function rowOf(row, names, say) {
  const cell = (i, className, ...children) => h("td", { role: "cell", class: className, "data-head": names[i] || null }, ...children);
  return h("tr", { role: "row", "data-mark": row.mark },
    h("th", { role: "rowheader", scope: "row" }, row.quantity, " ", h("span", { class: "quiet" }, row.club, row.golfer ? `, golfer of ${say(row.golfer)}` : null)),
    cell(0, "sure-measured", h("b", {}, say(row.measured)), " ", h("span", { class: "sure-cite" }, cite(row), row.status === row.cite ? null : `, ${row.status}`)),
    cell(1, "", h("span", {}, say(row.central), row.off ? h("span", { class: "quiet" }, `, ${say(row.off)}`) : null)),
    cell(2, "", row.family ? say(row.family) : "does not vary"),
    cell(3, "sure-strip", drawn(row.drawn)),
    cell(4, "sure-says", h("b", {}, say(row.says)), row.then ? h("span", { class: "sure-then" }, upperFirst(row.then)) : null, row.note ? h("span", { class: "sure-note" }, upperFirst(row.note)) : null));
}

/** The short citation: a link to the full one, which leaves the plan's address alone. */
function cite({ cite: text, source }) {
  return h("a", {
    href: `#source-${source + 1}`,
    onclick(e) {
      e.preventDefault();
      $(`#source-${source + 1}`).focus();
    },
  }, text);
}

/**
 * The strip: the measured range, the family and its central swing on one scale.
 * @param {{measured: number[], central: number, family: number[]}} at
 */
function drawn({ measured: [low, high], central, family: [least, most] }) {
  const LEAST = 2.4; // a single value still shows
  const span = (className, a, b, y, height) => s("rect", { class: className, x: Math.min(a, (a + b - LEAST) / 2), y, width: Math.max(b - a, LEAST), height });
  return s("svg", { class: "strip", viewBox: "0 0 100 20", preserveAspectRatio: "none", "aria-hidden": "true", focusable: "false" },
    s("path", { class: "strip-line", d: "M0 10H100" }),
    span("strip-measured", low, high, 2, 16), span("strip-family", least, most, 7, 6),
    s("path", { class: "strip-halo", d: `M${central} 2V18` }),
    s("path", { class: "strip-central", d: `M${central} 3V17` }));
}

function sources({ sources: list }) {
  return h("div", { class: "sure-sources" }, h("h4", { id: "sources-heading" }, "Sources"),
    h("ol", { "aria-labelledby": "sources-heading" }, ...list.map((text, i) => h("li", { id: `source-${i + 1}`, tabindex: "-1" }, upperFirst(text)))));
}
