// The quick row: height, driver length and hand of whoever just walked in.
// Typing applies by itself; Enter or the button at once.
import { $, debounce } from "../app/dom.js";
import { findVisitor, VISITOR, VISITOR_CLUB } from "../app/edits.js";

const LIVE_MS = 250;

/**
 * createQuick({parse(text), apply({height, length, hand}), remove()}): parse
 * resolves to {metres} or {error}; apply resolves once the answer is there.
 */
export function createQuick({ parse, apply, remove }) {
  const form = $("#quick");
  const fields = { height: $("#quick-height"), club: $("#quick-club") };
  const removeButton = $("#quick-remove");
  let round = 0;

  function fail(input, message) {
    $(`#${input.id}-error`).textContent = message;
    if (message) input.setAttribute("aria-invalid", "true");
    else input.removeAttribute("aria-invalid");
  }

  async function read(input) {
    const text = input.value.trim();
    if (text === "") {
      fail(input, "");
      return { metres: 0 };
    }
    const reply = await parse(text);
    fail(input, reply.error?.message ?? "");
    return reply;
  }

  async function run(asked) {
    live.cancel();
    const mine = ++round;
    const [height, club] = await Promise.all([read(fields.height), read(fields.club)]);
    if (mine !== round || height.error || club.error) return;
    if (!height.metres) {
      if (asked) {
        fail(fields.height, "Type a height first, such as 6'2\" or 188 cm.");
        fields.height.focus();
      }
      return;
    }
    apply({ height: height.metres, length: club.metres, hand: new FormData(form).get("quick-hand") });
  }

  const live = debounce(() => run(false), LIVE_MS);
  form.addEventListener("submit", (e) => {
    e.preventDefault();
    run(true);
  });
  form.addEventListener("input", live);
  removeButton.addEventListener("click", () => {
    live.cancel();
    round++;
    for (const input of Object.values(fields)) {
      input.value = "";
      fail(input, "");
    }
    remove();
    fields.height.focus();
  });

  return {
    /** Shows the visitor of a plan that was loaded, undone or redone. */
    async render(plan, labels) {
      const visitor = findVisitor(plan);
      removeButton.hidden = !visitor;
      if (form.contains(document.activeElement) && visitor) return;
      const own = visitor && plan.clubs.find((c) => c.name === VISITOR_CLUB);
      const [[height], [length]] = await Promise.all([labels([visitor?.height ?? 0]), labels([own?.length ?? 0], "short")]);
      if (visitor) fields.height.value = height;
      if (own) fields.club.value = length;
      if (visitor) form.elements["quick-hand"].value = visitor.hand === "left" ? "left" : "right";
    },

    /** Puts a solver's sentence beside the quick row when it is about the visitor. */
    fail(path, message, plan) {
      const [, list, index, key] = /^(\w+)\[(\d+)\]\.(\w+)/.exec(path) ?? [];
      const name = plan?.[list]?.[index]?.name;
      if (list === "players" && name === VISITOR && key === "height") fail(fields.height, message);
      else if (list === "clubs" && name === VISITOR_CLUB && key === "length") fail(fields.club, message);
    },
    clearErrors() {
      for (const input of Object.values(fields)) fail(input, "");
    },
  };
}
