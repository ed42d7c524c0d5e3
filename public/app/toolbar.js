// Undo and redo, the plan file, the demo and the units.
import { $, $$, active, download, slug } from "./dom.js";

const FILE_LIMIT = 2e6; // bytes; a plan is a few thousand

/**
 * open({linked, saved}, said) opens a plan by its text, none of both the demo;
 * say(sentence) tells of what went wrong.
 */
export function createToolbar(/** @type {State} */ state, { open, say }) {
  const { undo, redo } = state;
  $("#undo").addEventListener("click", undo);
  $("#redo").addEventListener("click", redo);
  $("#demo").addEventListener("click", () => open({}, "The demo is back. Undo returns to your room."));
  $("#save").addEventListener("click", save);
  $("#open").addEventListener("click", () => $("#open-file").click());
  $("#open-file").addEventListener("change", openFile);
  for (const radio of $$("input[name=units]")) {
    radio.addEventListener("change", () => state.edit((plan) => { plan.units = radio.value; }));
  }
  addEventListener("keydown", (e) => {
    // Inside a text field these keys belong to the field's own undo.
    if (!(e.ctrlKey || e.metaKey) || e.altKey || active().matches("input[type=text]")) return;
    if (e.key.toLowerCase() === "z") {
      e.preventDefault();
      (e.shiftKey ? redo : undo)();
    } else if (e.key.toLowerCase() === "y") {
      e.preventDefault();
      redo();
    }
  });

  function save() {
    const doc = state.good;
    download(new Blob([JSON.stringify(doc, null, 2), "\n"], { type: "application/json" }), `${slug(doc.title)}.json`);
  }

  async function openFile(e) {
    const [file] = e.target.files;
    e.target.value = "";
    if (!file) return;
    if (file.size > FILE_LIMIT) {
      say(`${file.name} is too large to be a plan (${(file.size / 1e6).toFixed(1)} MB).`);
      return;
    }
    const saved = await file.text();
    // No text means the demo to the solver; an empty file is a mistake.
    if (saved.trim() === "") say(`${file.name} is empty: a plan file is one JSON object. What was here is unchanged.`);
    else open({ saved }, `${file.name} is open.`);
  }

  function render() {
    $("#undo").disabled = !state.canUndo;
    $("#redo").disabled = !state.canRedo;
    for (const radio of $$("input[name=units]")) radio.checked = radio.value === state.draft.units;
  }
  state.onAnswered(render, render);
}
