// Text alternatives of the drawings, from the labels the solver gave.

const VIEWS = { plan: "Plan from above", side: "Side elevation from the right wall", face: "End elevation looking at the target" };

/** A surface's name; one with a comma goes in quotes, or the sentence falls apart. */
export const named = (surface) => (surface.includes(",") ? `“${surface}”` : surface);

/** {plan, side, face}: one or two sentences each. */
export function describeViews(/** @type {Wire.Set} */ flat, { length, width, height }, { player, club, tee }, /** @type {Wire.Check} */ check) {
  const sizes = { plan: `${length} by ${width}`, side: `${length} long, ${height} high`, face: `${width} wide, ${height} high` };
  const who = `${player} with the ${club}${tee ? ` at the ${/tee$/i.test(tee) ? tee : `${tee} tee`}` : ""}`;
  return Object.fromEntries(Object.keys(VIEWS).map((name) => {
    const tape = flat?.[name]?.tape;
    const when = check?.nearest ? `, ${check.nearest.phase}` : "";
    const first = flat?.[name]?.first;
    const touch = first ? ` First touch: ${first.name}.` : "";
    const reading = tape ? ` ${check?.nearest?.part ?? "Club"} to ${named(tape.surface)}: ${tape.label}.` : "";
    return [name, `${VIEWS[name]}: room ${sizes[name]}; ${who} at the tightest moment${when}.${reading}${touch}`.replace(/\. (\w)/, (m, c) => `. ${c.toUpperCase()}`)];
  }));
}

/** The title block of the balls' drawing: for whom it is. */
export function titleBlock(plan, { player, club, tee }) {
  return [["Room", plan.title || "no name yet"], ["Player", player], ["Club", club], ["Tee", tee]];
}
