// The sheet Build: the floor drawn from above with its seams and cups, stacks that meet
// the mat, and what there is to buy.
import { $, download, h, icon, s, setText, VERDICT_WORDS } from "../app/dom.js";
import { table } from "../ball/table.js";
import { createSpot } from "../maps/spot.js";
import { cautions, fact, facts, fold, refill, rulesOf } from "./facts.js";
import { fieldset, foldedFields } from "./fields.js";
import { box, label, line, paper, path } from "./draw.js";

const SNAP = { imperial: 0.0254, metric: 0.01 }; // m
const TALLEST = 560; // px of the floor on paper

export function createFloor({ state, read, set, change }, fields) {
  let reply = null;
  let cups = []; // {el, spot} of each cup
  const plan = paper("floor", "The floor from above: panels, turf, cups", TALLEST);
  const lead = h("div", { class: "facts build-lead", role: "status" });
  const cupList = h("div", { class: "build-cups" });
  const add = h("button", { type: "button", onclick: addCup }, "Add a cup");
  const floorFields = h("div");
  const stacks = h("div", { class: "build-part" });
  const groups = h("div", { class: "build-groups" });
  const bill = h("div", { class: "build-part" });
  const care = fold("Ask before you build");
  const el = h("div", { class: "build-board", hidden: true }, lead,
    h("div", { class: "build-paper" }, plan.el, h("div", { class: "build-cup-box" }, cupList, add)),
    h("div", { class: "build-side" }, stacks, floorFields),
    groups, bill, care);
  $("#build-root").replaceChildren(el);

  const places = () => (state.good.build?.cups ?? []).map(({ x, y }) => [x, y]);
  const putCups = (list) => state.edit((next) => {
    next.build ??= {};
    if (list.length) next.build.cups = list.map(([x, y]) => ({ x: Math.round(x * 1e4) / 1e4, y: Math.round(y * 1e4) / 1e4 }));
    else delete next.build.cups;
    if (Object.keys(next.build).length === 0) delete next.build;
  }, "build.cups");

  function addCup() {
    const { length, width } = state.good.room;
    putCups([...places(), [length / 4, width / 4]]);
  }

  const held = (at) => [[at[0], 0], [at[1], 1]].map(([v, axis]) => Math.min(Math.max(v, 0), reply.drawing.size[axis]));

  function redraw() {
    if (!reply) return;
    const d = reply.drawing;
    plan.draw("plan", d.size, d.text, (map) => [
      ...d.pieces.map((p) => line(`build-piece${p.whole ? "" : " is-cut"}`, box(map, p.x0, p.y0, p.x1, p.y1), p.whole ? `sheet ${p.sheet}, whole` : `cut from sheet ${p.sheet}`)),
      ...d.pieces.map((p) => (Math.min(p.x1 - p.x0, p.y1 - p.y0) * map.scale > 16 ? label(map, (p.x0 + p.x1) / 2, (p.y0 + p.y1) / 2, String(p.sheet)) : null)),
      ...d.mats.map((m) => line("ln-mat build-mat", box(map, m.x0, m.y0, m.x1, m.y1), "mat")),
      ...d.turf.map((t) => line("build-turf", path(map, [[t.x0, t.y0], [t.x1, t.y1]], false), "seam of the turf")),
      d.screen[0] ? line("ln-screen", path(map, [[d.screen[0], d.screen[1]], [d.screen[0], d.screen[2]]], false), "screen") : null,
      ...d.putts.filter((p) => p.clear > 0).map((p) => line("build-putt", path(map, [p.from, p.at], false), `longest putt to cup ${p.cup}`)),
      ...d.putts.map((p, i) => cupAt(map, p, i)),
    ]);
  }

  /** A cup as it lies on the paper; it is dragged by whole inches or centimetres. */
  function cupAt(map, { cup, at }, i) {
    const g = s("g", { class: "build-cup", "data-cup": cup }, s("circle", { class: "handle-touch", r: 22 }), s("circle", { class: "build-hole", r: Math.max(reply.drawing.cup * map.scale, 6) }),
      s("text", { class: "build-label", y: -12, "text-anchor": "middle" }, `cup ${cup}`), s("title", {}, `Drag: cup ${cup}`));
    let now = [...at];
    const show = () => g.setAttribute("transform", `translate(${map.px(now[0]).toFixed(1)} ${map.py(now[1]).toFixed(1)})`);
    show();
    let pointer = null;
    g.addEventListener("touchstart", (e) => e.preventDefault(), { passive: false }); // elsewhere a finger scrolls
    g.addEventListener("pointerdown", (e) => {
      if (e.button !== 0) return;
      e.preventDefault();
      g.setPointerCapture(e.pointerId);
      const shown = g.ownerSVGElement.getBoundingClientRect().width / map.width; // px of the window for one of the paper
      pointer = { id: e.pointerId, x: e.clientX, y: e.clientY, scale: map.scale * shown };
    });
    g.addEventListener("pointermove", (e) => {
      if (e.pointerId !== pointer?.id) return;
      const step = SNAP[state.good.units];
      const to = [at[0] + (e.clientX - pointer.x) / pointer.scale, at[1] - (e.clientY - pointer.y) / pointer.scale];
      now = held(to.map((v) => Math.round(v / step) * step));
      show();
    });
    g.addEventListener("pointerup", (e) => {
      if (e.pointerId !== pointer?.id) return;
      pointer = null;
      if (now[0] !== at[0] || now[1] !== at[1]) putCups(places().map((one, k) => (k === i ? now : one)));
    });
    g.addEventListener("lostpointercapture", () => {
      if (!pointer) return;
      pointer = null;
      redraw();
    });
    return g;
  }

  /** The fields of each cup, for keys and for a tape. */
  async function showCups() {
    const list = places();
    while (cups.length > list.length) cups.pop().el.remove();
    while (cups.length < list.length) {
      const i = cups.length;
      let at = null;
      const spot = createSpot(`Cup ${i + 1}`, {
        units: () => state.good.units, read,
        async move(x, y) {
          at = held([x, y]);
          spot.show(...at, await labels(at));
        },
        commit() {
          if (!at) return;
          const to = at;
          at = null;
          putCups(places().map((one, k) => (k === i ? to : one)));
        },
      });
      const row = h("div", { class: "build-cup-row" }, spot.el, h("button", { type: "button", onclick: () => putCups(places().filter((_, k) => k !== i)) }, `Remove cup ${i + 1}`));
      cups.push({ el: row, spot });
      cupList.append(row);
    }
    await Promise.all(list.map(async (at, i) => cups[i].spot.show(...at, await labels(at))));
  }
  const labels = (at) => Promise.all(at.map(async (v) => (await read(`${v.toFixed(4)} m`)).label ?? ""));

  function showStacks() {
    const priced = reply.stacks.some(({ price }) => price);
    const rows = reply.stacks.map((stack) => h("tr", { "data-verdict": stack.verdict },
      h("th", { scope: "row" }, stack.name), h("td", { class: "fig" }, stack.off), h("td", { class: "fig" }, stack.give), h("td", { class: "fig" }, stack.headroom), priced ? h("td", { class: "fig" }, stack.price || "\u2013") : null,
      h("td", {}, h("span", { class: "mark" }, icon(stack.verdict), VERDICT_WORDS[stack.verdict])),
      h("td", {}, stack.laid ? "laid" : h("button", { type: "button", "aria-label": `Lay it: ${stack.name}`, onclick: () => state.edit((next) => { next.floor.layers = stack.layers; }) }, "Lay it"))));
    const rules = rulesOf(reply);
    refill(stacks, table("Floors that meet the mat, from the slab up", ["Layers", "Beside the mat", "At worst", "Headroom", ...(priced ? ["Cost of 1 m²"] : []), "The swing then", "Lay it"], rows),
      fact({ term: "How", text: "Thickness as sold; the swing is checked with every layer at its thickest.", rule: "stack" }, rules));
  }

  function showBill() {
    const rows = reply.quantities.map((one) => {
      const input = h("input", { type: "text", inputmode: "decimal", autocomplete: "off", spellcheck: "false", "aria-label": `Unit price of ${one.item}`, value: one.price });
      const error = h("span", { class: "error" });
      input.addEventListener("change", async () => setText(error, await set(one.path, input.value.trim())));
      return h("tr", {}, h("th", { scope: "row" }, h("details", { class: "build-rule" }, h("summary", {}, h("span", { class: "fact-term" }, one.item)), h("p", {}, one.rule))),
        h("td", { class: "fig" }, one.count), h("td", {}, input, error), h("td", { class: "fig" }, one.cost || "\u2013"));
    });
    refill(bill, h("h3", {}, "Quantities and cost"), table("What the plan takes; tap an item for how it was counted", ["Item", "Count", "Unit price", "Cost"], rows, "bill"),
      h("p", { class: "build-total" }, h("strong", {}, "Total "), h("span", {}, reply.total)),
      h("div", { class: "map-buttons" }, h("button", { type: "button", onclick: () => download(new Blob(["\ufeff", reply.csv], { type: "text/csv;charset=utf-8" }), "quantities.csv") }, "Save as CSV")),
      fieldset("Paint and wiring", fields.group(reply.fields, "quantities")),
      foldedFields("Cable and paint, closer", fields.group(reply.fields, "counting")));
  }

  /** How the floor is laid, and of what. */
  function showFloor() {
    const usual = state.good.build?.stock ? h("button", { type: "button", onclick: () => change("remove", "build.stock") }, "Back to the usual stock") : null;
    const stock = reply.things.filter(({ group }) => group === "stock").map((one) => h("details", { class: "build-stock" }, h("summary", {}, h("span", { class: "fact-term" }, one.title)), thingOf(one, false)));
    refill(floorFields, fieldset("How it is laid", fields.group(reply.fields, "floor")),
      foldedFields("Part of the room, gaps", fields.group(reply.fields, "area")),
      fold("What there is to lay", ...stock, addsOf("stock", usual)));
  }

  /** The fields of a door or the like, and the button that takes it out. */
  const thingOf = ({ title: name, path: where, fields: shown }, told = true) => fieldset(name, [...fields.group(shown, where), h("button", { type: "button", onclick: () => change("remove", where) }, `Remove: ${name}`)], told);

  /** A button for each bare hard wall: it hangs foam there, as a solid of the plan. */
  const padsOf = () => (reply.pads.length ? h("div", { class: "map-buttons build-adds" }, ...reply.pads.map((pad) => h("button", { type: "button", onclick: () => state.edit((next) => { (next.room.solids ??= []).push(pad); }) }, `Add ${pad.name}`))) : null);

  function addsOf(id, also = null) {
    const kinds = reply.more.filter(({ group }) => group === id);
    return kinds.length || also ? h("div", { class: "map-buttons build-adds" }, ...kinds.map(({ title: name, path: where }) => h("button", { type: "button", onclick: () => change("add", where) }, name)), also) : null;
  }

  function showGroups() {
    const rules = rulesOf(reply);
    const own = { screen: "Padding and border" };
    const parts = reply.groups.map(({ id, title, figures }) => h("details", { class: "build-part", open: id === "putting" || id === "screen" }, h("summary", {}, h("h3", {}, title)),
      h("div", { class: "facts" }, ...facts(figures, rules)), own[id] ? fieldset(own[id], fields.group(reply.fields, id)) : null,
      id === "screen" ? padsOf() : null, ...reply.things.filter(({ group }) => group === id).map((one) => thingOf(one)), addsOf(id)));
    const { bands, before, after } = reply.sound;
    const sound = h("details", { class: "build-part" }, h("summary", {}, h("h3", {}, "Sound")),
      table("How long it rings, by Sabine", ["Octave", "Bare room", "As planned"], bands.map((band, k) => h("tr", {}, h("th", { scope: "row" }, band), h("td", { class: "fig" }, before[k]), h("td", { class: "fig" }, after[k])))),
      h("div", { class: "facts" }, fact({ term: "How", text: "A rough estimate, for comparing.", rule: "sound" }, rules)), fieldset("Walls and absorber", fields.group(reply.fields, "sound")));
    refill(groups, ...parts, sound);
  }

  return {
    el, redraw,
    async show(next) {
      reply = next;
      const rules = rulesOf(reply);
      refill(lead, ...facts(reply.said, rules), ...reply.notes.map((note) => h("p", { class: "hint" }, note)));
      showStacks();
      showFloor();
      showGroups();
      showBill();
      care.replaceChildren(care.firstElementChild, cautions(reply.cautions));
      redraw();
      await showCups();
    },
  };
}
