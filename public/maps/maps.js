// The maps over the plan's floor, each on a sheet of its own: where to stand, what
// may hang, where to watch.
// They are fetched once the first verdict stands, and worked out by a solver of
// their own, so that no verdict waits for them.
//
// Hooks for tests, read-only, on #view-plan: data-shows is the mode; data-busy is
// "yes" until the map is that of the plan shown.
import { $, h, icon, setText, debounce } from "../app/dom.js";
import { createSolver } from "../app/solver.js";
import { createStand } from "./stand.js";
import { createHang } from "./hang.js";
import { createWatch } from "./watch.js";
import { createWhose } from "./whose.js";
import { createMarks } from "./marks.js";
import { createRemedies } from "./remedies.js";
import { offerRooms } from "./rooms.js";
import { mapUnder } from "./layer.js";

const SHEETS = { // name of the sheet → its map, and what it is called
  stand: ["stand", "Where to stand"],
  overhead: ["hang", "What may hang overhead"],
  others: ["watch", "Where others may watch"],
};
const PAUSE_MS = 250; // without an edit, before a map is asked for
const SPEAK_MS = 700; // of stillness before a moved thing is spoken of

/** The solver that is shared is that of the verdict, which knows the swings already. @param {Shared} shared */
export function createMaps({ state, solver, drawings, sheets, mover, idle }) {
  document.head.append(h("link", { rel: "stylesheet", href: "maps/maps.css" }));
  const figure = $("#view-plan");
  const summary = h("p", { class: "map-summary" });
  let second = null; // started by the first who asks: who only reads the verdict never needs it
  const planner = () => (second ??= createSolver({ onFatal: (message) => setText(summary, message) }));
  const ofPlan = (request) => ({ plan: state.good, ...request });
  const ask = (channel, request) => planner().latest(channel, ofPlan(request));

  let mode = "stand";
  let answers = {}; // by mode
  let fresh = {}; // mode → its answer is that of the plan shown
  let asked = 0;

  offerRooms(state, solver);
  createMarks(state, () => ask("marks", { kind: "maps", of: "marks" }));
  const change = createRemedies(state, (request) => planner().ask(ofPlan(request)), ask);
  const whose = createWhose(state, () => {
    fresh = {};
    load();
  });
  const speak = debounce((words) => setText($("#map-live"), words), SPEAK_MS);
  const ctx = {
    ask, speak, change, mover,
    whose: () => whose.focus,
    redraw: drawings.redraw,
    /** What the fields of a place need. */
    fieldsOf: (move, commit) => ({
      move, commit,
      units: () => state.good.units,
      read: (text) => solver.ask({ kind: "length", text, units: state.good.units }),
    }),
    /** A list of verdicts, each with the changes that would help. */
    verdicts: (items, changes = (_) => []) => items.map((item) => {
      const buttons = changes(item);
      return h("li", { "data-verdict": item.verdict }, icon(item.verdict), " ", item.text, buttons.length ? h("div", { class: "map-buttons" }, ...buttons) : "");
    }),
    /** Another tee is chosen: its reading comes with the map. */
    chosen() {
      fresh = {};
      load();
    },
  };
  const later = debounce(load, PAUSE_MS);
  const maps = { stand: createStand(state, ctx), hang: createHang(state, ctx), watch: createWatch(state, ctx) };

  const panels = Object.fromEntries(Object.entries(maps).map(([name, { key, parts }]) => [name, h("div", { hidden: true }, keyOf(key), ...parts)]));
  const head = h("div", { id: "map-head" }, summary, whose.el);
  $("#map-panel").replaceChildren(head, ...Object.values(panels));
  drawings.setFloor({
    under: (map) => mapUnder(mode, answers[mode], map),
    over: (map) => maps[mode].over(map, answers[mode]),
    words: () => answers[mode]?.summary ?? "",
  });

  const seen = () => sheets.shown in SHEETS;

  sheets.onShown((sheet) => {
    if (!seen()) return;
    const [next, title] = SHEETS[sheet];
    mode = next;
    figure.dataset.shows = mode;
    setText($("#floor-heading"), title);
    $("#marks").hidden = mode !== "stand";
    setText(summary, answers[mode]?.summary ?? "");
    for (const [name, panel] of Object.entries(panels)) panel.hidden = name !== mode;
    drawings.redraw();
    load();
  });

  /** Asks for the map of the mode, unless it is there. */
  async function load() {
    if (!seen()) return;
    if (fresh[mode]) {
      figure.dataset.busy = "no";
      return;
    }
    figure.dataset.busy = "yes";
    if (!idle()) {
      later();
      return;
    }
    const mine = ++asked;
    const of = mode;
    const { tee = "", ...place } = maps[of].request();
    const reply = await ask("map", { kind: "maps", of, focus: { ...whose.focus, tee }, ...place });
    if (!reply || mine !== asked) return;
    figure.dataset.busy = "no";
    if (reply.error) {
      setText(summary, `The map could not be drawn: ${reply.error.message}.`);
      return;
    }
    answers[of] = reply;
    fresh[of] = true;
    setText(summary, reply.summary);
    speak(reply.summary);
    maps[of].show(reply, whose.focus);
    drawings.redraw();
  }

  state.onAnswered(() => {
    fresh = {}; // what is shown here is of an older plan
    figure.dataset.busy = "yes";
    later();
  });
}

/** The key of a map: its hatches with their words. */
function keyOf(lines) {
  return h("ul", { class: "key map-key", "aria-label": "Key to the map" }, ...lines.map(([name, words]) => h("li", {}, h("span", { class: `swatch swatch-${name}`, "aria-hidden": "true" }), words)));
}
