// The keys of the page, in a dialog that "?" opens.
import { $, $$, active, h } from "../app/dom.js";

const KEYS = [
  ["← → Home End", "on the index: another sheet"],
  ["Ctrl Z", "undo; inside a field, of what is typed there"],
  ["Ctrl Shift Z, Ctrl Y", "redo"],
  ["↑ ↓", "in a field for a place on the floor: by an inch or a centimetre; with Shift by more"],
  ["← →", "on the tape's ball: off the middle"],
  ["Space", "on the stage: play, stop"],
  [", . ← →", "on the stage: a frame back, on; with Shift a quarter of one"],
  ["Esc", "shut what is open over the page"],
  ["?", "this list"],
];
const STORE_KEY = "wide-berth.keys";

/** The button and the "?" key; a box in the dialog switches the key off, for who speaks to the machine. */
export function createKeys() {
  const box = h("input", { type: "checkbox", id: "keys-on" });
  box.checked = kept() !== "off";
  box.addEventListener("change", () => keep(box.checked ? "on" : "off"));
  const dialog = h("dialog", { class: "dialog", "aria-labelledby": "keys-heading" },
    h("h2", { id: "keys-heading" }, "Keys"),
    h("dl", { class: "keys" }, ...KEYS.flatMap(([keys, does]) => [h("dt", {}, h("kbd", {}, keys)), h("dd", {}, does)])),
    h("p", { class: "keys-on" }, box, h("label", { for: "keys-on" }, "The key ? opens this list")),
    h("form", { method: "dialog" }, h("button", { class: "stamp" }, "Close")));
  document.body.append(dialog);

  const open = () => {
    if (!$$("dialog[open]").length) dialog.showModal();
  };
  $("#keys").addEventListener("click", open);
  addEventListener("keydown", (e) => {
    if (e.key !== "?" || e.ctrlKey || e.metaKey || e.altKey || !box.checked || active().matches("input[type=text], select")) return;
    e.preventDefault();
    open();
  });
}

function kept() {
  try {
    return localStorage.getItem(STORE_KEY);
  } catch {
    return null; // private windows refuse: the key works
  }
}

function keep(value) {
  try {
    localStorage.setItem(STORE_KEY, value);
  } catch {
    // It holds for this visit.
  }
}
