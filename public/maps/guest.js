// What a guest is shown before the swing, on one screen: the nearest thing in one
// sentence, where to stand, and the distances to measure. Arrow keys, buttons and
// swipes go to the next guest; Escape, Back and a button leave.
import { h, icon, keptTogether, setText } from "../app/dom.js";
import { guestPlan, LETTERS } from "./guestplan.js";
import { keepAwake } from "./awake.js";

const FITS = [1, 0.9, 0.8, 0.72, 0.64, 0.56, 0.5, 0.44]; // sizes of the large type, tried in turn
const SWIPE = 60; // px
export const SHOWN = 3; // tapes: two to the ball, one to the heels

/**
 * guests are {marks}, one mark for each club; markOf(guest) is the one chosen and
 * choose(guest, club) chooses another; left() is called when the view is gone. i is
 * who comes first.
 * @param {{guests: {marks: Wire.GuestMark[]}[], size: [number, number], markOf: any, choose: any, left: () => void}} list
 */
export function showGuests({ guests, size, markOf, choose, left }, i) {
  let at = i;
  let mark = markOf(guests[at]);

  const title = h("h2", { id: "guest-title", tabindex: "-1", autofocus: true });
  const select = h("select", { id: "guest-club", onchange: () => { choose(guests[at], select.value); show(at); } });
  const fill = h("button", { type: "button", onclick: () => (document.fullscreenElement ? document.exitFullscreen() : fillScreen()) });
  const note = h("p", { class: "guest-note", role: "status" });
  const sentence = h("p", { id: "guest-sentence", class: "guest-sentence" });
  const beside = h("p", { class: "guest-beside" });
  const hint = h("p", { class: "hint" });
  const plan = h("div", { class: "guest-plan" });
  const list = h("div", { class: "guest-tapes" });
  const count = h("span", { class: "guest-count" });
  const more = h("div", { class: "guest-more" });
  const live = h("p", { class: "visually-hidden", role: "status" });
  const step = (words, by) => h("button", { type: "button", onclick: () => show(at + by) }, words);
  const sheet = h("div", { class: "guest-sheet" },
    h("div", { class: "guest-head" }, title,
      h("p", { class: "guest-club" }, h("label", { for: "guest-club" }, "with"), " ", select),
      h("div", { class: "guest-buttons" }, fill, h("button", { type: "button", class: "stamp", onclick: () => leave() }, "Close"))),
    note, sentence, beside,
    h("div", { class: "guest-board" }, plan, list),
    h("div", { class: "guest-end" },
      guests.length > 1 ? h("div", { class: "guest-steps", role: "group", "aria-label": "Guests" }, step("\u2039 Previous", -1), count, step("Next \u203a", 1)) : null,
      hint,
      h("details", {}, h("summary", {}, "More"), more)),
    live);
  const dialog = h("dialog", { id: "guest", "aria-labelledby": "guest-title", "aria-describedby": "guest-sentence" }, sheet);

  function show(next) {
    const first = !dialog.open;
    at = (next + guests.length) % guests.length;
    mark = markOf(guests[at]);
    title.replaceChildren(mark.player, guests.some(({ marks }) => marks[0].tee !== mark.tee) ? h("span", { class: "quiet" }, `, ${mark.tee}`) : "");
    select.replaceChildren(...guests[at].marks.map(({ club }) => h("option", { value: club, selected: club === mark.club }, club)));
    sentence.dataset.verdict = mark.verdict;
    sentence.replaceChildren(icon(mark.verdict), " ", ...keptTogether(mark.sentence));
    beside.replaceChildren(...keptTogether(mark.beside ?? ""));
    setText(hint, mark.verdict === "strikes" ? "A model, not a promise." : "A model, not a promise: swing slowly first.");
    list.replaceChildren(tapes(mark, true));
    setText(count, `${at + 1} of ${guests.length}`);
    more.replaceChildren(...[mark.more, mark.moved].filter(Boolean).map((words) => h("p", {}, ...keptTogether(words))),
      distances(mark.tapes.slice(SHOWN)), h("button", { type: "button", onclick: () => print() }, "Print"));
    if (first) return;
    setText(live, `${mark.player}, ${mark.club}. ${mark.sentence}`);
    fit();
  }

  /** The largest type with which all of it is on the screen; the plan takes what is left. */
  function fit() {
    for (const share of FITS) {
      sheet.style.setProperty("--fit", String(share));
      if (sheet.scrollHeight <= sheet.clientHeight && sheet.scrollWidth <= sheet.clientWidth) break;
    }
    plan.replaceChildren(guestPlan(mark, size, SHOWN, plan.clientWidth, plan.clientHeight));
  }

  let awake = null;
  async function fillScreen() {
    const refused = [];
    await sheet.requestFullscreen().catch(() => refused.push("This browser did not let the page fill the screen."));
    awake?.release();
    awake = keepAwake();
    if (!(await awake.kept)) refused.push("The screen may go dark: this device did not let the page keep it lit.");
    setText(note, refused.join(" "));
    fit();
  }
  const onFull = () => {
    setText(fill, document.fullscreenElement ? "Leave full screen" : "Full screen");
    if (dialog.open) fit();
  };

  const watch = new ResizeObserver(() => dialog.open && fit());
  dialog.addEventListener("fullscreenchange", onFull);
  dialog.addEventListener("keydown", (event) => {
    const by = { ArrowRight: 1, ArrowLeft: -1, PageDown: 1, PageUp: -1 }[event.key];
    if (!by || event.target === select || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    show(at + by);
  });
  let from = null; // where a finger came down
  sheet.addEventListener("pointerdown", (event) => { from = event.pointerType === "mouse" || event.target === select ? null : event; });
  sheet.addEventListener("pointerup", (event) => {
    if (event.pointerId !== from?.pointerId) return;
    const [dx, dy] = [event.clientX - from.clientX, event.clientY - from.clientY];
    from = null;
    if (Math.abs(dx) > SWIPE && Math.abs(dx) > 2 * Math.abs(dy)) show(at + (dx < 0 ? 1 : -1));
  });

  show(at);
  onFull();
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
    watch.disconnect();
    awake?.release();
    dialog.close();
    dialog.remove();
    left();
  }, { once: true });
  dialog.addEventListener("cancel", (event) => {
    event.preventDefault();
    leave();
  });
  dialog.addEventListener("close", leave); // a second Escape does not ask
  dialog.showModal();
  watch.observe(sheet);
  fit();
}

/** The distances of a mark to its ball from two walls and to its heels; keyed puts the plan's letters before them. */
export const tapes = (/** @type {Wire.GuestMark} */ mark, keyed = false) => distances(mark.tapes.slice(0, SHOWN), keyed);

const distances = (list, keyed = false) => h("dl", { class: "tapes" }, ...list.map(({ from, to, label }, i) => h("div", {},
  h("dt", {}, keyed ? h("span", { class: "tape-letter", "aria-hidden": "true" }, LETTERS[i]) : null, `${from} to ${to}`),
  h("dd", {}, label))));
