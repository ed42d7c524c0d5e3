// A link that a friend sent back: the owner's plan stays as it is, and the owner is
// asked whether to take the new player into it.
import { $, asSentence, h, keptTogether, styles } from "../app/dom.js";
import { driverOf } from "../app/edits.js";
import { newcomers, takeIn } from "./people.js";

/**
 * Asks about the plan of a link's text, above the owner's plan, which is open.
 * say(sentence) tells of what became of it.
 * @param {Shared} shared
 */
export async function askOwner({ state, solver }, text, say) {
  $("#received")?.remove();
  const reply = await solver.ask({ kind: "open", linked: text });
  if (reply.error) {
    say(`${asSentence(reply.error.message)} Your plan is as it was.`);
    return;
  }
  const sent = reply.plan;
  const mine = state.good.title || "your plan";
  const [who] = newcomers(state.good, sent);
  if (!who) {
    say(`Everybody who was sent is in “${mine}” already. Nothing was changed.`);
    return;
  }
  styles("share/share.css").catch(() => {}); // plainer without
  const swung = await solver.ask({ kind: "solve", plan: { ...sent, units: state.good.units }, focus: { player: who.name, club: "", tee: "" } });
  if (swung.error) {
    say(`${asSentence(swung.error.message)} Your plan is as it was.`);
    return;
  }
  const figure = (path) => swung.figures.fields[path];
  const club = driverOf(sent, who);
  const numbers = [`${figure(`players[${sent.players.indexOf(who)}].height`)} tall`, `${who.hand}-handed`, club < 0 ? "" : `driver ${figure(`clubs[${club}].length`)}`].filter(Boolean).join(", ");
  const elsewhere = sent.title && sent.title !== state.good.title ? ` They were sent from “${sent.title}”.` : "";

  const done = (then) => () => {
    question.remove();
    then();
  };
  const question = h("section", { class: "sheet received", id: "received", "aria-labelledby": "received-heading", tabindex: "-1" },
    h("h2", { id: "received-heading" }, `${who.name} sent numbers for your room`),
    h("p", {}, ...keptTogether(`${who.name}: ${numbers}.${elsewhere} Shall ${who.name} be one of the players of “${mine}”? Nothing is changed until you say so.`)),
    h("div", { class: "received-buttons" },
      h("button", { type: "button", class: "stamp", onclick: done(take) }, `Add ${who.name} to “${mine}”`),
      h("button", { type: "button", onclick: done(() => state.open(sent, `What ${who.name} sent is open. Undo returns to your plan.`)) }, "Look at what was sent"),
      h("button", { type: "button", onclick: done(() => say("Your plan is as it was.")) }, "Leave it")));

  async function take() {
    const focus = { player: "", club: "", tee: "" };
    await state.edit((plan) => { focus.player = takeIn(plan, sent, who); }, "", focus);
    if (state.refusal) {
      state.undo();
      say(`${who.name} could not be taken in: ${asSentence(state.refusal.message)} Your plan is as it was.`);
    } else say(`${focus.player} is one of the players now. Undo takes it back.`);
  }

  $("#notice").after(question);
  question.focus();
}
