// The plans kept in this browser: keep, open, rename, duplicate, remove with undo, take
// along as files and bring in again, and two of them side by side.
import { $$, asSentence, download, h, slug, styles } from "../app/dom.js";
import { fileOf, plansIn, putBack, putOn, readShelf, rename, takeOff, whyNot } from "./shelf.js";

const FILE_LIMIT = 20e6; // bytes of a file with many plans
const MOST = 200; // plans taken from one file

const asFile = (text, name) => download(new Blob([text], { type: "application/json" }), name);

/** Opens the dialog. */
export function openKeep(/** @type {Shared} */ shared) {
  if ($$("dialog[open]").length) return;
  const { state, solver } = shared;
  styles("keep/keep.css").catch(() => {}); // plainer without
  let /** @type {import("./shelf.js").Kept[]} */ kept = [];
  const said = h("p", { class: "notice", role: "status" });
  const list = h("ul", { class: "kept" });
  const name = h("input", { type: "text", id: "keep-name", maxlength: 80, autocomplete: "off", value: state.good.title || "My room" });
  const file = h("input", { type: "file", accept: ".json,application/json", hidden: true, "aria-label": "File of plans" });
  const all = h("button", { type: "button", onclick: () => asFile(fileOf(kept), "kept-plans.json") }, "Save all as one file");
  const choices = [h("select", { id: "compare-a" }), h("select", { id: "compare-b" })];
  const side = h("div", { id: "comparison" });
  const keepForm = h("form", { class: "keep-now" }, h("label", { for: "keep-name" }, "Keep the plan as it is now, as"), name, h("button", { class: "stamp" }, "Keep"));
  const dialog = h("dialog", { class: "dialog keep", id: "keep-dialog", "aria-labelledby": "keep-heading" },
    h("div", { class: "keep-head" }, h("h2", { id: "keep-heading" }, "Plans"), h("form", { method: "dialog" }, h("button", {}, "Close"))),
    h("p", { class: "hint" }, "They lie in this browser on this machine and nowhere else. Clearing the browser's data clears them; a file outlives that."),
    said, keepForm, list,
    h("div", { class: "keep-files" }, all, h("button", { type: "button", onclick: () => file.click() }, "Bring in a file"), file),
    h("section", { "aria-labelledby": "compare-heading" },
      h("h3", { id: "compare-heading" }, "Side by side"),
      h("div", { class: "compare-choice" },
        h("label", { for: "compare-a" }, "First"), choices[0], h("label", { for: "compare-b" }, "Second"), choices[1],
        h("button", { type: "button", class: "stamp", onclick: sideBySide }, "Compare")),
      side));

  /** Says something, with a button that takes it back where it can be. */
  function say(sentence, undo = null) {
    said.replaceChildren(sentence, ...(undo ? [" ", h("button", { type: "button", onclick: () => attempt(() => { undo(); return "It is back."; }) }, "Undo")] : []));
  }

  /** Does something to the shelf, says what does() returns, and shows the shelf as it is then. */
  function attempt(does) {
    try {
      const told = does();
      if (Array.isArray(told)) say(told[0], told[1]);
      else if (told) say(told);
    } catch (error) {
      say(whyNot(error));
    }
    show();
  }

  function show() {
    try {
      const shelf = readShelf();
      kept = shelf.kept;
      if (shelf.damaged && !said.textContent) say(`${shelf.damaged === 1 ? "One kept plan is" : `${shelf.damaged} kept plans are`} damaged and cannot be shown; the others are whole.`);
    } catch (error) {
      kept = [];
      say(whyNot(error));
    }
    list.replaceChildren(...kept.map(row));
    all.disabled = kept.length === 0;
    const chosen = choices.map(({ value }) => value);
    for (const [i, select] of choices.entries()) {
      select.replaceChildren(...comparable().map(({ key, label }) => h("option", { value: key }, label)));
      select.value = chosen[i] || [...select.options][Math.min(i, select.options.length - 1)].value;
    }
  }

  /** What may be laid side by side: what is shown now, what was before, what is kept. */
  function comparable() {
    return [
      ...(state.previous ? [{ key: "before", label: "Before the last change", plan: state.previous }] : []),
      { key: "now", label: "As it is now", plan: state.good },
      ...kept.map(({ id, name: label, plan }) => ({ key: id, label, plan })),
    ];
  }

  function row(one) {
    const act = (label, does) => h("button", { type: "button", "aria-label": `${label} ${one.name}`, onclick: () => attempt(does) }, label);
    const title = h("span", { class: "kept-name" }, one.name);
    const li = h("li", { "data-id": one.id },
      title, h("span", { class: "hint" }, `${one.aside ? "set aside" : "kept"} ${new Date(one.at).toLocaleString([], { dateStyle: "medium", timeStyle: "short" })}`),
      h("span", { class: "kept-buttons" },
        h("button", { type: "button", "aria-label": `Open ${one.name}`, onclick: open }, "Open"),
        h("button", { type: "button", "aria-label": `Rename ${one.name}`, onclick: askName }, "Rename"),
        act("Duplicate", () => `“${putOn(one.plan, one.name).name}” is a copy of “${one.name}”.`),
        act("Replace", () => {
          putBack({ ...one, plan: state.good, at: Date.now(), aside: false });
          return [`“${one.name}” holds the plan as it is now.`, () => putBack(one)];
        }),
        h("button", { type: "button", "aria-label": `Save ${one.name} as a file`, onclick: () => asFile(`${JSON.stringify(one.plan, null, 2)}\n`, `${slug(one.name)}.json`) }, "File"),
        act("Remove", () => {
          takeOff(one.id);
          return [`“${one.name}” is removed.`, () => putBack(one)];
        })));

    async function open() {
      const error = await state.open(one.plan, `“${one.name}” is open; what you change is a copy. Undo returns to the plan before.`);
      if (error) say(`“${one.name}” cannot be opened: ${asSentence(error.message)} What was here is unchanged.`);
      else dialog.close();
    }

    function askName() {
      const field = h("input", { type: "text", value: one.name, maxlength: 80, "aria-label": `Name of ${one.name}` });
      field.addEventListener("keydown", (e) => {
        if (e.key === "Escape") {
          e.preventDefault();
          show();
        }
      });
      const form = h("form", { class: "kept-name" }, field, h("button", {}, "Rename"));
      form.addEventListener("submit", (e) => {
        e.preventDefault();
        attempt(() => `It is “${rename(one, field.value).name}” now.`);
      });
      title.replaceWith(form);
      field.select();
    }
    return li;
  }

  keepForm.addEventListener("submit", (e) => {
    e.preventDefault();
    attempt(() => `“${putOn(state.good, name.value).name}” is kept.`);
  });

  file.addEventListener("change", async () => {
    const [given] = file.files;
    file.value = "";
    if (!given) return;
    const plans = given.size > FILE_LIMIT ? null : plansIn(await given.text());
    if (!plans) {
      say(`${given.name} holds no plan of this page.`);
      return;
    }
    const refused = [];
    let taken = 0;
    try {
      for (const one of plans.slice(0, MOST)) {
        const { plan, error } = await solver.ask({ kind: "open", saved: JSON.stringify(one.plan) });
        if (error) refused.push(`“${one.name}” was left out: ${asSentence(error.message)}`);
        else {
          putOn(plan, one.name);
          taken++;
        }
      }
    } catch (error) {
      refused.push(whyNot(error));
    }
    if (plans.length > MOST) refused.push(`Only the first ${MOST} were read.`);
    show();
    say([`${taken === 1 ? "One plan was" : `${taken} plans were`} brought in from ${given.name}.`, ...refused].join(" "));
  });

  async function sideBySide() {
    const of = comparable();
    const [first, second] = choices.map(({ value }) => of.find(({ key }) => key === value));
    try {
      const { compare } = await import("./compare.js");
      await compare(shared, side, { name: first.label, plan: first.plan }, { name: second.label, plan: second.plan });
    } catch {
      say("The comparison could not be fetched. The plans are all here; press Compare to try again.");
    }
  }

  dialog.addEventListener("close", () => dialog.remove());
  document.body.append(dialog);
  show();
  dialog.showModal();
}
