// The share dialog: the whole plan as a link, and a link for a friend, who is asked
// for a height and a driver and reads the answer.
import { $, $$, h, styles } from "../app/dom.js";
import { pack } from "../app/link.js";
import { roomForFriend } from "./people.js";
import { addressFor, sendButton } from "./send.js";

/** Opens the dialog. */
export function openShare(/** @type {Shared} */ shared) {
  const { state } = shared;
  if ($$("dialog[open]").length) return;
  styles("share/share.css").catch(() => {}); // plainer without
  const { answer, good } = state;
  const room = roomForFriend(answer.sparse, answer.fresh.players.height);
  const title = good.title || "My room";
  const dialog = h("dialog", { class: "dialog share", id: "share-dialog", "aria-labelledby": "share-heading" },
    h("h2", { id: "share-heading" }, "Share"),
    part("For a friend", "Opens with this room and two fields, height and driver, and says whether their swing fits. Nobody else's name or height is in it. They can send their numbers back.",
      sendButton("Send to a friend", async () => addressFor(await pack(JSON.stringify(room)), "friend"), () => ({ title, text: `Will your swing fit? ${title}` }))),
    part("The whole plan", "Everybody, every club and everything that hangs. Who opens it changes a copy of their own.",
      sendButton("Send the plan", async () => addressFor(await pack(JSON.stringify(answer.sparse))), () => ({ title }))),
    part("On a page of yours", "For a build blog: a frame with this room's drawing, and the swinging golfer for who taps it.", embedButton(shared)),
    part("On paper", "A page for the wall of the room and one for who builds it, to scale, with this plan's link as a code.", printButton(shared)),
    h("form", { method: "dialog" }, h("button", {}, "Close")));
  dialog.addEventListener("close", () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
}

const part = (heading, text, { button, said }) => h("section", { class: "share-part" }, h("h3", {}, heading), h("p", {}, text), button, said);

const embedButton = (/** @type {Shared} */ shared) => partButton("Embed this room", async () => {
  const { openEmbed } = await import("./embed.js");
  $("#share-dialog").close();
  openEmbed(shared);
});

const printButton = (/** @type {Shared} */ shared) => partButton("Print the sheet", async () => (await import("../print/print.js")).printPaper(shared));

/** A button that fetches what it needs when it is pressed. */
function partButton(label, does) {
  const said = h("p", { role: "status" });
  const button = h("button", { type: "button", class: "stamp", onclick: async () => {
    button.disabled = true;
    said.replaceChildren();
    try {
      await does();
    } catch {
      said.replaceChildren("This part could not be fetched. Try again when the network is back.");
    }
    button.disabled = false;
  } }, label);
  return { button, said };
}
