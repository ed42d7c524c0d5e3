// Handing an address to somebody: the browser's share sheet where there is one, else
// the clipboard, else a field to copy from.
import { h } from "../app/dom.js";

/** The page's address with a plan's link, made for somebody. */
export const addressFor = (link, whom = "") => `${location.href.split("#")[0]}${link}${whom && `&for=${whom}`}`;

/** A button and the place where it says what became of it; address() may take a while. */
export function sendButton(label, address, about = () => ({})) {
  const said = h("p", { class: "send-said", role: "status" });
  const button = h("button", { type: "button", class: "stamp", onclick: send }, label);

  async function send() {
    const url = await address();
    const what = { ...about(), url };
    if (navigator.canShare?.(what)) {
      try {
        await navigator.share(what);
        said.replaceChildren("Handed to what you chose.");
        return;
      } catch (e) {
        if (e.name === "AbortError") return; // they thought better of it
      }
    }
    try {
      await navigator.clipboard.writeText(url);
      said.replaceChildren("The link is copied: paste it into a message.");
    } catch {
      const field = h("input", { readonly: true, value: url });
      said.replaceChildren(h("label", {}, "The browser would not copy by itself. Copy this address: ", field));
      field.select();
    }
  }
  return { button, said };
}
