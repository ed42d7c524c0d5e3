// Edits that touch more than one place of the plan: the visitor of the quick
// row, and clubs or tees that players name.

export const VISITOR = "Visitor";
export const VISITOR_CLUB = "Visitor's driver";

export const findVisitor = (plan) => plan.players.find((p) => p.name === VISITOR);

/** Adds a club for everybody who so far swung every club but the visitor's own. */
export function addClub(plan, club) {
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
 * Puts the visitor into the plan, or updates them. Their own driver is theirs
 * alone: players who swing everything get the other clubs by name.
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
