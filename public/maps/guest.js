// What a guest is shown before the swing: one sentence, large, and where to
// stand. It fills the screen; Escape, Back and its button close it.
import { active, h, s, icon, keptTogether } from "../app/dom.js";

const WIDEST = 640; // px, the drawing's own
const ROUND = 60; // px of the window that it leaves free
const MARGIN = 30;
const LETTERS = 520; // px: on a narrower drawing letters stand for the readings
const LETTER = "ABCDEFGH";

export function showGuest(/** @type {Wire.GuestMark} */ mark, size) {
  const back = active();
  const title = h("h2", { id: "guest-title" }, mark.player, h("span", { class: "quiet" }, `, ${mark.club}`));
  const dialog = h("dialog", { id: "guest", "aria-labelledby": "guest-title", "aria-describedby": "guest-sentence" },
    h("div", { class: "guest-head" }, title, h("div", { class: "guest-buttons" },
      h("button", { type: "button", onclick: () => print() }, "Print"),
      h("button", { type: "button", class: "stamp", onclick: () => leave() }, "Close"))),
    h("p", { id: "guest-sentence", class: "guest-sentence", "data-verdict": mark.verdict }, icon(mark.verdict), " ", ...keptTogether(mark.sentence)),
    mark.more ? h("p", { class: "guest-more" }, ...keptTogether(mark.more)) : null,
    mark.moved ? h("p", { class: "guest-more" }, mark.moved) : null,
    h("div", { class: "guest-board" }, drawing(mark, size), tapes(mark, true)),
    h("p", { class: "hint" }, "This is a model of a swing, not a promise. Swing slowly first, and let somebody watch the club."));
  document.body.append(dialog);
  history.scrollRestoration = "manual"; // the page under the view stays where it is
  history.pushState({ guest: true }, "");
  // Every way out is a step back in the history, and the view goes when that has
  // been taken: otherwise it could still be under way when the next view opens.
  let leaving = false;
  const leave = () => {
    if (!leaving) history.back();
    leaving = true;
  };
  addEventListener("popstate", () => {
    leaving = true;
    history.scrollRestoration = "auto";
    dialog.close();
    dialog.remove();
    back?.focus();
  }, { once: true });
  dialog.addEventListener("cancel", (event) => {
    event.preventDefault();
    leave();
  });
  dialog.addEventListener("close", leave); // a second Escape does not ask
  dialog.showModal();
}

/** The room from above with ball, feet and tapes. */
function drawing(/** @type {Wire.GuestMark} */ mark, [length, width]) {
  const wide = Math.min(WIDEST, Math.max(innerWidth - ROUND, 260)); // so that its readings stay large on a phone
  const scale = (wide - 2 * MARGIN) / length;
  const px = (x) => MARGIN + x * scale;
  const py = (y) => MARGIN + (width - y) * scale;
  const tall = width * scale + 2 * MARGIN;
  const foot = ({ heel, toe }) => s("line", { class: "guest-foot", x1: px(heel[0]), y1: py(heel[1]), x2: px(toe[0]), y2: py(toe[1]), "stroke-width": Math.max(0.09 * scale, 5) });
  const words = `The room from above, target to the right: ${mark.tapes.map((tape) => `${tape.from} to ${tape.to} ${tape.label}`).join(", ")}.`;
  return s("svg", { viewBox: `0 0 ${wide} ${tall.toFixed(1)}`, role: "img", "aria-label": words, class: "guest-plan" },
    s("rect", { class: "guest-room", x: px(0), y: py(width), width: length * scale, height: width * scale }),
    s("text", { class: "place-name", x: px(length), y: py(width) - 10, "text-anchor": "end" }, "left wall"),
    s("text", { class: "place-name", x: px(length) + 16, y: tall / 2, "text-anchor": "middle", transform: `rotate(90 ${px(length) + 16} ${tall / 2})` }, "target"),
    ...mark.tapes.map((tape) => tapeLine(tape, px, py)),
    foot(mark.lead), foot(mark.trail),
    s("circle", { class: "mark-ball", cx: px(mark.ball[0]), cy: py(mark.ball[1]), r: 7 }, s("title", {}, "ball")),
    ...mark.tapes.map((tape, i) => tapeLabel(tape, wide < LETTERS ? LETTER[i] : tape.label, px, py)),
    s("text", { class: "guest-here", x: px(mark.lead.heel[0]) + 14, y: py((mark.lead.heel[1] + mark.lead.toe[1]) / 2) + 5 }, "you stand here"));
}

function tapeLine({ a, b }, px, py) {
  const d = `M${px(a[0])} ${py(a[1])}L${px(b[0])} ${py(b[1])}`;
  return s("g", {}, s("path", { class: "tape-edge", d }), s("path", { class: "tape-body", d }));
}

function tapeLabel({ a, b, to }, label, px, py) {
  const share = to === "ball" ? 0.35 : 0.6; // so that readings side by side do not meet
  const x = px(a[0]) + share * (px(b[0]) - px(a[0]));
  const y = py(a[1]) + share * (py(b[1]) - py(a[1]));
  const wide = label.length * 8 + 12;
  return s("g", {}, s("rect", { class: "reading-plate", x: x - wide / 2, y: y - 12, width: wide, height: 24, rx: 2 }),
    s("text", { class: "reading-text", x, y: y + 5, "text-anchor": "middle" }, label));
}

/** The distances to measure; keyed puts the drawing's letters before them. */
export function tapes(/** @type {Wire.GuestMark} */ mark, keyed = false) {
  return h("dl", { class: "tapes" }, ...mark.tapes.flatMap((tape, i) => [
    h("dt", {}, keyed ? h("span", { class: "tape-letter", "aria-hidden": "true" }, LETTER[i]) : null, `${tape.from} to ${tape.to}`), h("dd", {}, tape.label)]));
}
