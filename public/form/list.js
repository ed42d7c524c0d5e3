// Rows that come and go: lists (players, clubs, beams…) and parts that are
// there or not (the screen, the mat).
import { h } from "../app/dom.js";
import { valueAt, setAt, copy } from "../app/paths.js";
import { addRow, removeRow } from "../app/edits.js";

/**
 * A list with its rows, an add button, and remove and duplicate on each row.
 * @param {Wire.List} list
 */
export function buildList(list, plan, build) {
  const items = valueAt(plan, list.path) ?? [];
  const rows = items.map((item, i) => buildRow(list, item, i, plan, build));
  const add = h("button", {
    type: "button", class: "add", "data-list": list.path, "data-key": `add-${list.path}`,
    onclick: () => build.restructure((p) => addRow(p, list.path, build.fresh(list.path)), lastOf(list)),
  }, `Add a ${list.one}`);
  return h("div", { class: "list" }, list.bare ? null : h("h4", {}, list.title),
    rows.length ? h("ol", { class: "rows" }, ...rows) : null, add);
}

/** The path of the first field of a list's last row. @param {Wire.List} list */
const lastOf = (list) => (plan) => `${list.path}[${valueAt(plan, list.path).length - 1}].${list.fields[0].path}`;

/** @param {Wire.List} list */
function buildRow(list, item, i, plan, build) {
  const base = `${list.path}[${i}]`;
  const name = item.name || `${list.one} ${i + 1}`;
  const remove = h("button", {
    type: "button", "data-key": `remove-${base}`, "aria-label": `Remove ${name}`,
    onclick: () => build.restructure((p) => removeRow(p, list.path, i)),
  }, "Remove");
  const duplicate = list.duplicate && h("button", {
    type: "button", "data-key": `copy-${base}`, "aria-label": `Duplicate ${name}`,
    onclick: () => build.restructure((p) => addRow(p, list.path, valueAt(p, list.path)[i], build.fresh(list.path).name), lastOf(list)),
  }, "Duplicate");

  const row = h("fieldset", { class: "row" },
    h("legend", { class: "visually-hidden" }, `${list.one.replace(/^./, (c) => c.toUpperCase())} ${i + 1}`),
    h("div", { class: "fields" }, ...list.fields.map((spec) => build.field(spec, base))));
  row.append(h("div", { class: "row-buttons" }, duplicate || null, remove));
  if (list.more) {
    row.append(h("details", { class: "more", "data-key": `more-${base}` },
      h("summary", {}, list.more.title),
      h("div", { class: "fields" }, ...list.more.fields.map((spec) => build.field(spec, base))),
      ...(list.more.members ?? []).map((m) => buildMembers(m, base, plan, build))));
  }
  return h("li", {}, row);
}

/**
 * Check boxes for which clubs or tees a player uses; all ticked is stored as none named.
 * @param {Wire.Member} member
 */
function buildMembers(member, base, plan, build) {
  const names = plan[member.from].map((item) => item.name);
  const path = `${base}.${member.path}`;
  const boxes = names.map((name, i) => h("input", {
    type: "checkbox", "data-key": `${path}-${i}`,
    onchange: () => build.restructure((p) => {
      const chosen = names.filter((_, j) => boxes[j].checked);
      setAt(p, path, chosen.length === names.length ? undefined : chosen);
    }),
  }));
  build.member((p) => {
    const chosen = valueAt(p, path) ?? [];
    names.forEach((name, i) => {
      boxes[i].checked = chosen.length === 0 || chosen.includes(name);
      // The last tick stays: an empty list would mean all of them again.
      boxes[i].disabled = boxes[i].checked && names.length > 1 && chosen.length === 1;
    });
  });
  return h("fieldset", { class: "members" }, h("legend", {}, member.title),
    ...names.map((name, i) => h("label", {}, boxes[i], ` ${name}`)));
}

/**
 * A part of the plan that may be missing, with a box to have it or not.
 * @param {Wire.Part} part
 */
export function buildPart(part, plan, build) {
  const there = Boolean(valueAt(plan, part.path));
  const box = h("input", {
    type: "checkbox", "data-key": `has-${part.path}`,
    onchange: () => build.restructure((p) => setAt(p, part.path, box.checked ? copy(build.fresh(part.path)) : undefined)),
  });
  box.checked = there;
  return h("fieldset", { class: "part" }, h("legend", {}, h("label", {}, box, ` ${part.title}`)),
    there ? h("div", { class: "fields" }, ...part.fields.map((spec) => build.field(spec, part.path))) : null);
}
