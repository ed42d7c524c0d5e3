// Where two plans and their answers differ, in the words of the form and of the
// solver. Nothing is worked out here: figures that the solver wrote are laid side by side.
import { valueAt } from "../app/paths.js";

const ARROW = "→";

/**
 * A plan with its answer.
 * @typedef {{plan: any, answer: Wire.SolveAnswer}} Side
 * One line of a table: what it is of, both labels and verdicts, "" where a side has none.
 * @typedef {{of: string, before: string, after: string, was: string, is: string, changed: boolean}} Line
 */

/**
 * What differs in the plans: "Ceiling height: 9 ft → 9 ft 6 in". label(metres) words a length.
 * @param {Wire.Card[]} cards @param {Side} a @param {Side} b @param {(metres: number) => Promise<string>} label
 */
export async function planLines(cards, a, b, label) {
  const lines = [];
  for (const { fields = [], parts = [], lists = [] } of cards) {
    for (const field of fields) lines.push(...fieldLine(field, field.path, field.path, "", a, b));
    for (const part of parts) {
      const [had, has] = [valueAt(a.plan, part.path), valueAt(b.plan, part.path)];
      if (Boolean(had) !== Boolean(has)) lines.push(`${part.title}: only in the ${had ? "first" : "second"}`);
      else if (had) for (const field of part.fields) lines.push(...fieldLine(field, `${part.path}.${field.path}`, `${part.path}.${field.path}`, `${part.title}, `, a, b));
    }
    for (const list of lists) lines.push(...await listLines(list, a, b, label));
  }
  return lines;
}

async function listLines(/** @type {Wire.List} */ list, a, b, label) {
  const rowsOf = ({ plan }) => new Map((valueAt(plan, list.path) ?? []).map((row, i) => [row.name, { row, i }]));
  const [before, after] = [rowsOf(a), rowsOf(b)];
  const lines = [];
  for (const name of new Set([...before.keys(), ...after.keys()])) {
    const [was, is] = [before.get(name), after.get(name)];
    const who = `${list.one} “${name}”`;
    if (!was || !is) lines.push(`${who}: only in the ${was ? "first" : "second"}`);
    else {
      const moved = list.path === "tees" ? await moves(was.row, is.row, label) : "";
      if (moved) lines.push(`${who} ${moved}`);
      for (const field of [...list.fields, ...(list.more?.fields ?? [])]) {
        if (moved && (field.path === "x" || field.path === "y")) continue;
        lines.push(...fieldLine(field, `${list.path}[${was.i}].${field.path}`, `${list.path}[${is.i}].${field.path}`, `${who}, `, a, b));
      }
    }
  }
  return lines;
}

/** How far a tee was moved, as one faces the target: "6 in to the right"; "" when it was not. */
async function moves(was, is, label) {
  const /** @type {[number, string, string][]} */ ways = [[is.y - was.y, "to the left", "to the right"], [is.x - was.x, "to the target", "to the back wall"]];
  const told = [];
  for (const [by, on, back] of ways) if (Math.abs(by) >= 0.0005) told.push(`${await label(Math.abs(by))} ${by > 0 ? on : back}`);
  return told.join(", ");
}

/** @param {Wire.Field} field */
function fieldLine(field, pathA, pathB, of, a, b) {
  const text = ({ plan, answer }, path) => {
    const value = valueAt(plan, path);
    return answer.figures.fields[path] || (field.choices?.find(([one]) => one === String(value ?? ""))?.[1] ?? (value === undefined ? "as guessed" : String(value)));
  };
  const [before, after] = [text(a, pathA), text(b, pathB)];
  return before === after || field.path === "name" ? [] : [`${of}${field.label}: ${before} ${ARROW} ${after}`];
}

/** The clearance of every surface in the checks that both are looked at. @returns {Line[]} */
export function surfaceLines(/** @type {Side} */ a, /** @type {Side} */ b) {
  return lay(a.answer.figures.surfaces.map(({ name, label, verdict }) => [name, label, verdict]), b.answer.figures.surfaces.map(({ name, label, verdict }) => [name, label, verdict]));
}

/** The tightest clearance of everyone with every club. @returns {Line[]} */
export function everyoneLines(/** @type {Side} */ a, /** @type {Side} */ b) {
  const of = ({ answer: { report, figures } }) => report.checks.map(({ player, club, tee, verdict }, i) => [`${player}, ${club}, ${tee}`, figures.checks[i], verdict]);
  return lay(of(a), of(b));
}

function lay(first, second) {
  const [before, after] = [new Map(first.map((one) => [one[0], one])), new Map(second.map((one) => [one[0], one]))];
  return [...new Set([...before.keys(), ...after.keys()])].map((of) => {
    const [, was = "", wasVerdict = ""] = before.get(of) ?? [];
    const [, is = "", isVerdict = ""] = after.get(of) ?? [];
    return { of, before: was, after: is, was: wasVerdict, is: isVerdict, changed: was !== is };
  });
}
