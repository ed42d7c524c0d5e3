// "My room": three sizes and who plays, in a dialog. Everything else follows from
// them, worked out by the solver.
import { $, asSentence, h } from "../app/dom.js";
import { freshName } from "../app/edits.js";
import { makeField } from "../form/field.js";

const WALLS = ["room.length", "room.width", "room.height"];
const WHO = ["name", "height"];

/** @param {Shared} shared */
export function createMine({ state, solver, cards }) {
  const spec = (/** @type {Wire.Field[]} */ fields, path) => fields.find((field) => field.path === path);
  const walls = WALLS.map((path) => spec(cards.flatMap((card) => card.fields ?? []), path));
  const who = cards.flatMap((card) => card.lists ?? []).find(({ path }) => path === "players").fields;

  const rows = h("ol", { class: "rows" });
  const error = h("p", { class: "error" });
  const form = h("form", { method: "dialog", novalidate: true });
  const dialog = h("dialog", { class: "dialog mine", "aria-labelledby": "mine-heading" }, form);
  document.body.append(dialog);
  let fields = []; // of the walls
  let people = []; // [name, height] of everybody

  const field = (one, path) => makeField(one, path, () => {});

  function addPerson() {
    const taken = people.map(([name]) => ({ name: name.value }));
    const [name, height] = WHO.map((path) => field(spec(who, path), ""));
    name.show(freshName(taken, state.answer.fresh.players.name));
    const person = [name, height];
    people.push(person);
    const remove = h("button", {
      type: "button", class: "mine-remove", "aria-label": "Take this player out",
      onclick: () => {
        people = people.filter((one) => one !== person);
        row.remove();
        $("#mine-add").focus();
      },
    }, "Remove");
    const row = h("li", {}, h("fieldset", { class: "row" }, h("legend", { class: "visually-hidden" }, "Who plays"),
      h("div", { class: "fields" }, name.el, height.el), people.length > 1 ? h("div", { class: "row-buttons" }, remove) : null));
    rows.append(row);
    return height;
  }

  function open() {
    fields = walls.map((one) => field(one, one.path));
    people = [];
    rows.replaceChildren();
    error.textContent = "";
    form.replaceChildren(
      h("h2", { id: "mine-heading" }, "My room"),
      h("p", { class: "hint" }, state.good.units === "metric" ? "In metres: 6.40, or 21'." : "In feet: 21, 9'5\", or 2.87 m."),
      h("div", { class: "fields" }, ...fields.map(({ el }) => el)),
      h("h3", {}, "Who plays"), rows,
      h("button", { type: "button", class: "add", id: "mine-add", onclick: () => addPerson().input.focus() }, "Add somebody"),
      error,
      h("div", { class: "mine-buttons" }, h("button", { class: "stamp" }, "Draw my room"), h("button", { type: "button", onclick: () => dialog.close() }, "Cancel")));
    addPerson();
    dialog.showModal();
    fields[0].input.focus();
  }

  form.addEventListener("submit", async (e) => {
    e.preventDefault();
    const all = [...fields, ...people.flat()];
    for (const one of all) one.fail("");
    error.textContent = "";
    const [length, width, height] = fields.map(({ value }) => value);
    const players = people.map((person) => Object.fromEntries(WHO.map((path, i) => [path, person[i].value])));
    const reply = await solver.ask({ kind: "room", plan: { units: state.good.units, room: { length, width, height }, players } });
    if (!dialog.open) return;
    if (!reply.error) {
      dialog.close();
      await state.open(reply.plan, ["Your room is drawn. Undo returns to the one before.", ...(reply.notes ?? [])].join(" "), "begun");
      return;
    }
    const { field: path = "", message } = reply.error;
    const [, i, key] = /^players\[(\d+)\]\.(\w+)/.exec(path) ?? [];
    const wrong = i === undefined ? fields.find((one) => one.path === path) : people[Number(i)]?.[WHO.indexOf(key)];
    if (wrong) {
      wrong.fail(asSentence(message));
      wrong.input.focus();
    } else error.textContent = asSentence(message);
  });

  const button = $("#my-room");
  button.hidden = false;
  button.addEventListener("click", open);
}
