// The fields of these sheets. What is typed is read by the builder's program, which
// answers with the plan's members changed, or with a sentence that stays at the field.
import { asSentence, h } from "../app/dom.js";
import { makeField } from "../form/field.js";
import { fold } from "./facts.js";

export function createFields({ set }) {
  const made = new Map(); // by path

  async function changed(field, settled) {
    if (!settled) return;
    field.fail(asSentenceOrNothing(await set(field.path, String(field.value))));
  }

  return {
    /** The fields of a group, made once and shown anew. @param {any[]} shown */
    group(shown, name) {
      return shown.filter((one) => one.group === name).map((spec) => {
        const key = spec.path + spec.choices?.length;
        let field = made.get(key);
        if (!field) {
          field = makeField(spec, spec.path, changed);
          made.set(key, field);
        }
        field.show(spec.value, spec.text);
        if (spec.kind === "length" || spec.kind === "number") field.input.value = field.typing ? field.input.value : spec.text;
        field.fail("");
        return field.el;
      });
    },
  };
}

const asSentenceOrNothing = (text) => (text ? asSentence(text) : "");

/** A group of fields under its name, which only screen readers hear where a fold shows it. */
export const fieldset = (name, fields, told = true) => h("fieldset", { class: "build-fields" }, h("legend", { class: told ? null : "visually-hidden" }, name), ...fields);

/** The same, folded away. */
export const foldedFields = (name, fields) => fold(name, fieldset(name, fields, false));
