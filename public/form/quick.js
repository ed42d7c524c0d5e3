// The quick row: height, driver length and hand of whoever just walked in.
// Typing applies by itself; Enter or the button at once.
import { $, debounce, setText } from "../app/dom.js";
import { findVisitor, removeVisitor, setVisitor, VISITOR, VISITOR_CLUB } from "../app/edits.js";

const LIVE_MS = 250;

const hintOf = (input) => $(`#${input.id}-hint`);

export function createQuick(/** @type {State} */ state) {
  const form = $("#quick");
  const fields = { height: $("#quick-height"), club: $("#quick-club") };
  const removeButton = $("#quick-remove");
  const hints = Object.fromEntries(Object.values(fields).map((input) => [input.id, hintOf(input).textContent]));

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

  /** Says beside a field that is being typed into how it was read. */
  function echo(input, text) {
    const read = text && input.value.trim() && input.value.trim() !== text;
    setText(hintOf(input), read ? `Read as ${text}` : hints[input.id]);
  }

  /** Shows the visitor of a plan that was loaded, undone or redone. */
  function render() {
    clearErrors();
    const visitor = findVisitor(state.draft);
    removeButton.hidden = !visitor;
    const written = (list, name, key) => state.answer.figures.fields[`${list}[${state.draft[list].findIndex((one) => one.name === name)}].${key}`];
    const height = visitor && written("players", VISITOR, "height");
    const length = visitor && written("clubs", VISITOR_CLUB, "length");
    if (visitor && !form.contains(document.activeElement)) {
      fields.height.value = height;
      fields.club.value = length ?? fields.club.value;
      form.elements["quick-hand"].value = visitor.hand === "left" ? "left" : "right";
    }
    echo(fields.height, height);
    echo(fields.club, length);
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
