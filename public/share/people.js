// Who goes between plans: a room without its people for a friend's link, and the
// people of a link that came back into the owner's plan. Plans in, plans out.
import { copy } from "../app/paths.js";
import { driverOf, freshName, setDriver } from "../app/edits.js";

/** What a friend is called until they say their name. */
export const YOU = "You";

/**
 * The room for somebody new: nobody else's name or height is in it, and only the
 * driver, which reaches farthest. A room that already has one player only is theirs.
 */
export function roomForFriend(plan, height = plan.players[0].height) {
  if (plan.players.length === 1 && plan.clubs.length === 1) return plan;
  const driver = plan.clubs.find((club) => club.kind === "driver") ?? longest(plan.clubs);
  const { seats: _, ...room } = copy(plan);
  return { ...room, clubs: [copy(driver)], players: [{ name: YOU, height, hand: "right" }] };
}

const longest = (clubs) => clubs.reduce((a, b) => ((b.length ?? 0) > (a.length ?? 0) ? b : a));

/** The check with the most room. @param {Wire.Check[]} checks */
export const roomiest = (checks) => checks.reduce((a, b) => (b.clearance > a.clearance ? b : a));

/** The friend under a name of their own. */
export function nameFriend(plan, name) {
  plan.players[0].name = name;
}

/** The players of what was sent whom the plan has not got, under any name. */
export function newcomers(plan, sent) {
  const sign = (player, of) => JSON.stringify([player.height, player.hand, of.clubs[driverOf(of, player)]?.length]);
  const known = new Set(plan.players.map((player) => sign(player, plan)));
  return sent.players.filter((player) => !known.has(sign(player, sent)));
}

/**
 * Takes a player of what was sent into the plan: under a name that is free, with the
 * plan's driver if theirs is as long, else with one of their own, on the tees of those
 * who swing from the same side. Returns the name.
 */
export function takeIn(plan, sent, player) {
  const theirs = sent.clubs[driverOf(sent, player)] ?? sent.clubs[0];
  const club = plan.clubs.find(({ kind }) => kind === theirs.kind) ?? plan.clubs[0];
  const alike = plan.players.find(({ hand, tees }) => hand === player.hand && tees);
  const { clubs: _, tees: __, ...body } = copy(player);
  const one = { ...body, name: freshName(plan.players, player.name), clubs: [club.name] };
  if (alike) one.tees = copy(alike.tees);
  plan.players.push(one);
  if (theirs.kind === "driver" && (club.kind !== "driver" || club.length !== theirs.length)) setDriver(plan, one, theirs.length);
  return one.name;
}
