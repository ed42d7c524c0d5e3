// What would make the room do, as buttons that make the change: the best for
// everybody by themselves once the verdict stands, all that would help the check
// looked at when somebody asks, which takes a second or two.
import { $, asSentence, debounce, h, icon, setText } from "../app/dom.js";

const PAUSE_MS = 250; // without an edit, before changes are worked out

/**
 * ask(request) asks the solver of the maps about the plan shown, latest(channel, request) unless a newer one comes.
 * @param {State} state @param {Sheets} sheets
 */
export function createRemedies(state, sheets, ask, latest) {
  const offers = h("div", { class: "map-buttons", id: "changes" });
  const plays = h("ul", { class: "detail" });
  const list = h("div", { class: "map-buttons" });
  const note = h("p", { class: "hint", role: "status" });
  const start = h("button", { type: "button" }, "Work them out");
  const spare = h("div", {});
  let round = 0;
  $("#solve-remedies").append(offers, plays);
  $("#check-remedies").replaceChildren(h("h3", {}, "Changes for this check alone"), start, note, list, spare);

  start.addEventListener("click", async () => {
    const mine = ++round;
    clear();
    setText(note, "Working it out, each change run again before it is offered…");
    start.disabled = true;
    const found = [];
    for (const kind of ["remedies", "limits"]) {
      const reply = await ask({ kind, focus: state.focus });
      if (mine !== round) return;
      if (reply.error) {
        setText(note, `That could not be worked out: ${reply.error.message}.`);
        start.disabled = false;
        return;
      }
      found.push(...reply.remedies);
      render(found);
    }
    start.disabled = false;
    setText(note, found.length ? "Each was run again: press one to make the change; Undo takes it back." : "No single change of tee, ceiling, floor, room, club or golfer makes this check clear.");
  });

  function clear() {
    list.replaceChildren();
    spare.replaceChildren();
  }

  function render(found) {
    list.replaceChildren(...found.filter((one) => !one.spare).map(button));
    const more = found.filter((one) => one.spare);
    spare.replaceChildren(...(more.length ? [h("h4", {}, "How far it would still do"), h("div", { class: "map-buttons" }, ...more.map(button))] : []));
  }

  async function apply(edits) {
    const reply = await ask({ kind: "apply", edits });
    if (reply.error) setText(note, `${asSentence(reply.error.message)} What was here is unchanged.`);
    else state.open(reply.plan, "Done. Undo takes it back.", "edited");
  }

  /** A button that makes a change. */
  function button(change) {
    return h("button", { type: "button", class: "place", "data-kind": change.kind, onclick: () => apply(change.edits) }, change.text, h("span", { class: "quiet" }, change.after));
  }

  /** The best changes for everybody; none are asked for where all are clear. */
  const best = debounce(async () => {
    if (state.answer.report.verdict === "clear") return;
    const mine = round;
    const reply = /** @type {Wire.ChangesAnswer & {error?: Wire.Problem}} */ (await latest("changes", { kind: "changes", focus: state.focus }));
    if (!reply || mine !== round) return;
    offers.dataset.busy = "no";
    if (reply.error) return; // the verdict stands without them
    const { compromise, check } = reply;
    const shown = [...reply.offers, ...(compromise ? [compromise] : []), ...check.filter((one) => !reply.offers.some((other) => other.sentence === one.sentence))];
    offers.replaceChildren(...shown.map((one) => h("button", { type: "button", class: "place", onclick: () => apply(one.edits) }, icon(one.verdict), " ", one.sentence)));
    plays.replaceChildren(...reply.plays.map((one) => h("li", {}, one.text)));
  }, PAUSE_MS);
  const due = sheets.inSight(["swing"], best);

  state.onAnswered(({ answer }) => { // the check is another one now
    round++;
    offers.replaceChildren();
    plays.replaceChildren();
    const needed = answer.report.verdict !== "clear";
    $("#solve-remedies").hidden = !needed;
    offers.dataset.busy = needed ? "yes" : "no";
    if (needed) due();
    else best.cancel();
    start.disabled = false;
    clear();
    setText(note, "");
  });
  return button;
}
