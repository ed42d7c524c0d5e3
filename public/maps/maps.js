// The maps over the plan's floor: where to stand, what may hang, where to watch.
// They are fetched once the first verdict stands, and worked out by a solver of
// their own, so that no verdict waits for them.
//
// Hooks for tests, read-only, on #view-plan: data-shows is the mode; data-busy is
// "yes" until the map is that of the plan shown.
import { $, h, icon, setText, debounce } from "../app/dom.js";
import { createSolver } from "../app/solver.js";
import { createSpot } from "./spot.js";
import { createMarks } from "./marks.js";
import { createRemedies } from "./remedies.js";
import { offerRooms } from "./rooms.js";
import { mapUnder, handle, pin, floorTarget } from "./layer.js";
import { twoTees } from "../app/edits.js";

const PAUSE_MS = 250; // without an edit, before a map is asked for
const SPEAK_MS = 700; // of stillness before a moved thing is spoken of
const KEYS_MS = 600; // without a key before a tee that was moved by keys is let go

/**
 * createMaps({ask(request), lead(channel, request), state, idle(), edit(change),
 * solve(path), restructure(change), take(reply, said), drawings, parse(text),
 * units()}): lead asks the solver of the verdict, which knows the swings already.
 */
export function createMaps(ctx) {
  document.head.append(h("link", { rel: "stylesheet", href: "maps/maps.css" }));
  const { state, drawings } = ctx;
  const figure = $("#view-plan");
  let second = null; // started by the first who asks: who only reads the verdict never needs it
  const planner = () => (second ??= createSolver({ onFatal: (message) => setText(summary, message) }));
  const request = (kind, more) => ({ kind, plan: state.good, ...more });
  const marks = createMarks({ ask: () => planner().latest("marks", request("maps", { of: "marks" })) });
  const remedies = createRemedies({
    ask: (kind) => planner().ask(request(kind, { focus: state.focus })),
    apply: async (edits) => ctx.take(await planner().ask(request("apply", { edits })), "Done. Undo takes it back."),
  });

  offerRooms({ ask: () => ctx.lead("rooms", { kind: "rooms" }), plan: () => state.good, take: ctx.take });

  let mode = "swing";
  let answers = {}; // by mode
  let fresh = {}; // mode → its answer is that of the plan shown
  let asked = 0;
  let tee = ""; // the one that moves
  let reading = 0;
  let moving = null; // [x, y] of the tee on its way
  let spotAt = null; // [x, y] asked about
  let ends = null; // the handle drawn last

  const speak = debounce((words) => setText($("#map-live"), words), SPEAK_MS);
  const spotOf = (name, move, commit) => createSpot({ name, units: ctx.units, parse: ctx.parse, move, commit });
  const teeSpot = spotOf("Tee", moveTee, () => dropTee());
  const hangSpot = spotOf("Spot", askHang, () => {});

  const summary = h("p", { class: "map-summary" });
  const whose = h("select", { id: "map-player" });
  const which = h("select", { id: "map-club" });
  const chooser = h("div", { class: "map-whose" }, h("label", { for: "map-player" }, "For"), whose, h("label", { for: "map-club" }, "with"), which);
  const teeSelect = h("select", { id: "map-tee" });
  const teeRow = h("p", { class: "map-tee" }, h("label", { for: "map-tee" }, "Tee to move"), " ", teeSelect);
  const tight = h("p", { class: "map-reading" });
  const buttons = h("div", { class: "map-buttons" });
  const more = h("div", {});
  const told = h("p", { class: "map-reading" });
  const things = h("ul", { class: "map-things" });
  const seats = h("ul", { class: "map-things" });
  const parts = {
    swing: [],
    stand: [key([["strike", "touches something"], ["tight", "passes, but tight"], ["line", "margin and comfort"], ["barred", "no place for a tee"]]), teeRow, tight, teeSpot.el, buttons, more],
    hang: [key([["closed", "nothing may hang"], ["line", "nothing lower inside"]]), told, hangSpot.el, things],
    watch: [key([["region", "others may be here"]]), seats, h("button", { type: "button", onclick: addSeat }, "Add a seat")],
  };
  const panels = Object.fromEntries(Object.entries(parts).map(([name, list]) => [name, h("div", { hidden: true }, ...list)]));
  $("#map-panel").replaceChildren(h("div", { id: "map-head", hidden: true }, chooser, summary), ...Object.values(panels));

  const radios = [...document.querySelectorAll("input[name=map-mode]")];
  for (const radio of radios) {
    radio.addEventListener("change", () => show(radio.value));
  }
  for (const select of [whose, which]) {
    select.addEventListener("change", () => {
      fillClubs();
      fresh = {};
      load();
      if (spotAt) askHang(...spotAt);
    });
  }
  teeSelect.addEventListener("change", () => {
    tee = teeSelect.value;
    settle();
  });
  drawings.setFloor({ under, over, words: () => (mode === "swing" ? "" : answers[mode]?.summary ?? "") });

  /** The clubs that the chosen player swings. */
  function fillClubs() {
    const own = state.good.players.find(({ name }) => name === whose.value)?.clubs ?? [];
    options(which, [["", "every club"], ...state.good.clubs.filter(({ name }) => own.length === 0 || own.includes(name)).map(({ name }) => [name, name])]);
  }

  const focusOf = () => ({ player: whose.value, club: which.value, tee: "" });

  function show(next) {
    mode = next;
    figure.dataset.shows = mode;
    $("#map-head").hidden = mode === "swing";
    for (const [name, panel] of Object.entries(panels)) panel.hidden = name !== mode;
    drawings.redraw();
    load();
    if (mode === "hang" && !spotAt) {
      const { length, width } = state.good.room;
      askHang(length / 2, width / 2);
    }
  }

  const later = debounce(load, PAUSE_MS);

  /** Asks for the map of the mode, unless it is there. */
  async function load() {
    if (mode === "swing" || fresh[mode]) {
      figure.dataset.busy = "no";
      return;
    }
    figure.dataset.busy = "yes";
    if (!ctx.idle()) {
      later();
      return;
    }
    const mine = ++asked;
    const of = mode;
    const reply = await planner().latest("map", request("maps", { of, focus: focusOf() }));
    if (!reply || mine !== asked) return;
    figure.dataset.busy = "no";
    if (reply.error) {
      setText(summary, `The map could not be drawn: ${reply.error.message}.`);
      return;
    }
    answers[of] = reply;
    fresh[of] = true;
    render();
    drawings.redraw();
  }

  function render() {
    const answer = answers[mode];
    if (!answer) return;
    setText(summary, answer.summary);
    speak(answer.summary);
    if (mode === "stand") renderStand(answer);
    if (mode === "hang") fill(things, answer.things, (thing) => [thing.text, thing.remedies]);
    if (mode === "watch") fill(seats, answer.seats, (seat) => [seat.text, []]);
  }

  function renderStand({ best, players, hands, sharing, limits }) {
    const everybody = best && !whose.value;
    buttons.replaceChildren(
      everybody ? placeButton(best, "Put the tee here for everybody") : "",
      ...players.map((one) => placeButton(one, `Best for ${one.name}`)),
      hands.length > 1 ? h("button", { type: "button", onclick: () => ctx.restructure((plan) => twoTees(plan, hands)) }, "Lay two tees, one for each hand") : "");
    more.replaceChildren(
      sharing ? h("p", {}, sharing) : "",
      h("details", {}, h("summary", {}, "What else keeps a tee off the floor"), h("ul", { class: "detail" }, ...limits.map((line) => h("li", {}, line)))));
  }

  const placeButton = (place, words) => h("button", { type: "button", class: "place", onclick: () => putTee(place.x, place.y) },
    icon(place.verdict), " ", words, h("span", { class: "quiet" }, place.text.replace(/^[^:]*: /, "")));

  /** A list of verdicts, each with the changes that would help. */
  function fill(list, items, of) {
    list.replaceChildren(...items.map((item) => {
      const [words, changes] = of(item);
      return h("li", { "data-verdict": item.verdict }, icon(item.verdict), " ", words,
        changes.length ? h("div", { class: "map-buttons" }, ...changes.map((change) => remedies.button(change))) : "");
    }));
  }

  function under(map) {
    return mapUnder(mode, answers[mode], map);
  }

  function over(map) {
    ends = null;
    if (!state.good) return [];
    const out = [];
    if (mode === "hang") {
      out.push(floorTarget(map, askHang));
      if (spotAt) out.push(pin("spot", "", ...spotAt, map));
    }
    if (mode === "stand" || mode === "swing") {
      const best = mode === "stand" && answers.stand?.best;
      if (best) out.push(pin("best", "best", best.x, best.y, map));
      for (const one of state.good.tees) {
        const own = one.name === tee;
        const [x, y] = own && moving ? moving : [one.x, one.y];
        const el = handle("tee", one.name, x, y, map, { move: (nx, ny) => { choose(one.name); moveTee(nx, ny, false); }, drop: dropTee });
        if (own) ends = el;
        out.push(el);
      }
    }
    if (mode === "watch") {
      state.good.seats?.forEach((seat, i) => {
        let to = null;
        out.push(handle("seat", seat.name, seat.x, seat.y, map, { move: (x, y) => { to = [x, y]; }, drop: () => to && moveSeat(i, to) }));
      });
    }
    return out;
  }

  function choose(name) {
    tee = name;
    teeSelect.value = name;
  }

  const release = debounce(() => dropTee(), KEYS_MS);

  /** Follows a tee that is being moved: its verdict comes at once. */
  async function moveTee(x, y, byKeys = true) {
    const mine = ++reading;
    moving = [x, y];
    ends?.moveTo(x, y);
    if (byKeys) release(); // keys have no end as a finger has
    const reply = await ctx.lead("drag", request("drag", { focus: { player: "", club: "", tee }, x, y }));
    if (!reply || mine !== reading || reply.error) return;
    moving = [reply.x, reply.y];
    ends?.moveTo(reply.x, reply.y);
    tell(reply);
    speak(tight.textContent);
  }

  function tell(reply) {
    teeSpot.show(reply.x, reply.y, reply.labels);
    const verdict = reply.free ? reply.verdict : "strikes";
    tight.dataset.verdict = verdict;
    tight.replaceChildren(icon(verdict), ` ${reply.sentence}`);
  }

  async function dropTee() {
    release.cancel();
    if (!moving) return;
    const [x, y] = moving;
    moving = null;
    await putTee(x, y);
  }

  async function putTee(x, y) {
    const round = (v) => Math.round(v * 1000) / 1000;
    const i = state.draft.tees.findIndex((one) => one.name === tee);
    if (i < 0) return;
    ctx.edit((plan) => Object.assign(plan.tees[i], { x: round(x), y: round(y) }));
    await ctx.solve(`tees[${i}]`);
  }

  /** The reading of the tee where it is. */
  async function settle() {
    const one = state.good.tees.find((t) => t.name === tee);
    const mine = ++reading;
    const reply = await ctx.lead("drag", request("drag", { focus: { player: "", club: "", tee }, x: one.x, y: one.y }));
    if (reply && mine === reading && !reply.error) tell(reply);
  }

  async function askHang(x, y) {
    spotAt = [x, y];
    if (mode === "hang") drawings.redraw();
    const reply = await planner().latest("spot", request("hangAt", { x, y, focus: focusOf() }));
    if (!reply || reply.error || spotAt[0] !== x || spotAt[1] !== y) return;
    spotAt = [reply.x, reply.y];
    hangSpot.show(reply.x, reply.y, reply.labels);
    setText(told, reply.text);
    speak(reply.text);
  }

  function moveSeat(i, [x, y]) {
    const round = (v) => Math.round(v * 1000) / 1000;
    ctx.edit((plan) => Object.assign(plan.seats[i], { x: round(x), y: round(y) }));
    ctx.solve(`seats[${i}]`);
  }

  function addSeat() {
    const taken = new Set((state.good.seats ?? []).map((seat) => seat.name));
    let n = taken.size + 1;
    while (taken.has(`seat ${n}`)) n++;
    ctx.restructure((plan) => { plan.seats = [...(plan.seats ?? []), { name: `seat ${n}`, x: 0.6, y: 0.6 }]; });
  }

  return {
    /** A new answer is on the page: what is shown here is of an older plan. */
    update() {
      const { tees, players } = state.good;
      options(whose, [["", "everybody"], ...players.map(({ name }) => [name, name])]);
      fillClubs();
      options(teeSelect, tees.map(({ name }) => [name, name]));
      tee = tees.some((one) => one.name === tee) ? tee : tees.some((one) => one.name === state.focus.tee) ? state.focus.tee : tees[0].name;
      teeSelect.value = tee;
      teeRow.hidden = tees.length < 2;
      fresh = {};
      if (mode !== "swing") figure.dataset.busy = "yes";
      later();
      settle();
      if (spotAt) askHang(...spotAt);
      marks.update();
      remedies.update();
    },
  };
}

function options(select, list) {
  const now = select.value;
  select.replaceChildren(...list.map(([value, words]) => h("option", { value }, words)));
  select.value = list.some(([value]) => value === now) ? now : list[0][0];
}

/** The key of a map: its hatches with their words. */
function key(lines) {
  return h("ul", { class: "key map-key", "aria-label": "Key to the map" }, ...lines.map(([name, words]) => h("li", {}, h("span", { class: `swatch swatch-${name}`, "aria-hidden": "true" }), words)));
}
