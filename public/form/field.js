// One field of a card: label, input, hint and inline error. A field knows the
// path of its value in the plan ("room.height") and reports what was typed.
import { h } from "../app/dom.js";

let serial = 0;

/**
 * Makes the field described by spec = {label, kind, hint, unit, choices,
 * optional}. kind is length, number, text, choice or check. ctx.changed(field,
 * settled) is called while typing (settled false) and on leaving (true).
 */
export function makeField(spec, path, ctx) {
  const id = `field-${++serial}`;
  const error = h("p", { class: "error", id: `${id}-error` });
  const input = makeInput(spec, id);
  const hintText = [spec.unit, spec.hint].filter(Boolean).join("; ");
  const hint = hintText ? h("p", { class: "hint", id: `${id}-hint` }, hintText) : null;
  input.setAttribute("aria-describedby", [hint && hint.id, error.id].filter(Boolean).join(" "));
  input.dataset.path = path;

  const label = h("label", { for: id }, spec.label);
  const el = spec.kind === "check"
    ? h("div", { class: "field field-check" }, input, label, hint, error)
    : h("div", { class: `field field-${spec.kind}` }, label, input, hint, error);

  const field = {
    spec, path, el, input,
    typing: false, // true from the first keystroke until the value settles
    applied: null, // the text last handed on, so that leaving it changes nothing
    held: false, // true while the text cannot be read: it stays until corrected

    get text() {
      return spec.kind === "check" ? String(input.checked) : input.value.trim();
    },

    /** Shows a value; a length needs its label in the chosen units. */
    show(value, label) {
      if (field.typing || field.held) return;
      field.applied = null;
      if (spec.kind === "check") input.checked = Boolean(value);
      else if (spec.kind === "length") input.value = !value && spec.optional ? "" : (label ?? "");
      else if (spec.kind === "choice") input.value = value || spec.choices[0][0];
      else input.value = value === undefined || (value === 0 && spec.optional) ? "" : String(value);
      field.fail("");
    },

    /** Keeps text that cannot be read, with the sentence why. */
    hold(message) {
      field.held = true;
      field.fail(message);
    },
    unhold() {
      field.held = false;
    },

    /** Shows a sentence beside the field, or clears it. */
    fail(message) {
      error.textContent = message;
      if (message) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
      if (message) el.closest("details:not([open])")?.setAttribute("open", "");
    },
  };

  input.addEventListener("input", () => {
    field.typing = true;
    ctx.changed(field, spec.kind === "check" || spec.kind === "choice");
  });
  input.addEventListener("change", () => {
    field.typing = false;
    ctx.changed(field, true);
  });
  return field;
}

function makeInput(spec, id) {
  if (spec.kind === "check") return h("input", { id, type: "checkbox" });
  if (spec.kind === "choice") {
    return h("select", { id }, ...spec.choices.map(([value, text]) => h("option", { value }, text)));
  }
  return h("input", {
    id, type: "text", autocomplete: "off", spellcheck: "false",
    autocapitalize: spec.kind === "text" ? "sentences" : "off",
    inputmode: spec.kind === "number" ? "decimal" : null,
  });
}

/** Number typed with a point or a comma; NaN when it is not one. */
export function parseNumber(text) {
  return /^[-+]?\d*[.,]?\d+$/.test(text) ? Number(text.replace(",", ".")) : NaN;
}
