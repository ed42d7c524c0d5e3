// The tape strip: who swings, how tall, with how long a driver, and how far the
// ball stands off the middle. What is typed applies by itself; the slider moves
// the tee at once.
import { $, active, h, setText } from "../app/dom.js";
import { addVisitor, driverOf, findVisitor, keepVisitor, removeVisitor, setDriver, VISITOR } from "../app/edits.js";

const NEW = "\u0000new"; // no player's name

/** @param {State} state @param {Mover} mover @param {(text: string) => Promise<{metres?: number, error?: Wire.Problem}>} length */
export function createStrip(state, mover, length) {
  const form = $("#strip");
  const who = $("#strip-who");
  const input = { height: $("#strip-height"), span: $("#strip-span"), club: $("#strip-club"), off: $("#strip-off"), back: $("#strip-back") };
  const slide = $("#strip-slide");
  const hints = Object.fromEntries(["height", "span", "club"].map((key) => [key, $(`#strip-${key}-hint`).textContent]));
  let typing = null; // the field that somebody is typing into
  let first = true; // nothing was answered yet: what stands in a field somebody typed

  const index = () => Math.max(state.draft.players.findIndex(({ name }) => name === state.focus.player), 0);
  const teeIndex = () => Math.max(state.draft.tees.findIndex(({ name }) => name === state.focus.tee), 0);
  const tee = () => state.good.tees[teeIndex()];
  const fieldText = (path) => state.answer.figures.fields[path] ?? "";

  function fail(key, message) {
    setText($(`#strip-${key}-error`), message);
    if (message) input[key].setAttribute("aria-invalid", "true");
    else input[key].removeAttribute("aria-invalid");
    if (message) unfold(true);
  }

  // Who
  who.addEventListener("change", async () => {
    if (who.value !== NEW) {
      state.look({ player: who.value, club: "", tee: "" });
      return;
    }
    const { height, hand } = state.answer.fresh.players;
    input.height.focus();
    await state.edit((plan) => addVisitor(plan, { height, hand }), "", { player: VISITOR, club: "", tee: "" });
    if (active() === input.height && !typing) input.height.select(); // their number, for typing over
  });
  $("#strip-remove").addEventListener("click", () => {
    state.edit(removeVisitor);
    who.focus();
  });
  $("#strip-keep").addEventListener("click", askName);

  /** Asks what the visitor is called, in the place of the button. */
  function askName() {
    const field = h("input", { type: "text", id: "strip-name", autocomplete: "off" });
    const row = h("span", { class: "strip-name" }, h("label", { for: "strip-name" }, "Name"), field, h("button", { type: "button", onclick: take }, "Keep"));
    const keep = $("#strip-keep");
    function take() {
      const name = field.value.trim();
      if (!name) {
        field.focus();
        return;
      }
      row.replaceWith(keep);
      const focus = { player: "", club: "", tee: "" };
      state.edit((plan) => { focus.player = keepVisitor(plan, name); }, "", focus);
    }
    field.addEventListener("keydown", (e) => {
      if (e.key === "Enter") take();
      if (e.key === "Enter" || e.key === "Escape") e.preventDefault();
      if (e.key === "Escape") {
        row.replaceWith(keep);
        keep.focus();
      }
    });
    keep.replaceWith(row);
    field.focus();
  }

  // What is typed
  const apply = {
    height: (text) => state.edit((plan) => { plan.players[index()].height = text; }, `players[${index()}].height`),
    span: (text) => state.edit((plan) => {
      if (text) plan.players[index()].span = text;
      else delete plan.players[index()].span;
    }, `players[${index()}].span`),
    // Another driver is another check of the player: the solver picks the worst.
    club: (text) => text && state.edit((plan) => setDriver(plan, plan.players[index()], text), "strip.club", { ...state.focus, club: "" }),
    async off(text) {
      const way = /^(.*?)\s*\b(l|left|r|right)\.?$/i.exec(text);
      if (/middle/i.test(text)) return mover.to(tee().name, tee().x, state.good.room.width / 2);
      const { metres, error } = await length(way ? way[1] : text.replace(/^[-\u2212]/, ""));
      const { width } = state.good.room;
      fail("off", error?.message ?? (metres < width / 2 ? "" : `${text} is outside the room, which is ${fieldText("room.width")} wide`));
      if (error || metres >= width / 2) return undefined;
      const left = way ? /^l/i.test(way[2]) : !/^[-\u2212]/.test(text);
      return mover.to(tee().name, tee().x, width / 2 + (left ? metres : -metres));
    },
    back: (text) => state.edit((plan) => { plan.tees[teeIndex()].x = text; }, `tees[${teeIndex()}].x`),
  };
  const put = (key) => state.good && apply[key](input[key].value.trim()); // before the first answer it waits for that
  for (const [key, field] of Object.entries(input)) {
    let last = "";
    field.addEventListener("focus", () => { last = field.value; });
    field.addEventListener("input", () => {
      typing = key;
      if (key !== "off" && key !== "back") put(key); // half a distance would move the tee
    });
    field.addEventListener("change", () => {
      typing = null;
      if (field.value === last) return;
      last = field.value;
      put(key);
    });
    field.addEventListener("blur", () => { typing = null; });
  }
  form.addEventListener("submit", (e) => e.preventDefault());
  for (const radio of form.elements["strip-hand"]) {
    radio.addEventListener("change", () => state.good && state.edit((plan) => { plan.players[index()].hand = radio.value; }));
  }

  // The slider: its right end is the right wall, as one faces the target.
  slide.addEventListener("input", () => {
    const one = mover.at(tee().name);
    mover.move(tee().name, one.x, state.good.room.width / 2 - Number(slide.value), false); // it tells when it is let go
  });
  slide.addEventListener("change", () => mover.drop());

  // Folded on a phone
  const opener = $("#strip-open");
  function unfold(open) {
    form.classList.toggle("is-open", open);
    opener.setAttribute("aria-expanded", String(open));
    setText(opener, open ? "Done" : "Change");
  }
  opener.addEventListener("click", () => unfold(!form.classList.contains("is-open")));

  function showPlace(y, off, back) {
    if (active() !== slide) slide.value = String(state.good.room.width / 2 - y);
    slide.setAttribute("aria-valuetext", off);
    if (typing !== "off") input.off.value = off;
    if (typing !== "back") input.back.value = back;
  }
  mover.onMoved((reply) => reply && reply.x !== undefined && showPlace(reply.y, reply.off, reply.labels[0]));

  function show(key, text) {
    if (typing !== key) input[key].value = text;
    const read = typing === key && text && input[key].value.trim() !== text;
    if (hints[key]) setText($(`#strip-${key}-hint`), read ? `Read as ${text}` : hints[key]);
  }

  function render() {
    const early = first ? Object.entries(input).map(([key, { value }]) => [key, value.trim()]).filter(([, text]) => text) : [];
    first = false;
    for (const key of Object.keys(input)) fail(key, "");
    const { players, room } = state.good;
    const i = index();
    who.replaceChildren(...players.map(({ name }) => h("option", { value: name }, name)),
      findVisitor(state.good) ? "" : h("option", { value: NEW }, "Somebody new\u2026"));
    who.value = players[i].name;
    const club = driverOf(state.good, players[i]);
    show("height", fieldText(`players[${i}].height`));
    show("span", fieldText(`players[${i}].span`));
    show("club", club < 0 ? "" : fieldText(`clubs[${club}].length`));
    form.elements["strip-hand"].value = players[i].hand;
    $("#strip-visitor").hidden = players[i].name !== VISITOR;
    slide.min = String(-room.width / 2);
    slide.max = String(room.width / 2);
    const off = state.answer.figures.off[teeIndex()];
    showPlace(tee().y, off, fieldText(`tees[${teeIndex()}].x`));
    setText($("#strip-told"), [players[i].name, input.height.value, club < 0 ? "" : `${input.club.value} driver`, off].filter(Boolean).join(" \u00b7 "));
    for (const [key, text] of early) apply[key](text);
  }

  /** Puts a sentence beside the field that it is about. */
  function refuse() {
    const { field = "", message } = state.refusal;
    const i = index();
    const club = driverOf(state.draft, state.draft.players[i]);
    const place = `tees[${teeIndex()}]`;
    const key = { [`players[${i}].height`]: "height", [`players[${i}].span`]: "span", [`clubs[${club}].length`]: "club", [`${place}.y`]: "off", [`${place}.x`]: "back" }[field];
    for (const one of Object.keys(input)) fail(one, one === key ? message : "");
  }

  state.onAnswered(render, refuse);
}
