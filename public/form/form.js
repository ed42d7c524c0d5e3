// The cards: builds them from their descriptions, keeps them in step with the
// plan and puts each error beside its field.
import { h } from "../app/dom.js";
import { valueAt } from "../app/state.js";
import { makeField } from "./field.js";
import { cards } from "./cards.js";
import { buildList, buildPart } from "./list.js";

/**
 * createForm(root, {changed(field, settled), restructure(change, focusOn), labels(metres[], form)})
 * restructure applies a change to the plan that adds or removes rows, then puts
 * the focus into the field whose path focusOn(plan) gives.
 */
export function createForm(root, ctx) {
  let fields = [];
  let memberBoxes = []; // functions that refresh the check boxes of a player
  let shape = "";

  const build = {
    ...ctx,
    field(spec, base) {
      const field = makeField(spec, base ? `${base}.${spec.path}` : spec.path, ctx);
      fields.push(field);
      return field.el;
    },
    member: (refresh) => memberBoxes.push(refresh),
  };

  function rebuild(plan) {
    const opened = new Map([...root.querySelectorAll("details[data-key]")].map((d) => [d.dataset.key, d.open]));
    const focused = document.activeElement?.dataset?.path;
    const focusedKey = document.activeElement?.dataset?.key;
    fields = [];
    memberBoxes = [];
    root.replaceChildren(...cards.map((card) => buildCard(card, plan, build)));
    for (const d of root.querySelectorAll("details[data-key]")) {
      if (opened.has(d.dataset.key)) d.open = opened.get(d.dataset.key);
    }
    if (focused) root.querySelector(`[data-path="${CSS.escape(focused)}"]`)?.focus();
    else if (focusedKey) {
      // A removed row takes its buttons along: the list's add button comes next.
      const list = /^remove-(.*)\[\d+\]$/.exec(focusedKey)?.[1];
      const kept = list ? `add-${list}` : focusedKey;
      root.querySelector(`[data-key="${CSS.escape(kept)}"]`)?.focus();
    }
  }

  return {
    /** Shows a plan; rows are rebuilt only when their number changed. */
    async render(plan) {
      const now = shapeOf(plan);
      if (now !== shape) {
        shape = now;
        rebuild(plan);
      }
      const shown = fields;
      const lengths = shown.filter((f) => f.spec.kind === "length");
      const forms = [...new Set(lengths.map((f) => f.spec.form ?? ""))];
      const labelOf = new Map((await Promise.all(forms.map(async (form) => {
        const some = lengths.filter((f) => (f.spec.form ?? "") === form);
        const labels = await ctx.labels(some.map((f) => valueAt(plan, f.path) ?? 0), form);
        return some.map((f, i) => [f, labels[i]]);
      }))).flat());
      if (shown !== fields) return; // rebuilt meanwhile
      for (const f of shown) f.show(valueAt(plan, f.path), labelOf.get(f));
      for (const refresh of memberBoxes) refresh(plan);
    },

    /** Writes a length that was left in its usual way, unless it is at fault. */
    async tidy(field, plan) {
      if (field.spec.kind !== "length" || field.input.hasAttribute("aria-invalid")) return;
      const value = valueAt(plan, field.path);
      const [label] = await ctx.labels([value ?? 0], field.spec.form);
      field.show(value, label);
    },

    /** Puts the focus into the field of a path. */
    focus(path) {
      root.querySelector(`[data-path="${CSS.escape(path)}"]`)?.focus();
    },

    /** Clears the solver's sentences; text that cannot be read keeps its own. */
    clearErrors() {
      for (const f of fields) if (!f.held) f.fail("");
    },
    anyHeld: () => fields.some((f) => f.held),
    /** Lets go of everything typed, before another plan is shown. */
    release() {
      for (const f of fields) f.typing = f.held = false;
    },

    /** Puts a sentence beside the field the solver named; false when no field fits. */
    fail(path, message) {
      const field = fields.find((f) => f.path === path)
        ?? fields.find((f) => f.path.startsWith(`${path}[`) || f.path.startsWith(`${path}.`))
        ?? fields.find((f) => path.startsWith(`${f.path}[`) || path.startsWith(`${f.path}.`));
      field?.fail(message);
      return Boolean(field);
    },
  };
}

function buildCard(card, plan, build) {
  const body = h("fieldset", { class: "card-body" }, h("legend", { class: "visually-hidden" }, card.title));
  if (card.fields) body.append(h("div", { class: "fields" }, ...card.fields.map((spec) => build.field(spec, ""))));
  for (const part of card.parts ?? []) body.append(buildPart(part, plan, build));
  for (const list of card.lists ?? []) body.append(buildList(list, plan, build));
  return h("details", { class: "card", id: `card-${card.id}`, "data-key": card.id, open: card.open },
    h("summary", {}, h("h3", { class: "card-title" }, card.title)), body);
}

/** What decides which rows and boxes exist. */
function shapeOf(plan) {
  const counts = cards.flatMap((c) => [
    ...(c.lists ?? []).map((l) => (valueAt(plan, l.path) ?? []).length),
    ...(c.parts ?? []).map((p) => Boolean(valueAt(plan, p.path))),
  ]);
  const names = [plan.clubs, plan.tees].map((list) => list.map((item) => item.name));
  return JSON.stringify([counts, names]);
}
