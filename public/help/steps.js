// Three steps over the real page for who comes for the first time: each points at a part
// of it and says what it is for. They can be skipped, and come once.
import { $, h, setText, styles } from "../app/dom.js";

const KEY = "wide-berth.steps";

const STEPS = [
  ["#strip", "Whose swing?", "Type a height and a driver, or slide the ball along the tape. Picture and answer follow at once."],
  ["#verdict-box", "The worst of everyone", "The headline is about everybody who plays. Press a number in the grid to see that player swing that club."],
  ["#solve-remedies", "What would do", "Changes worked out and tried on this room. Press one; Undo takes it back. Your own room is on the sheet Room and people."],
];

/** Shows them, unless this browser has seen them. */
export async function showSteps() {
  if (seen()) return;
  await styles("help/help.css");
  const title = h("h2", { id: "steps-title" });
  const text = h("p", { id: "steps-text" });
  const count = h("span", { class: "steps-count" });
  const next = h("button", { type: "button", class: "stamp", onclick: () => go(at + 1) });
  const skip = h("button", { type: "button", onclick: () => end() }, "Skip");
  const box = h("div", { class: "steps", role: "dialog", "aria-labelledby": "steps-title", "aria-describedby": "steps-text" },
    title, text, h("div", { class: "steps-buttons" }, count, skip, next));
  let at = 0;

  function go(i) {
    mark(false);
    at = i;
    if (!STEPS[at]) {
      end();
      return;
    }
    const [, heading, words] = STEPS[at];
    setText(title, heading);
    setText(text, words);
    setText(count, `${at + 1} of ${STEPS.length}`);
    setText(next, at === STEPS.length - 1 ? "Done" : "Next");
    skip.hidden = at === STEPS.length - 1;
    mark(true);
    if (at > 0) {
      for (const one of [part(), box]) one.scrollIntoView({ block: "nearest" });
      next.focus();
    }
  }

  const part = () => $(STEPS[at]?.[0] ?? "body");
  const mark = (on) => part().classList.toggle("is-pointed-at", on);

  function end() {
    mark(false);
    box.remove();
    keep();
  }

  box.addEventListener("keydown", (e) => { if (e.key === "Escape") end(); });
  $("main").prepend(box);
  go(0);
}

function seen() {
  try {
    return localStorage.getItem(KEY) === "seen";
  } catch {
    return true; // a browser that keeps nothing would show them at every visit
  }
}

function keep() {
  try {
    localStorage.setItem(KEY, "seen");
  } catch {
    // They come again with the next visit.
  }
}
