// From what is typed into a field of the cards to an edit of the plan.
import { setAt, valueAt } from "../app/paths.js";
import { renameIn } from "../app/edits.js";

const USUAL_OF_KIND = ["length", "lie", "loft", "ball"]; // what a club's kind sets when left out

/**
 * Returns changed(field, settled) for the form. Figures apply while they are
 * typed, as text that the solver reads; names once they are left.
 */
export function createTyping(/** @type {State} */ state, tidy) {
  function apply(field) {
    const { path, value } = field;
    const before = valueAt(state.draft, path);
    field.applied = value;
    state.edit((plan) => {
      setAt(plan, path, value);
      const [, list, index, key] = /^(clubs|tees)\[(\d+)\]\.(\w+)$/.exec(path) ?? [];
      if (key === "name") renameIn(plan, list, before, value);
      if (list === "clubs" && key === "kind") for (const usual of USUAL_OF_KIND) delete plan.clubs[index][usual];
    }, path);
  }

  return (field, settled) => {
    if (settled && field.value === field.applied) tidy(field);
    else if (settled || field.spec.kind !== "text") apply(field);
  };
}
