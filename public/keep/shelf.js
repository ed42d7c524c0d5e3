// The shelf: plans that are kept in this browser under names, each under a key of its
// own in its storage, so that one that is damaged, or two tabs, spoil no other.
import { copy } from "../app/paths.js";
import { freshName } from "../app/edits.js";

const PREFIX = "wide-berth.kept.";
const ASIDE = 5; // plans that were set aside by the page itself and are kept, the newest

/**
 * A kept plan. at is when it was put there, ms since 1970; aside tells that the page
 * put it there, because another plan took its place.
 * @typedef {{id: string, name: string, at: number, aside: boolean, plan: any}} Kept
 */

/**
 * What lies on the shelf, the newest first, and how many of it cannot be read. Throws
 * where the browser lets nothing be kept.
 */
export function readShelf() {
  const /** @type {Kept[]} */ kept = [];
  let damaged = 0;
  for (let i = 0; i < localStorage.length; i++) {
    const key = localStorage.key(i);
    if (!key.startsWith(PREFIX)) continue;
    const one = parsed(localStorage.getItem(key));
    if (typeof one?.name === "string" && isPlan(one.plan)) kept.push({ id: key.slice(PREFIX.length), name: one.name, at: Number(one.at) || 0, aside: Boolean(one.aside), plan: one.plan });
    else damaged++;
  }
  kept.sort((a, b) => b.at - a.at || a.name.localeCompare(b.name));
  return { kept, damaged };
}

function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** Whether it looks like a plan; whether it is one the solver says. */
export const isPlan = (value) => Boolean(value) && typeof value === "object" && typeof value.room === "object";

const write = ({ id, ...one }) => localStorage.setItem(PREFIX + id, JSON.stringify(one));

/** Puts a plan on the shelf under a name that is free. @returns {Kept} */
export function putOn(plan, wanted, aside = false) {
  const { kept } = readShelf();
  const one = { id: crypto.randomUUID?.() ?? String(Math.random()).slice(2), name: freshName(kept, wanted.trim() || "Room"), at: Date.now(), aside, plan: copy(plan) };
  write(one);
  return one;
}

/** Puts back what was taken away, or changes what lies there. */
export const putBack = (/** @type {Kept} */ one) => write(one);

/** Gives another name, one that is free. @returns {Kept} */
export function rename(/** @type {Kept} */ one, wanted) {
  const others = readShelf().kept.filter(({ id }) => id !== one.id);
  const renamed = { ...one, name: freshName(others, wanted.trim() || one.name), aside: false };
  write(renamed);
  return renamed;
}

/** Takes a plan away. */
export const takeOff = (id) => localStorage.removeItem(PREFIX + id);

/**
 * Sets the plan that lies in the browser aside, by its text, because another takes its
 * place. Returns where it is, in words; "" when it is no plan. mine is what this page had
 * left there, "" for nothing: then another page put the plan in its place.
 */
export function setAside(text, mine = "") {
  const plan = parsed(text);
  if (!isPlan(plan)) return "";
  const { kept } = readShelf();
  const there = kept.find((one) => JSON.stringify(one.plan) === text) ?? putOn(plan, plan.title || "Room", true);
  for (const one of kept.filter(({ aside, id }) => aside && id !== there.id).slice(ASIDE - 1)) takeOff(one.id);
  return mine
    ? `Another tab kept a plan of its own meanwhile: it is under Plans as “${there.name}”, and this one is kept now.`
    : `The plan you worked on before is under Plans as “${there.name}”.`;
}

/** Why the browser did not keep something, in words. */
export const whyNot = (error) => (error?.name === "QuotaExceededError"
  ? "This browser has no room left for another plan. Take one away, or save some as a file first."
  : "This browser lets the page keep nothing, as in a private window. Save the plan as a file, or copy its link.");

/** A file of kept plans as text. */
export const fileOf = (/** @type {{name: string, plan: any}[]} */ plans) => `${JSON.stringify({ kept: plans.map(({ name, plan }) => ({ name, plan })) }, null, 2)}\n`;

/**
 * The plans of a file: of kept ones, or one plan by itself, which goes by its title.
 * null when there is none in it.
 * @returns {{name: string, plan: any}[] | null}
 */
export function plansIn(text) {
  const value = parsed(text.replace(/^\ufeff/, ""));
  const all = Array.isArray(value?.kept) ? value.kept : isPlan(value) ? [{ name: value.title, plan: value }] : [];
  const plans = all.filter((one) => isPlan(one?.plan)).map(({ name, plan }) => ({ name: String(name || plan.title || "Room"), plan }));
  return plans.length ? plans : null;
}
