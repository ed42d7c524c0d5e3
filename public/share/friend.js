// What a friend sees: the room's name, a height, a driver, a hand, and the answer with
// the swinging golfer. All else of the page is there once it is asked for.
//
// The fields are those of the tape strip; share/friend.css puts away what a friend has
// not asked for while <html data-audience="friend">.
import { $, h, setText, VERDICT_WORDS, styles } from "../app/dom.js";
import { pack } from "../app/link.js";
import { putAudience } from "../app/address.js";
import { sign } from "../answer/verdict.js";
import { nameFriend, roomiest, YOU } from "./people.js";
import { addressFor, sendButton } from "./send.js";

export { roomForFriend } from "./people.js";

/** Fetches the looks, so that they are there before the first answer. */
export const dressForFriend = () => styles("share/friend.css").catch(() => {}); // plainer without

/** Builds the friend's page about an answer; seeAll() brings the rest of it. */
export function createFriend(/** @type {Shared} */ { state }, seeAll) {
  const title = h("p", { class: "friend-room" });
  const send = sendButton("Send it back", async () => addressFor(await pack(JSON.stringify(state.answer.sparse)), "owner"),
    () => ({ title: state.good.title, text: `${state.good.players[0].name} in ${state.good.title || "the room"}: ${state.answer.sentences.headline}` }));
  const add = h("button", { type: "button", class: "stamp", onclick: askName }, "Add me to this room");
  const all = h("button", { type: "button", onclick: leave }, "See the whole room");
  const steps = h("div", { class: "friend-steps" }, add, all);
  const foot = h("section", { class: "friend-foot", "aria-label": "What next" }, steps, send.said,
    h("p", { class: "friend-caution" }, "A model, not a promise: make the first swings slow, without a ball, with somebody watching."));
  $(".name").append(title);
  $("#sheet-swing").append(foot);
  $("#strip").classList.add("is-open");

  function askName() {
    const field = h("input", { type: "text", id: "friend-name", autocomplete: "given-name", maxlength: 40 });
    const form = h("form", { class: "friend-name" }, h("label", { for: "friend-name" }, "Your name"), field, h("button", { class: "stamp" }, "Add"));
    form.addEventListener("submit", async (e) => {
      e.preventDefault();
      const name = field.value.trim();
      if (!name) {
        field.focus();
        return;
      }
      await state.edit((plan) => nameFriend(plan, name), "", { ...state.focus, player: name });
      if (state.refusal) {
        setText(send.said, state.refusal.message);
        state.undo();
        return;
      }
      form.replaceWith(send.button, all);
      setText(send.said, `${name} is in the room. Send it back, and its owner is asked to take you in.`);
      send.button.focus();
    });
    steps.replaceChildren(form);
    field.focus();
  }

  function leave() {
    delete document.documentElement.dataset.audience;
    putAudience("");
    $("#strip").classList.remove("is-open");
    for (const el of [title, foot]) el.remove();
    seeAll();
    state.look(state.focus); // everybody hears the answer again, also who was put away
    $("#answer").focus();
  }

  state.onAnswered(() => {
    if (!foot.isConnected) return;
    const { check, good, answer } = state;
    setText(title, good.title || "A room");
    // Where there are several tees a friend stands where there is most room, and the sentence names it.
    const best = roomiest(answer.report.checks);
    if (best.tee !== check.tee) {
      state.look({ player: best.player, club: best.club, tee: best.tee });
      return;
    }
    sign(check.verdict);
    setText($("#verdict .verdict-word"), `${VERDICT_WORDS[check.verdict]}.`);
    document.title = `${VERDICT_WORDS[check.verdict]}: ${good.title || "Wide Berth"}`;
    if (good.players[0].name !== YOU && add.isConnected) steps.replaceChildren(send.button, all); // opened again after they gave their name
  });
}
