// The answer: the worst of everyone, the check that is looked at in one sentence, its
// share of sampled swings, and the clearance of every surface as a length of tape. The verdicts are the solver's.
import { $, h, s, icon, keptTogether, setText, VERDICT_WORDS } from "../app/dom.js";

const REACH = 1.0; // m: the longest tape drawn; farther surfaces are drawn torn off
const BELOW = 0.25; // m past the surface that still shows

/** Shows the worst of everyone and below it the check that is looked at. */
export function showVerdict(/** @type {State} */ { check, answer, good }) {
  const { sentences, report } = answer;
  sign(report.verdict);
  $("#verdict-wait").hidden = true;
  $("#verdict-moving").hidden = true;
  $("#verdict").hidden = false;
  const { headline, worst, verdict, bar } = sentences;
  const status = $("#verdict");
  const said = [headline, worst, verdict].join(" ");
  if (status.dataset.said !== said) { // a live region speaks once
    status.dataset.said = said;
    status.replaceChildren(
      h("p", { class: "verdict-headline" }, h("strong", { class: "verdict-word" }, headline), " ", h("span", { class: "verdict-worst" }, worst)),
      h("p", { class: "verdict-sentence", "data-verdict": check.verdict }, report.checks.length > 1 ? icon(check.verdict) : null, " ", ...keptTogether(verdict)));
  }
  setText($("#verdict-again"), verdict);
  $("#verdict-detail").replaceChildren(...(sentences.detail ?? []).map((line) => h("li", {}, line)));
  setText($("#verdict-model"), sentences.model ?? "");
  setText($("#verdict-share"), sentences.share ?? "");
  setText($("#peek"), bar);
  $("#peek").dataset.verdict = report.verdict;
  document.title = `${VERDICT_WORDS[report.verdict]}: ${good.title || "Wide Berth"}`;
}

/** The large sign beside the words. */
export function sign(verdict) {
  const box = $("#verdict-box");
  box.dataset.verdict = verdict;
  $("use", box).setAttribute("href", `#icon-${verdict}`);
}

/** What a tee on its way would mean, in the place of the verdict. @param {Mover} mover */
export function showMoving(mover) {
  const moving = $("#verdict-moving");
  mover.onMoved((reply) => {
    if (!reply) return;
    sign(reply.verdict);
    setText(moving, reply.sentence);
    moving.hidden = false;
    $("#verdict").hidden = true;
  });
}

/** The table of surfaces, nearest first. */
export function showSurfaces(/** @type {State} */ { answer, good }) {
  const rows = answer.figures.surfaces.map(({ name, clearance, verdict, label, typical }) => h("tr", { "data-verdict": verdict },
    h("th", { scope: "row" }, icon(verdict), " ", name, h("span", { class: "visually-hidden" }, `, ${VERDICT_WORDS[verdict].toLowerCase()}`)),
    h("td", { class: "bar" }, tapeBar(clearance, good.margin, verdict)),
    h("td", { class: "num" }, label),
    h("td", { class: "num quiet" }, typical ?? "–")));
  $("#surfaces").replaceChildren(h("table", {},
    h("caption", {}, "Clearance to each surface"),
    h("thead", {}, h("tr", {},
      h("th", { scope: "col" }, "Surface"),
      h("th", { scope: "col", class: "bar" }, h("span", { class: "visually-hidden" }, "Drawn as tape")),
      h("th", { scope: "col", class: "num" }, "Loosest swing"), h("th", { scope: "col", class: "num" }, "Typical"))),
    h("tbody", {}, ...rows)));
}

/** One clearance as pulled-out tape; the tick marks the clearance asked for. */
function tapeBar(d, margin, verdict) {
  const x = (m) => 100 * (m + BELOW) / (REACH + BELOW);
  const end = Math.max(-BELOW, Math.min(d, REACH));
  const [from, to] = d < 0 ? [x(end), x(0)] : [x(0), x(end)];
  const ticks = [];
  for (let m = 0.1; m < Math.min(d, REACH); m += 0.1) ticks.push(`M${x(m)} 11V${Math.round(m * 10) % 5 === 0 ? 4 : 7}`);
  return s("svg", { class: `tape-bar is-${verdict}`, viewBox: "0 0 100 16", preserveAspectRatio: "none", "aria-hidden": "true", focusable: "false" },
    s("rect", { class: "pulled", x: from, y: 3, width: Math.max(to - from, 0.6), height: 9 }),
    s("path", { class: "ticks", d: ticks.join("") }),
    d > REACH ? s("path", { class: "torn", d: "M98 1L96 5L99 8L96 11L98 15H101V1Z" }) : null,
    s("path", { class: "surface-line", d: `M${x(0)} 0V16` }),
    s("path", { class: "margin-line", d: `M${x(margin)} 0V16` }));
}
