// Where everybody stands: what to tape to the floor, and the guest's own view.
import { $, active, h, icon, debounce, keptTogether, whenSeen } from "../app/dom.js";
import { showGuest, tapes } from "./guest.js";

const PAUSE_MS = 400;

/**
 * ask() resolves to the marks of the plan shown. Hook for tests, read-only:
 * data-busy of #marks, once it was seen, is "yes" until they are there.
 */
export function createMarks(/** @type {State} */ state, ask) {
  const section = $("#marks");
  const chosen = new Map(); // player and tee → club
  let answer = null;

  const run = debounce(async () => {
    const reply = await ask();
    if (!reply) return;
    section.dataset.busy = "no";
    if (reply.error) {
      $("#marks-list").replaceChildren(h("p", {}, `The marks could not be worked out: ${reply.error.message}.`));
      return;
    }
    answer = reply;
    render();
  }, PAUSE_MS);

  function render() {
    const cards = new Map();
    for (const mark of answer.marks) {
      const who = JSON.stringify([mark.player, mark.tee]);
      cards.set(who, [...(cards.get(who) ?? []), mark]);
    }
    const focused = active()?.dataset?.mark;
    const tees = new Set(answer.marks.map((mark) => mark.tee)).size > 1;
    $("#marks-list").replaceChildren(...[...cards].map(([who, list], i) => card(who, list, tees, i)));
    if (focused) $(`#marks-list [data-mark="${CSS.escape(focused)}"]`)?.focus();
  }

  function card(who, list, tees, i) {
    const mark = list.find((one) => one.club === chosen.get(who)) ?? list[0];
    const select = h("select", { id: `mark-club-${i}`, "data-mark": `club ${who}`, onchange: () => { chosen.set(who, select.value); render(); } },
      ...list.map((one) => h("option", { value: one.club, selected: one === mark }, one.club)));
    return h("article", { class: "mark-card", "aria-labelledby": `mark-${i}` },
      h("h3", { id: `mark-${i}` }, mark.player, tees ? h("span", { class: "quiet" }, `, ${mark.tee}`) : ""),
      h("p", { class: "mark-said", "data-verdict": mark.verdict }, icon(mark.verdict), " ", ...keptTogether(mark.sentence)),
      h("p", { class: "mark-club" }, h("label", { for: select.id }, "Club"), " ", select),
      tapes(mark),
      h("button", { type: "button", "data-mark": `guest ${who}`, onclick: () => showGuest(mark, answer.size) }, `Show this to ${mark.player}`));
  }

  // They are worked out once somebody comes to them.
  whenSeen(section, { rootMargin: "50%" }, () => state.onAnswered(() => {
    section.dataset.busy = "yes";
    run();
  }));
}
