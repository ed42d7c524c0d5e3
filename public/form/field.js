// One field of a card, a row: label, what explains it, input and inline error. A
// field knows the path of its value in the plan ("room.height") and reports what
// was typed; the solver reads it.
import { asSentence, h } from "../app/dom.js";
import { explain } from "../help/word.js";
import { meaningIn } from "../help/glossary.js";

let serial = 0;

/**
 * Makes a field of the form that the solver described. changed(field, settled) is
 * called while typing (settled false) and on leaving (true).
 * @param {Wire.Field} spec
 * @param {string} path
 * @param {(field: any, settled: boolean) => void} changed
 */
export function makeField(spec, path, changed) {
  const id = `field-${++serial}`;
  const error = h("p", { class: "error", id: `${id}-error` });
  const input = makeInput(spec, id);
  const unit = spec.unit ? h("span", { class: "unit", id: `${id}-unit` }, spec.unit) : null;
  const help = [spec.hint, meaningIn(spec.label)].filter(Boolean).map(asSentence).join(" ");
  const about = help ? explain(spec.label, help) : null;
  input.setAttribute("aria-describedby", [unit?.id, about?.note.id, error.id].filter(Boolean).join(" "));
  input.dataset.path = path;

  const label = h("label", { for: id }, spec.label);
  const el = h("div", { class: `field field-${spec.kind}` },
    h("span", { class: "named" }, label, about?.button), h("span", { class: "value" }, input, unit), about?.note, error);

  const field = {
    spec, path, el, input,
    typing: false, // true from the first keystroke until the value settles
    applied: null, // the value last handed on, so that leaving it changes nothing

    /** What is in the field, as it goes into the plan. */
    get value() {
      return spec.kind === "check" ? input.checked : input.value.trim();
    },

    /** Shows a value of the plan; a number comes with the text the solver wrote for it. */
    show(value, text) {
      if (field.typing) return;
      field.applied = null;
      if (spec.kind === "check") input.checked = Boolean(value);
      else if (spec.kind === "choice") input.value = value || spec.choices[0][0];
      else input.value = typeof value === "number" ? (text ?? "") : (value ?? "");
    },

    /** Shows a sentence beside the field, or clears it. */
    fail(message) {
      error.textContent = message;
      if (message) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
      if (!message) return;
      for (let fold = el.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
    },
  };

  input.addEventListener("input", () => {
    field.typing = true;
    changed(field, spec.kind === "check" || spec.kind === "choice");
  });
  input.addEventListener("change", () => {
    field.typing = false;
    changed(field, true);
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
