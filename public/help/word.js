// What explains itself: a small "?" beside a word or a field. It opens by tap, by
// key and under a resting mouse; Escape, or a press elsewhere, shuts it again.
import { h } from "../app/dom.js";

const REST_MS = 250; // of a mouse on the button before it opens
const LEAVE_MS = 250; // to get from the button to the note
const GAP = 6; // px between them

let serial = 0;

/**
 * The button that explains name, and the note it opens; both go into the page.
 * @param {string} name @param {string} text
 * @returns {{button: any, note: any}}
 */
export function explain(name, text) {
  const id = `note-${++serial}`;
  const note = h("p", { class: "note", id, popover: "auto" }, text);
  const button = h("button", { type: "button", class: "explain", popovertarget: id, "aria-label": `About ${name}` }, "?");
  let timer = 0;
  let hovered = false; // open because a mouse rests on it, and for no longer

  const after = (wait, then) => {
    clearTimeout(timer);
    timer = setTimeout(then, wait);
  };
  const enter = (e) => {
    if (e.pointerType !== "mouse") return;
    after(REST_MS, () => {
      if (note.matches(":popover-open")) return;
      hovered = true;
      note.showPopover({ source: button });
    });
  };
  const leave = () => after(LEAVE_MS, () => {
    if (hovered && !note.matches(":hover") && !button.matches(":hover")) note.hidePopover();
  });
  for (const el of [button, note]) el.addEventListener("pointerleave", leave);
  button.addEventListener("pointerenter", enter);
  button.addEventListener("click", (e) => {
    clearTimeout(timer);
    if (!hovered) return;
    hovered = false; // whoever presses what is open under the mouse wants it to stay
    e.preventDefault();
  });
  note.addEventListener("toggle", (e) => {
    if (e.newState === "open") place(note, button);
    else hovered = false;
  });
  return { button, note };
}

/** Puts a note below its button, or above where there is no room, inside the window. */
function place(note, button) {
  const at = button.getBoundingClientRect();
  const { width, height } = note.getBoundingClientRect();
  const below = at.bottom + GAP;
  const y = below + height > innerHeight ? Math.max(at.top - GAP - height, GAP) : below;
  const x = Math.max(Math.min(at.left, innerWidth - width - GAP), GAP);
  note.style.left = `${x + scrollX}px`; // on the page, so that it scrolls along
  note.style.top = `${y + scrollY}px`;
}
