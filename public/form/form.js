// The cards: builds them as the solver described them, keeps them in step with
// the plan and puts each error beside its field.
import { $, $$, active, h, setText } from "../app/dom.js";
import { valueAt } from "../app/paths.js";
import { makeField } from "./field.js";
import { buildList, buildPart } from "./list.js";
import { createTyping } from "./typing.js";

/**
 * @param {HTMLElement} root
 * @param {Wire.Card[]} cards
 * @param {State} state
 */
export function createForm(root, cards, state) {
  let fields = [];
  let memberBoxes = []; // functions that refresh the check boxes of a player
  let shape = "";
  let opened = 0; // the plan that the fields are of

  const changed = createTyping(state, show);
  const build = {
    field(spec, base) {
      const field = makeField(spec, base ? `${base}.${spec.path}` : spec.path, changed);
      fields.push(field);
      return field.el;
    },
    member: (refresh) => memberBoxes.push(refresh),
    /** First values of a row or a part, sized for the room. */
    fresh: (path) => state.answer.fresh[path],
    /** Adds or takes away rows, then puts the focus into the field whose path focusOn(plan) gives. */
    async restructure(change, focusOn) {
      await state.edit(change);
      if (!focusOn) return;
      const field = at(focusOn(state.draft));
      field?.closest(".row")?.querySelector(".more")?.setAttribute("open", ""); // what is new is looked at whole
      field?.focus();
    },
  };
  const at = (path) => $(`[data-path="${CSS.escape(path)}"]`, root);

  function rebuild(plan) {
    const open = new Map($$("details[data-key]", root).map((d) => [d.dataset.key, d.open]));
    const { path: focused, key: focusedKey } = active()?.dataset ?? {};
    fields = [];
    memberBoxes = [];
    root.replaceChildren(...cards.map((card) => buildCard(card, plan, build)));
    for (const d of $$("details[data-key]", root)) {
      if (open.has(d.dataset.key)) d.open = open.get(d.dataset.key);
    }
    if (focused) at(focused)?.focus();
    else if (focusedKey) {
      // A removed row takes its buttons along: the list's add button comes next.
      const list = /^remove-(.*)\[\d+\]$/.exec(focusedKey)?.[1];
      const kept = list ? `add-${list}` : focusedKey;
      $(`[data-key="${CSS.escape(kept)}"]`, root)?.focus();
    }
  }

  /** Writes a field in its usual way, unless it is being typed into. */
  function show(field) {
    field.show(valueAt(state.draft, field.path), state.answer.figures.fields[field.path]);
  }

  /** Shows the plan; rows are rebuilt only when their number or the names changed. */
  function render() {
    const plan = state.draft;
    if (state.opened !== opened) for (const f of fields) f.typing = false;
    opened = state.opened;
    const now = shapeOf(cards, plan);
    if (now !== shape) {
      shape = now;
      rebuild(plan);
    }
    for (const f of fields) {
      f.fail("");
      show(f);
    }
    for (const refresh of memberBoxes) refresh(plan);
    for (const card of cards) setText($(`#card-${card.id} .gist`, root), gistOf(card, plan, state.answer.figures.fields));
  }

  /** Puts the solver's sentence beside the field it named, or beside the nearest to it. */
  function refuse() {
    const { field: path = "", message } = state.refusal;
    for (const f of fields) f.fail("");
    if (path === "") return;
    (fields.find((f) => f.path === path)
      ?? fields.find((f) => f.path.startsWith(`${path}[`) || f.path.startsWith(`${path}.`))
      ?? fields.find((f) => path.startsWith(`${f.path}[`) || path.startsWith(`${f.path}.`)))?.fail(message);
  }

  state.onAnswered(render, refuse);
}

/** @param {Wire.Card} card */
function buildCard(card, plan, build) {
  const body = h("fieldset", { class: "card-body" }, h("legend", { class: "visually-hidden" }, card.title));
  if (card.fields) body.append(h("div", { class: "fields" }, ...card.fields.map((spec) => build.field(spec, ""))));
  for (const part of card.parts ?? []) body.append(buildPart(part, plan, build));
  for (const list of card.lists ?? []) body.append(buildList(list, plan, build));
  return h("details", { class: "card", id: `card-${card.id}`, "data-key": card.id, open: card.open },
    h("summary", {}, h("h3", { class: "card-title" }, card.title), h("span", { class: "gist" })), body);
}

/** What a card holds, for when it is folded: figures and the names of its rows. @param {Wire.Card} card */
function gistOf(card, plan, figures) {
  const first = (card.parts ?? []).map((part) => (valueAt(plan, part.path) ? figures[`${part.path}.${part.fields[0].path}`] : "none"));
  const names = (card.lists ?? []).flatMap((list) => (valueAt(plan, list.path) ?? []).map(({ name }) => name));
  const own = (card.fields ?? []).map((field) => figures[field.path]);
  return [...own, ...first, ...names].filter(Boolean).join(", ") || (card.lists ? "none" : "");
}

/** What decides which rows and boxes exist. */
function shapeOf(/** @type {Wire.Card[]} */ cards, plan) {
  const counts = cards.flatMap((c) => [
    ...(c.lists ?? []).map((l) => (valueAt(plan, l.path) ?? []).length),
    ...(c.parts ?? []).map((p) => Boolean(valueAt(plan, p.path))),
  ]);
  const names = [plan.clubs, plan.tees].map((list) => list.map((item) => item.name));
  return JSON.stringify([counts, names]);
}
