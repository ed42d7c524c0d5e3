// The sheet Projector: the image on the wall with the shadow of a swing, the light in
// elevation and in plan, and where the lens may hang.
import { $, asSentence, h, icon, setText } from "../app/dom.js";
import { table } from "../ball/table.js";
import { darkBoxes } from "../stage/shade.js";
import { cautions, fact, facts, fold, refill, rulesOf } from "./facts.js";
import { fieldset, foldedFields } from "./fields.js";
import { box, label, line, paper, path } from "./draw.js";
import { createLensHandle } from "./lens.js";

const TALLEST = 380; // px of a drawing on paper
const LINE = 16; // px that a label takes

export function createLight({ state, ask }, fields) {
  let reply = null;
  let film = null;
  let chosen = ""; // the golfer whose film is shown, "player, club, tee"
  let going = null; // the lens on its way, as the drawing has it: {lens, case, throw, where}
  const wall = paper("wall", "The screen, as the golfer sees it", TALLEST);
  const side = paper("side", "Side elevation, from the right wall", TALLEST);
  const plan = paper("plan", "Plan, from above", TALLEST);
  const lead = h("div", { class: "facts build-lead", role: "status" });
  const put = h("button", { type: "button", class: "stamp", onclick: hang }, "Put it here");
  const hung = h("p", { class: "hint" });
  const who = h("select", { id: "shadow-who", onchange: () => choose(who.value) });
  const moment = h("input", { id: "shadow-moment", type: "range", min: "0", max: "0", step: "1", value: "0", oninput: showFrame });
  const told = h("output", { class: "build-told", for: "shadow-moment" });
  const shadow = h("div", { class: "build-shadow", role: "group", "aria-label": "Shadow of a swing" },
    h("div", { class: "field" }, h("label", { for: "shadow-who" }, "Whose swing"), who),
    h("div", { class: "field" }, h("label", { for: "shadow-moment" }, "Moment of it"), moment), told);
  const shadows = h("div", { class: "build-part" });
  const groups = h("div", { class: "build-groups" });
  const settings = h("div", { class: "build-groups" });
  const care = fold("Light, ladders, mounts");
  const drawings = h("div", { class: "build-paper" }, wall.el, shadow, side.el, plan.el);
  const rest = [drawings, groups, shadows, settings, care];
  const el = h("div", { class: "build-board", hidden: true }, lead,
    drawings, h("div", { class: "build-side" }, h("div", { class: "map-buttons" }, put), hung, settings, groups), shadows, care);
  $("#projector-root").replaceChildren(el);

  const now = () => ({ ...reply.drawing, ...going });
  const handles = /** @type {["side" | "plan", any][]} */ ([["side", side], ["plan", plan]])
    .map(([view, on]) => createLensHandle(on, view, { units: () => state.good.units, now, move, drop, back }));

  /** Takes the lens along; what is said of it follows. */
  async function move(lens) {
    const before = now();
    const by = lens.map((v, axis) => v - before.lens[axis]);
    const along = (corner) => corner.map((v, axis) => v + by[axis]);
    going = { ...going, lens, case: { min: along(before.case.min), max: along(before.case.max) } };
    drawRoom();
    const answer = await ask("lens", { kind: "lens", at: lens });
    if (!answer || answer.error || !going) return;
    const { said, where, ...drawn } = answer;
    if (String(drawn.lens) === String(going.lens)) going = { ...drawn, where };
    refill(lead, ...facts(said, rulesOf(reply)));
    drawRoom();
  }

  /** Writes the lens into the plan. */
  async function drop() {
    if (!going) return;
    const { lens } = going;
    const answer = await ask("lens", { kind: "lens", at: lens });
    if (!answer || !going) return; // moved on meanwhile
    if (answer.error) {
      setText(hung, asSentence(answer.error.message));
      back();
      return;
    }
    state.edit((next) => { next.projector = answer.projector; }, "projector.lens");
  }

  function back() {
    going = null;
    refill(lead, ...facts(reply.said, rulesOf(reply)));
    drawRoom();
  }

  /** Hangs the case in the plan where the lens is; one that hangs there already is moved. */
  function hang() {
    const { hang: thing, fresh } = reply;
    state.edit((next) => {
      if (!reply.there) {
        next.projector = fresh;
        return;
      }
      const list = (next.hung ??= []);
      const old = list.find(({ name }) => name === thing.name);
      if (old) Object.assign(old, { min: thing.min, max: thing.max });
      else list.push(thing);
    });
  }

  async function choose(key) {
    chosen = key;
    const row = reply.shadows.find((one) => keyOf(one) === key);
    if (!row) return;
    const answer = await ask("film", { kind: "film", player: row.player, club: row.club, tee: row.tee });
    if (!answer || answer.error) return;
    film = answer;
    moment.max = String(film.frames.length - 1);
    moment.value = String(Math.min(row.frame, film.frames.length - 1));
    showFrame();
  }

  function showFrame() {
    if (!film) return;
    const k = Number(moment.value);
    const text = `${(k / film.rate).toFixed(2)} s: ${film.said[k]} of the image dark`;
    setText(told, text);
    moment.setAttribute("aria-valuetext", text);
    drawWall();
  }

  function drawWall() {
    const d = reply.drawing;
    const { width, height, bottom, centre } = d.image;
    const [right, top] = [centre - width / 2, bottom + height];
    const [[y0, y1], [z0, z1]] = d.wall;
    const cells = film ? darkBoxes(film, Number(moment.value)) : [];
    wall.draw("face", [d.room[1], d.room[2]], d.text[2], (map) => {
      return [
        line("build-cloth", box(map, y0, z0, y1, z1), "cloth"),
        line("build-image", box(map, right, bottom, right + width, top), "image"),
        cells.length ? line("build-dark", cells.map(([y, z, wide, high]) => box(map, y, z, y + wide, z + high)).join("")) : null,
        d.returns[1] ? line("ln-return is-hidden", path(map, [[y0, z1], [y1, z1]], false), "top return, towards you") : null,
        label(map, centre, bottom + height / 2, reply.size),
        (z1 - top) * map.scale > LINE ? label(map, centre, (z1 + top) / 2 - 0.03, "blank") : null,
        (bottom - z0) * map.scale > LINE ? label(map, centre, (bottom + z0) / 2 - 0.03, "blank") : null,
      ];
    });
  }

  function redraw() {
    if (!reply) return;
    drawWall();
    drawRoom();
  }

  function drawRoom() {
    const d = now();
    const i = d.image;
    const [x, y, z] = d.lens;
    const [length, width, height] = d.room;
    const there = reply.there;
    const within = (v, most) => Math.min(Math.max(v, 0), most);
    const may = d.region.filter(({ from, to }) => from <= to);
    const boxes = (map, a, b) => d.boxes.map((one) => line("ln-solid", box(map, within(one.min[a], d.room[a]), within(one.min[b], d.room[b]), within(one.max[a], d.room[a]), within(one.max[b], d.room[b])), one.name));
    side.draw("side", [length, height], d.text[0], (map) => [
      there ? line("build-light", path(map, [[x, z], [i.x, i.bottom], [i.x, i.bottom + i.height]]), "light") : null,
      line("ln-floor", path(map, [[0, d.standing], [length, d.standing]], false), "where golfers stand"),
      ...boxes(map, 0, 2),
      line("ln-screen", path(map, [[i.x, d.wall[1][0]], [i.x, d.wall[1][1]]], false), "screen"),
      d.returns[1] ? line("ln-return", path(map, [[i.x, d.wall[1][1]], [i.x - d.returns[1], d.wall[1][1]]], false), "top return") : null,
      may.length > 1 ? line("build-region", path(map, [...may.map((c) => [c.x, c.from]), ...may.toReversed().map((c) => [c.x, c.to])]), "where the lens may hang") : null,
      may.length > 1 ? label(map, (may[0].x + may.at(-1).x) / 2, within(Math.min(...may.map((c) => c.from)) - 0.2, height), "lens may hang here") : null,
      there ? line("build-case", box(map, d.case.min[0], d.case.min[2], d.case.max[0], d.case.max[2]), "projector") : null,
      there ? line("build-lens", path(map, [[x, z], [x, z]], false), "lens") : null,
    ]);
    plan.draw("plan", [length, width], d.text[1], (map) => [
      there ? line("build-light", path(map, [[x, y], [i.x, i.centre - i.width / 2], [i.x, i.centre + i.width / 2]]), "light") : null,
      ...boxes(map, 0, 1),
      line("ln-screen", path(map, [[i.x, d.wall[0][0]], [i.x, d.wall[0][1]]], false), "screen"),
      there ? line("build-band", box(map, within(d.throw[0], length), 0, within(d.throw[1], length), width), "between least and most throw") : null,
      there ? label(map, (within(d.throw[0], length) + within(d.throw[1], length)) / 2, 0.12, "throw") : null,
      there ? line("build-case", box(map, d.case.min[0], d.case.min[1], d.case.max[0], d.case.max[1]), "projector") : null,
      there ? line("build-lens", path(map, [[x, y], [x, y]], false), "lens") : null,
    ]);
    for (const handle of handles) handle.show();
  }

  function showShadows() {
    const rows = reply.shadows.map((row) => h("tr", { "data-verdict": row.mark },
      h("th", { scope: "row" }, `${row.player}, ${row.club}`), h("td", { class: "fig" }, row.address), h("td", { class: "fig" }, h("span", { class: "mark" }, icon(row.mark)), row.worst),
      h("td", {}, h("button", { type: "button", "aria-label": `Show ${row.player}, ${row.club}`, onclick: () => { who.value = keyOf(row); choose(who.value); wall.el.scrollIntoView({ block: "nearest" }); } }, "Show"))));
    refill(shadows, h("h3", {}, "Who cuts the image"), table("Share of the image in the shadow of golfer and club, in each usual swing", ["Golfer and club", "Standing to the ball", "At worst", "Show"], rows, "bill"),
      fact({ term: "How", text: "Every usual swing, seen from the lens.", rule: "shadow" }, rulesOf(reply)));
    who.replaceChildren(...reply.shadows.map((row) => h("option", { value: keyOf(row) }, `${row.player}, ${row.club}: ${row.worst} at worst`)));
    const darkest = reply.shadows.find((row) => row.mark !== "clear") ?? reply.shadows[0];
    who.value = reply.shadows.some((row) => keyOf(row) === chosen) ? chosen : keyOf(darkest);
  }

  return {
    el, redraw,
    async show(next) {
      reply = next;
      film = going = null;
      const rules = rulesOf(reply);
      refill(lead, ...facts(reply.said, rules), ...reply.notes.map((note) => h("p", { class: "hint" }, note)));
      for (const part of rest) part.hidden = !reply.there;
      put.hidden = reply.inPlan || (reply.there && !reply.hang);
      setText(put, reply.there ? "Put it here" : "Plan a projector");
      setText(hung, reply.inPlan ? "It hangs in the plan, so the verdict on the sheet Swing counts it." : reply.there && reply.hang ? "It does not hang in the plan yet: the verdict on the sheet Swing does not count it." : "");
      care.replaceChildren(care.firstElementChild, cautions(reply.cautions));
      if (!reply.there) return;
      refill(groups, ...reply.groups.map(({ title, figures }) => h("details", { class: "build-part", open: true }, h("summary", {}, h("h3", {}, title)), h("div", { class: "facts" }, ...facts(figures, rules)))));
      refill(settings, fieldset("Where it hangs", fields.group(reply.fields, "place")),
        fold("Its data sheet", fieldset("Data sheet", fields.group(reply.fields, "data"), false), fieldset("Offset and shift", fields.group(reply.fields, "offset")), fieldset("Case", fields.group(reply.fields, "case"))),
        foldedFields("Image and screen", fields.group(reply.fields, "screen")));
      showShadows();
      redraw();
      await choose(who.value);
    },
  };
}

const keyOf = ({ player, club, tee }) => JSON.stringify([player, club, tee]);
