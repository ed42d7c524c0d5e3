// The maps over the plan's floor, each on a sheet of its own: where to stand, what
// may hang, where to watch.
// They are fetched once the first verdict stands, and worked out while the solver
// has nothing else to do, so that no verdict waits for them.
//
// Hooks for tests, read-only, on #view-plan: data-shows is the mode; data-busy is
// "yes" until the map is that of the plan shown.
import { $, $$, h, s, icon, setText, debounce, styles } from "../app/dom.js";
import { createStand } from "./stand.js";
import { createHang } from "./hang.js";
import { createWatch } from "./watch.js";
import { createWhose } from "./whose.js";
import { createTee } from "./tee.js";
import { createGolfer } from "./golfer.js";
import { createMarks } from "./marks.js";
import { createRemedies } from "./remedies.js";
import { offerRooms } from "./rooms.js";
import { mapUnder } from "./layer.js";

const SHEETS = { // name of the sheet → its map, what it is called, and what it shows
  stand: ["stand", "Where to stand", "where the ball may lie"],
  overhead: ["hang", "What may hang overhead", "how low a thing may hang"],
  others: ["watch", "Where others may watch", "where others may be"],
};
const PAUSE_MS = 250; // without an edit, before a map is asked for
const SPEAK_MS = 700; // of stillness before a moved thing is spoken of

/** @param {Shared} shared */
export function createMaps(shared) {
  const { state, solver, drawings, sheets, mover, idle } = shared;
  styles("maps/maps.css").catch(() => {}); // plainer without
  const figure = $("#view-plan");
  const summary = h("p", { class: "map-summary" });
  const ofPlan = ({ kind, ...request }) => ({ kind, plan: state.good, ...request });
  const ask = (channel, request) => solver.latest(channel, ofPlan(request));

  shared.mapOf = (which) => ask(`of all: ${which}`, { kind: "maps", of: which, focus: {} }); // everybody's

  let mode = "stand";
  let answers = {}; // by mode
  let fresh = {}; // mode → its answer is that of the plan shown
  let asked = 0;
  let shows = ""; // in words, for whom: the caption

  offerRooms(state, solver);
  createMarks(state, sheets, () => ask("marks", { kind: "maps", of: "marks" }));
  const change = createRemedies(state, sheets, (request) => solver.ask(ofPlan(request)), ask);
  const whose = createWhose(state, () => {
    fresh = {};
    caption();
    load();
  });
  const speak = debounce((words) => setText($("#map-live"), words), SPEAK_MS);
  const ctx = {
    ask, speak, change, mover, tee: null,
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
  const tee = ctx.tee = createTee(state, ctx);
  const golfer = createGolfer(state, mover);
  const maps = { stand: createStand(state, ctx), hang: createHang(state, ctx), watch: createWatch(state, ctx) };

  const panels = Object.fromEntries(Object.entries(maps).map(([name, { parts }]) => [name, h("div", { hidden: true }, ...parts)]));
  const keys = Object.fromEntries(Object.entries(maps).map(([name, { key }]) => [name, keyOf(key)]));
  const head = h("div", { id: "map-head" }, summary, tee.reading, whose.el);
  $("#map-panel").replaceChildren(head, ...Object.values(panels));
  figure.append(...Object.values(keys));
  drawings.setFloor({
    under(map) {
      golfer.begin();
      // Of one tee alone the whole map moves with it; of several, nobody knows which part.
      const [at, ...others] = answers[mode]?.tees ?? [];
      return mapUnder(mode, answers[mode], map, (...children) => (others.length ? s("g", {}, ...children) : golfer.follow(at.name, at, map, children)));
    },
    over: (map) => [...golfer.over(map), ...maps[mode].over(map, answers[mode]), ...tee.handles(map)],
    about: ({ length, width }) => `Plan from above, ${length} by ${width}: ${shows}.`,
    words: () => answers[mode]?.summary ?? "",
  });

  /** Says what is drawn and for whom. */
  function caption() {
    const { player, club } = whose.focus;
    const [, , what] = Object.values(SHEETS).find(([name]) => name === mode);
    shows = `${what}, for ${player || "everybody"} with ${club || "every club"}`;
    setText($("figcaption", figure), `Plan, from above: ${shows}`);
  }

  const seen = () => sheets.shown in SHEETS;

  sheets.onShown((sheet) => {
    if (!seen()) return;
    const [next, title] = SHEETS[sheet];
    mode = next;
    figure.dataset.shows = mode;
    setText($("#floor-heading"), title);
    $("#marks").hidden = mode !== "stand";
    setText(summary, answers[mode]?.summary ?? "");
    caption();
    tee.reading.hidden = mode !== "stand"; // elsewhere only while the tee moves
    for (const name of Object.keys(maps)) panels[name].hidden = keys[name].hidden = name !== mode;
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
    const { tees } = state.good;
    const { tee: at = "", ...place } = maps[of].request();
    const reply = await ask("map", { kind: "maps", of, focus: { ...whose.focus, tee: at }, ...place });
    if (!reply || mine !== asked) return;
    figure.dataset.busy = "no";
    if (reply.error) {
      setText(summary, `The map could not be drawn: ${reply.error.message}.`);
      return;
    }
    answers[of] = { ...reply, tees };
    fresh[of] = true;
    setText(summary, reply.summary);
    speak(reply.summary);
    maps[of].show(reply, whose.focus);
    tee.reading.hidden = mode !== "stand";
    drawings.redraw();
  }

  mover.onMoved(() => { figure.dataset.moving = "yes"; });

  state.onAnswered(({ focus }) => {
    fresh = {}; // what is shown here is of an older plan
    figure.dataset.busy = "yes";
    figure.dataset.moving = "no";
    caption();
    for (const told of $$(".key-golfer", figure)) setText(told, `${focus.player}, ${focus.club}: tightest moment, and all it sweeps`);
    later();
  }, () => {
    figure.dataset.moving = "no";
    drawings.redraw(); // the tee is back
  });
}

/** The key of a map: its hatches with their words, and the golfer. */
function keyOf(lines) {
  const line = (name, ...words) => h("li", {}, h("span", { class: `swatch swatch-${name}`, "aria-hidden": "true" }), ...words);
  return h("ul", { class: "key map-key", hidden: true, "aria-label": "Key to the map" },
    ...lines.map(([name, words]) => line(name, words)), line("golfer", h("span", { class: "key-golfer" })));
}
