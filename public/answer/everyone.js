// Everyone with every club: each cell a button that puts the focus there.
import { $, active, h, icon, VERDICT_WORDS } from "../app/dom.js";

const sameFocus = (a, b) => a.player === b.player && a.club === b.club && a.tee === b.tee;

/** Shows the report's checks; a pressed cell is looked at. */
export function showEveryone(/** @type {State} */ { answer: { report, figures }, good: plan, focus, look }) {
  const cells = new Map(report.checks.map((c, i) => [key(c), { check: c, label: figures.checks[i] }]));
  const clubs = plan.clubs.map((c) => c.name).filter((name) => report.checks.some((c) => c.club === name));
  const tees = plan.tees.map((t) => t.name).filter((name) => report.checks.some((c) => c.tee === name));
  const lines = plan.players.flatMap((p) => tees.map((tee) => ({ player: p.name, tee })))
    .filter((line) => report.checks.some((c) => c.player === line.player && c.tee === line.tee));

  const head = h("tr", { role: "row" }, h("th", { role: "columnheader", scope: "col" }, "Player"),
    ...clubs.map((club) => h("th", { role: "columnheader", scope: "col" }, club)));
  const rows = lines.map(({ player, tee }) => h("tr", { role: "row" },
    h("th", { role: "rowheader", scope: "row" }, player, tees.length > 1 ? h("span", { class: "quiet" }, ` ${tee} tee`.replace(/tee tee$/, "tee")) : null),
    ...clubs.map((club) => h("td", { role: "cell" }, cell(cells.get(key({ player, club, tee })), focus, look)))));

  const had = $("#matrix").contains(active()) ? active().dataset.key : null;
  $("#matrix").replaceChildren(h("table", { class: "matrix", role: "table", "aria-label": "Everyone, with every club" },
    h("thead", { role: "rowgroup" }, head), h("tbody", { role: "rowgroup" }, ...rows)));
  if (had) $(`#matrix [data-key="${CSS.escape(had)}"]`)?.focus();
}

const key = ({ player, club, tee }) => JSON.stringify([player, club, tee]);

function cell(entry, focus, look) {
  if (!entry) return h("span", { class: "quiet" }, "–", h("span", { class: "visually-hidden" }, " not swung"));
  const { check, label } = entry;
  return h("button", {
    type: "button", class: "cell", "data-verdict": check.verdict, "data-key": key(check),
    "aria-pressed": String(sameFocus(check, focus)),
    onclick: () => look({ player: check.player, club: check.club, tee: check.tee }),
  }, icon(check.verdict),
  h("span", { class: "cell-word" }, VERDICT_WORDS[check.verdict], " "),
  h("span", { class: "cell-label" }, label));
}
