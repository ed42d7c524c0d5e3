// Edits that touch more than one place of the plan: rows with names of their own,
// clubs or tees that players name, and the visitor of the tape strip.
import { copy, setAt, valueAt } from "./paths.js";

export const VISITOR = "Visitor";
export const VISITOR_CLUB = `${VISITOR}'s driver`;

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

/** The place in plan.clubs of the driver in a player's bag, -1 without one. */
export function driverOf(plan, player) {
  const has = (club) => club.kind === "driver" && (!player.clubs?.length || player.clubs.includes(club.name));
  return plan.clubs.findIndex(has);
}

const ownDriver = (name) => `${name}'s driver`;

/**
 * Gives a player a driver of a length, as typed. A driver that others swing too
 * stays theirs: the player gets one of their own, and players who swing
 * everything keep the clubs they had, by name.
 */
export function setDriver(plan, player, length) {
  const at = driverOf(plan, player);
  const driver = plan.clubs[at];
  const shared = driver && plan.players.some((one) => one !== player && (!one.clubs?.length || one.clubs.includes(driver.name)));
  if (driver && !shared) {
    driver.length = length;
    return;
  }
  const names = plan.clubs.map((club) => club.name);
  for (const one of plan.players) if (!one.clubs?.length) one.clubs = names;
  const name = freshName(plan.clubs, ownDriver(player.name));
  plan.clubs.push({ ...driver, name, kind: "driver", length });
  player.clubs = [...player.clubs.filter((club) => club !== driver?.name), name];
}

/** Adds somebody new, with the driver that lies there; their numbers are for typing over. */
export function addVisitor(plan, { height, hand }) {
  if (findVisitor(plan)) return;
  const driver = plan.clubs.find((club) => club.kind === "driver") ?? plan.clubs[0];
  plan.players.push({ name: VISITOR, height, hand, clubs: [driver.name] });
}

/** Makes the visitor one of the players, under a name that nobody has; returns it. */
export function keepVisitor(plan, wanted) {
  const visitor = findVisitor(plan);
  visitor.name = freshName(plan.players, wanted);
  const own = plan.clubs.find((club) => club.name === VISITOR_CLUB);
  if (own) {
    own.name = freshName(plan.clubs, ownDriver(visitor.name));
    renameIn(plan, "clubs", VISITOR_CLUB, own.name);
  }
  return visitor.name;
}

/** Takes the visitor out, and the driver that was theirs alone. */
export function removeVisitor(plan) {
  plan.players = plan.players.filter((p) => p.name !== VISITOR);
  if (!plan.clubs.some((c) => c.name === VISITOR_CLUB)) return;
  plan.clubs = plan.clubs.filter((c) => c.name !== VISITOR_CLUB);
  const all = plan.clubs.map((c) => c.name);
  for (const player of plan.players) {
    if (player.clubs && all.every((n) => player.clubs.includes(n))) delete player.clubs;
  }
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
