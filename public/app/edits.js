// Edits that touch more than one place of the plan: rows with names of their own,
// clubs or tees that players name, the visitor of the quick row.
import { copy, setAt, valueAt } from "./paths.js";

export const VISITOR = "Visitor";
export const VISITOR_CLUB = "Visitor's driver";

export const findVisitor = (plan) => plan.players.find((p) => p.name === VISITOR);

/** A name not yet taken in the list: "tee", "tee 2", "tee 3"… */
export function freshName(list, stem) {
  const taken = new Set((list ?? []).map((item) => item.name));
  if (!taken.has(stem)) return stem;
  let n = 2;
  while (taken.has(`${stem} ${n}`)) n++;
  return `${stem} ${n}`;
}

/** Adds a row to the list of a path, under a name made of the stem. */
export function addRow(plan, path, row, stem = row.name) {
  const items = valueAt(plan, path) ?? [];
  const named = { ...copy(row), name: freshName(items, stem) };
  if (path === "clubs") addClub(plan, named);
  else setAt(plan, path, [...items, named]);
}

/** Takes a row out, and its name out of the players who used it. */
export function removeRow(plan, path, i) {
  const [gone] = valueAt(plan, path).splice(i, 1);
  if (path === "clubs" || path === "tees") renameIn(plan, path, gone.name, null);
}

/** Adds a club for everybody who so far swung every club but the visitor's own. */
function addClub(plan, club) {
  const shared = plan.clubs.filter((c) => c.name !== VISITOR_CLUB).map((c) => c.name);
  for (const player of plan.players) {
    const names = player.clubs ?? [];
    if (player.name !== VISITOR && names.length > 0 && shared.every((n) => names.includes(n))) player.clubs = [...names, club.name];
  }
  plan.clubs.push(club);
}

/** Follows a club's or tee's new name in every player; null takes it out. */
export function renameIn(plan, key, from, to) {
  for (const player of plan.players) {
    if (!player[key]) continue;
    player[key] = player[key].flatMap((name) => (name !== from ? [name] : to === null ? [] : [to]));
    if (player[key].length === 0) delete player[key];
  }
}

/**
 * Puts the visitor into the plan, or updates them; height and length may be as
 * typed. Their own driver is theirs alone: players who swing everything get the
 * other clubs by name.
 */
export function setVisitor(plan, { height, hand, length }) {
  let visitor = findVisitor(plan);
  if (!visitor) plan.players.push((visitor = { name: VISITOR }));
  visitor.height = height;
  visitor.hand = hand;

  const own = plan.clubs.find((c) => c.name === VISITOR_CLUB);
  if (!length) {
    dropVisitorClub(plan);
    const driver = plan.clubs.find((c) => c.kind === "driver") ?? plan.clubs[0];
    if (driver) visitor.clubs = [driver.name];
    return;
  }
  if (own) own.length = length;
  else {
    const others = plan.clubs.map((c) => c.name);
    for (const player of plan.players) {
      if (player !== visitor && others.length > 0 && !player.clubs?.length) player.clubs = others;
    }
    plan.clubs.push({ name: VISITOR_CLUB, kind: "driver", length });
  }
  visitor.clubs = [VISITOR_CLUB];
}

function dropVisitorClub(plan) {
  if (!plan.clubs.some((c) => c.name === VISITOR_CLUB)) return;
  plan.clubs = plan.clubs.filter((c) => c.name !== VISITOR_CLUB);
  const all = plan.clubs.map((c) => c.name);
  for (const player of plan.players) {
    if (player.name !== VISITOR && player.clubs && all.every((n) => player.clubs.includes(n))) delete player.clubs;
  }
}

export function removeVisitor(plan) {
  dropVisitorClub(plan);
  plan.players = plan.players.filter((p) => p.name !== VISITOR);
}

/** One tee for each hand, each where the solver has found most room for its players. */
export function twoTees(plan, hands) {
  const names = hands.map((hand) => hand.name);
  plan.tees = hands.map(({ name, x, y }) => ({ name, x, y }));
  for (const player of plan.players) {
    const i = hands.findIndex((hand) => hand.players.includes(player.name));
    if (i >= 0) player.tees = [names[i]];
    else delete player.tees;
  }
}
