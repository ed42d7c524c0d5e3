// What would make the check clear, as buttons that make the change. It is worked
// out when somebody asks for it: it takes a second or two.
import { $, asSentence, h, setText } from "../app/dom.js";

/** ask(request) asks the solver of the maps about the plan shown. */
export function createRemedies(/** @type {State} */ state, ask) {
  const list = h("div", { class: "map-buttons" });
  const note = h("p", { class: "hint", role: "status" });
  const start = h("button", { type: "button" }, "Work out what would do");
  const spare = h("div", {});
  let round = 0;
  $("#solve-remedies").replaceChildren(h("h3", {}, "Changes that would do"), start, note, list, spare);

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
    else state.open(reply.plan, "Done. Undo takes it back.");
  }

  /** A button that makes a change. */
  function button(change) {
    return h("button", { type: "button", class: "place", "data-kind": change.kind, onclick: () => apply(change.edits) }, change.text, h("span", { class: "quiet" }, change.after));
  }

  state.onAnswered(() => { // the check is another one now
    round++;
    start.disabled = false;
    clear();
    setText(note, "");
  });
  return button;
}
