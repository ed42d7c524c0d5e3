// Two plans side by side: both swings on one clock, their impacts at the same time, and
// what differs: in the plans, at every surface, for everyone.
import { h, icon, keptTogether, setText, VERDICT_WORDS } from "../app/dom.js";
import { createClock } from "../stage/clock.js";
import { createFlat, describe } from "../stage/flat.js";
import { readReel } from "../stage/reel.js";
import { createTimeline } from "../stage/timeline.js";
import { everyoneLines, planLines, surfaceLines } from "./differ.js";

const VIEWS = { face: "End", side: "Side", plan: "Plan" };

/**
 * Builds the comparison of two named plans into root. Both are asked of the solver; the
 * check of the first that is looked at is looked at in the second too, if it has it.
 * @param {Shared} shared
 */
export async function compare({ state, solver, cards }, root, first, second) {
  root.replaceChildren(h("p", { class: "lede", role: "status" }, "Swinging both\u2026"));
  const sides = [];
  let focus = state.focus;
  for (const { name, plan } of [first, second]) {
    const answer = await solver.ask({ kind: "solve", plan, focus });
    const film = answer.error ? answer : await solver.ask({ kind: "reel", plan: answer.plan, focus: answer.focus });
    if (film.error) {
      root.replaceChildren(h("p", { role: "status" }, `“${name}” cannot be swung: ${film.error.message}.`));
      return;
    }
    focus = answer.focus;
    sides.push({ name, plan: answer.plan, answer, reel: readReel(film) });
  }
  const [a, b] = sides;
  const label = async (metres) => (await solver.ask({ kind: "length", text: `${metres.toFixed(4)} m`, units: state.good.units })).label;
  const differs = await planLines(cards, a, b, label);
  const stages = theatre(sides);
  root.replaceChildren(
    stages.el,
    h("h3", {}, "What differs"),
    differs.length ? h("ul", { class: "detail" }, ...differs.map((line) => h("li", {}, ...keptTogether(line)))) : h("p", {}, "Nothing: it is the same plan twice."),
    table(`Clearance of ${[a.answer.focus.player, a.answer.focus.club, a.answer.focus.tee].join(", ")}`, "Surface", surfaceLines(a, b), a, b),
    table("Clearance of everyone", "Player, club, tee", everyoneLines(a, b), a, b));
  stages.start();
}

/** Both stages, their words and the one timeline, which is the first swing's. */
function theatre(sides) {
  const clock = createClock();
  const timeline = createTimeline(clock, changed, "compare");
  const [{ reel: lead }] = sides;
  const shows = sides.map((side) => {
    const flat = createFlat();
    const line = h("p", { class: "stage-line" });
    const { answer } = side;
    const check = answer.report.checks.find(({ player, club, tee }) => player === answer.focus.player && club === answer.focus.club && tee === answer.focus.tee);
    return { ...side, flat, line, check, el: h("section", { class: "compare-side", "aria-label": side.name },
      h("h3", {}, side.name), h("p", { class: "compare-verdict", "data-verdict": check.verdict }, icon(check.verdict), " ", ...keptTogether(answer.sentences.verdict)),
      h("div", { class: "compare-stage" }, flat.el), line) };
  });
  const views = Object.entries(VIEWS).map(([view, name]) => h("button", { type: "button", "aria-pressed": "false", onclick: () => pick(view) }, name));
  const el = h("div", { class: "compare" },
    h("div", { class: "stage-group", role: "group", "aria-label": "Drawing" }, ...views),
    h("div", { class: "compare-sides" }, ...shows.map((show) => show.el)), timeline.el);
  let last = 0;
  let frame = 0;

  function pick(view) {
    for (const { flat } of shows) flat.pick(view);
    Object.keys(VIEWS).forEach((one, i) => views[i].setAttribute("aria-pressed", String(one === view)));
    paint();
  }
  function paint() {
    for (const { flat, line, reel } of shows) {
      const t = clock.t + reel.impact - lead.impact;
      flat.draw(Math.max(0, Math.min(t, reel.duration)));
      setText(line, reel.said(Math.max(0, t)));
    }
    timeline.show();
  }
  function tick(now) {
    frame = 0;
    if (clock.advance((now - last) / 1000)) paint();
    last = now;
    wake();
  }
  function wake() {
    if (!frame && clock.playing && el.isConnected && !document.hidden) frame = requestAnimationFrame(tick);
  }
  function changed() {
    last = performance.now();
    paint();
    wake();
  }

  return {
    el,
    /** Shows the tightest moment of the first; plays unless less motion is asked for. */
    start() {
      const after = Math.max(...shows.map(({ reel }) => reel.duration - reel.impact));
      clock.load({ duration: lead.impact + after, phases: lead.phases });
      timeline.load({ ...lead, duration: lead.impact + after });
      for (const { flat, answer, check, reel } of shows) flat.show(describe(/** @type {any} */ ({ answer, focus: answer.focus, check })), reel);
      clock.seek(lead.tightest);
      if (!matchMedia("(prefers-reduced-motion: reduce)").matches) clock.play();
      pick(lead.face ? "face" : "side");
      changed();
    },
  };
}

function table(caption, of, lines, a, b) {
  const cell = (text, verdict) => h("td", { class: "num", "data-verdict": verdict || null },
    ...(text ? [icon(verdict), " ", text, h("span", { class: "visually-hidden" }, `, ${(VERDICT_WORDS[verdict] ?? "").toLowerCase()}`)] : ["–"]));
  return h("table", { class: "compare-table" },
    h("caption", {}, caption),
    h("thead", {}, h("tr", {}, ...[of, a.name, b.name].map((name, i) => h("th", { scope: "col", class: i ? "num" : null }, name)))),
    h("tbody", {}, ...[...lines].sort((x, y) => Number(y.changed) - Number(x.changed)).map((line) => h("tr", { class: line.changed ? "is-changed" : null },
      h("th", { scope: "row" }, line.of), cell(line.before, line.was), cell(line.after, line.is)))));
}
