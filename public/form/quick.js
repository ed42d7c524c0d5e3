// The quick row: height, driver length and hand of whoever just walked in.
// Typing applies by itself; Enter or the button at once.
import { $, debounce } from "../app/dom.js";
import { findVisitor, removeVisitor, setVisitor, VISITOR, VISITOR_CLUB } from "../app/edits.js";

const LIVE_MS = 250;

export function createQuick(/** @type {State} */ state) {
  const form = $("#quick");
  const fields = { height: $("#quick-height"), club: $("#quick-club") };
  const removeButton = $("#quick-remove");

  function fail(input, message) {
    $(`#${input.id}-error`).textContent = message;
    if (message) input.setAttribute("aria-invalid", "true");
    else input.removeAttribute("aria-invalid");
  }
  function clearErrors() {
    for (const input of Object.values(fields)) fail(input, "");
  }

  function run(asked) {
    live.cancel();
    const height = fields.height.value.trim();
    if (height) {
      const visitor = { height, length: fields.club.value.trim(), hand: new FormData(form).get("quick-hand") };
      state.edit((plan) => setVisitor(plan, visitor), "", { player: VISITOR, club: "", tee: "" });
    } else if (asked) {
      fail(fields.height, "Type a height first, such as 6'2\" or 188 cm.");
      fields.height.focus();
    }
  }

  const live = debounce(() => run(false), LIVE_MS);
  form.addEventListener("submit", (e) => {
    e.preventDefault();
    run(true);
  });
  form.addEventListener("input", live);
  removeButton.addEventListener("click", () => {
    live.cancel();
    for (const input of Object.values(fields)) input.value = "";
    clearErrors();
    state.edit(removeVisitor);
    fields.height.focus();
  });

  /** Shows the visitor of a plan that was loaded, undone or redone. */
  function render() {
    clearErrors();
    const visitor = findVisitor(state.draft);
    removeButton.hidden = !visitor;
    if (!visitor || form.contains(document.activeElement)) return;
    const written = (list, name, key) => state.answer.figures.fields[`${list}[${state.draft[list].findIndex((one) => one.name === name)}].${key}`];
    fields.height.value = written("players", VISITOR, "height");
    fields.club.value = written("clubs", VISITOR_CLUB, "length") ?? fields.club.value;
    form.elements["quick-hand"].value = visitor.hand === "left" ? "left" : "right";
  }

  /** Puts a solver's sentence beside the quick row when it is about the visitor. */
  function refuse() {
    clearErrors();
    const [, list, index, key] = /^(\w+)\[(\d+)\]\.(\w+)/.exec(state.refusal.field ?? "") ?? [];
    const name = state.draft[list]?.[index]?.name;
    if (list === "players" && name === VISITOR && key === "height") fail(fields.height, state.refusal.message);
    else if (list === "clubs" && name === VISITOR_CLUB && key === "length") fail(fields.club, state.refusal.message);
  }

  state.onAnswered(render, refuse);
}
