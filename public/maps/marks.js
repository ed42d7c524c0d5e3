// Where everybody stands: what to tape to the floor, a row each, and the guest's view.
import { $, active, h, icon, debounce, keptTogether } from "../app/dom.js";
import { showGuests, tapes } from "./guest.js";

const PAUSE_MS = 400;

/**
 * ask() resolves to the marks of the plan shown. Hook for tests, read-only:
 * data-busy of #marks is "yes" until they are there.
 * @param {State} state @param {Sheets} sheets
 */
export function createMarks(state, sheets, ask) {
  const section = $("#marks");
  const chosen = new Map(); // player and tee → club
  let guests = []; // {who, marks: one for each club}
  let size = null; // of the room, m: [length, width]

  const run = debounce(async () => {
    const reply = await ask();
    if (!reply) return;
    section.dataset.busy = "no";
    if (reply.error) {
      $("#marks-list").replaceChildren(h("p", {}, `The marks could not be worked out: ${reply.error.message}.`));
      return;
    }
    size = reply.size;
    const byWho = new Map();
    for (const mark of reply.marks) {
      const who = JSON.stringify([mark.player, mark.tee]);
      byWho.set(who, [...(byWho.get(who) ?? []), mark]);
    }
    guests = [...byWho].map(([who, marks]) => ({ who, marks }));
    render();
  }, PAUSE_MS);

  const markOf = ({ who, marks }) => marks.find(({ club }) => club === chosen.get(who)) ?? marks[0];

  function choose({ who }, club) {
    chosen.set(who, club);
    render();
  }

  function render() {
    const focused = active()?.dataset?.mark;
    const tees = new Set(guests.map(({ marks }) => marks[0].tee)).size > 1;
    $("#marks-list").replaceChildren(...guests.map((guest, i) => row(guest, tees, i)));
    if (focused) focus(focused);
  }

  const focus = (name) => $(`#marks-list [data-mark="${CSS.escape(name)}"]`)?.focus();

  function row(guest, tees, i) {
    const { who, marks } = guest;
    const mark = markOf(guest);
    const select = h("select", { id: `mark-club-${i}`, "data-mark": `club ${who}`, onchange: () => choose(guest, select.value) },
      ...marks.map((one) => h("option", { value: one.club, selected: one === mark }, one.club)));
    return h("article", { class: "mark-row", "aria-labelledby": `mark-${i}` },
      h("div", { class: "mark-who" },
        h("h3", { id: `mark-${i}` }, mark.player, tees ? h("span", { class: "quiet" }, `, ${mark.tee}`) : ""),
        h("p", { class: "mark-said", "data-verdict": mark.verdict }, icon(mark.verdict), " ", ...keptTogether(`${mark.brief}.`))),
      tapes(mark),
      h("p", { class: "mark-club" }, h("label", { for: select.id }, "Club"), " ", select),
      h("button", { type: "button", "data-mark": `guest ${who}`, onclick: () => showGuests({ guests, size, markOf, choose, left: () => focus(`guest ${who}`) }, i) }, `Show ${mark.player}`));
  }

  const due = sheets.inSight(["stand"], run);
  state.onAnswered(() => {
    section.dataset.busy = "yes";
    due();
  });
}
