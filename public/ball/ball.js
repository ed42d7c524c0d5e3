// The section about the ball. It asks once the verdict stands and nothing is
// being typed, so that it never keeps a verdict waiting.
//
// Hook for tests, read-only: data-busy of #ball is "yes" until the answer shown
// is that of the plan shown.
import { $, h, icon, keptTogether, setText, debounce, styles } from "../app/dom.js";
import { drawFace } from "./face.js";
import { launch, mishitNeeds, renderEnclosure } from "./enclosure.js";
import { createBallLines } from "./lines.js";
import { mark, table } from "./table.js";

const PAUSE_MS = 300; // without an edit, before the ball is asked for

/** @param {Shared} shared */
export function createBall({ state, solver, drawings, sheets, idle }) {
  styles("ball/ball.css").catch(() => {}); // plainer without
  const section = $("#ball");
  const lines = createBallLines(drawings.lay);
  let asked = 0;
  let last = null;

  const run = debounce(async () => {
    if (!idle()) {
      run();
      return;
    }
    const mine = ++asked;
    const { good, focus } = state;
    const reply = await solver.latest("ball", { kind: "ball", plan: good, focus, catch: Number($("input[name=ball-catch]:checked", section).value) });
    if (!reply || mine !== asked) return;
    section.dataset.busy = "no";
    $("#ball-wait").hidden = true;
    if (reply.error) $("#ball-summary").replaceChildren();
    $("#ball-answer").hidden = Boolean(reply.error);
    setText($("#ball-failed"), reply.error ? `The ball could not be worked out: ${reply.error.message}.` : "");
    if (reply.error) return;
    last = reply;
    render(reply);
    lines.take(reply.flat, reply.focus.club);
  }, PAUSE_MS);

  const due = sheets.inSight(["ball"], run);
  function update() {
    section.dataset.busy = "yes";
    asked++;
    due();
  }
  $("#ball-catch").addEventListener("change", update);
  new ResizeObserver(() => last && drawFace($("#ball-face"), last)).observe($("#ball-face"));
  state.onAnswered(update);
}

function render(/** @type {Wire.BallAnswer} */ answer) {
  const { said, folds, enclosure, focus } = answer;
  $("#ball-summary").replaceChildren(...[said.caught, said.returns, said.back].map(({ verdict, text }) =>
    h("p", { "data-verdict": verdict }, icon(verdict), h("span", {}, ...keptTogether(text)))));
  $("#ball-catch").hidden = !enclosure;
  fold("first", folds.first, null);
  setText($("#ball-focus"), answer.summary);
  $("#ball-told").replaceChildren(...answer.sentences.map((line) => h("li", {}, line)));
  $("#ball-first").replaceChildren(firstTable(answer.table));
  fold("screen", folds.screen, null);
  drawFace($("#ball-face"), answer);
  fold("returns", enclosure?.title, renderEnclosure(enclosure));
  fold("launch", enclosure?.launchTitle, enclosure ? launch(enclosure.launch) : []);
  fold("mishits", folds.mishits, [...(enclosure ? [mishitNeeds(enclosure.mishits)] : []), mishits(answer.mishits, focus)]);
  fold("back", folds.back, rebounds(answer.rebound, focus));
  fold("pads", folds.pads, [h("ul", { class: "detail" }, ...(answer.pads.length ? answer.pads : ["No bare hard surface was met."]).map((line) => h("li", {}, line)))]);
  fold("assumed", folds.assumed, [assumed(answer.assumed)]);
}

/** Fills a part that folds, under its figure; what has none to tell is not there. */
function fold(name, title, parts) {
  const el = $(`#fold-${name}`);
  el.hidden = !title;
  setText($("summary", el), title ?? "");
  if (parts) el.lastElementChild.replaceChildren(...parts);
}

/** Players down, clubs across, as in the table of clearances. */
function firstTable(/** @type {Wire.BallRow[]} */ lines) {
  const clubs = [...new Set(lines.map((line) => line.club))];
  const tees = new Set(lines.map((line) => line.tee)).size > 1;
  const rows = new Map();
  for (const line of lines) {
    const key = JSON.stringify([line.player, line.tee]);
    if (!rows.has(key)) rows.set(key, { head: [h("strong", {}, line.player), tees ? `, ${line.tee}` : ""], cells: {} });
    rows.get(key).cells[line.club] = line;
  }
  return table("What is met first, by everyone", ["Player", ...clubs], [...rows.values()].map(({ head, cells }) => h("tr", {},
    h("th", { scope: "row" }, ...head), ...clubs.map((club) => h("td", {}, ...firstCell(cells[club]))))), "first-table stack");
}

function firstCell(/** @type {Wire.BallRow} */ line) {
  if (!line) return ["–"];
  return [
    h("div", { class: "first-met" }, mark(line.good, "good:", "not the screen:"), line.first),
    h("div", { class: "quiet" }, `caught: ${line.caught}${line.else ? `; ${line.else.replace(/^./, (c) => c.toLowerCase())}` : ""}`),
    h("div", { class: "quiet fig" }, line.leaves),
  ];
}

function mishits(/** @type {Wire.BallMishit[]} */ lines, { player, club }) {
  return table(`${player} with the ${club}`, ["Mishit", "Where it goes", "Coming back"],
    lines.map((line) => h("tr", {}, h("th", { scope: "row" }, line.name), h("td", {}, line.goes), h("td", {}, line.back || "–"))), "mishits stack");
}

function rebounds(/** @type {Wire.BallRebound[]} */ lines, { player, club }) {
  if (lines.length === 0) return [];
  return [table(`The well-struck ball of ${player} with the ${club}, off whatever hangs there`, ["Off", "Least", "Likely", "Most"],
    lines.map((line) => h("tr", { class: line.met ? "is-met" : null },
      h("th", { scope: "row" }, line.off, line.met ? h("span", { class: "quiet" }, " (what it meets here)") : null),
      h("td", {}, line.low), h("td", {}, line.likely), h("td", {}, line.high))))];
}

function assumed(/** @type {Wire.Assumption[]} */ lines) {
  return h("ul", { class: "assumed" }, ...lines.map(({ text, status }) => h("li", {}, text, " ", h("span", { class: "status" }, status))));
}
