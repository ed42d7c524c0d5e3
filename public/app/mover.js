// A tee on its way, by whichever part of the page moves it: the tape strip, the
// handle on a map, two typed distances. What it would mean comes at once; the
// plan changes when the tee is let go.
import { debounce } from "./dom.js";

const KEYS_MS = 600; // without a key before a tee that was moved by keys is let go

const toMillimetre = (v) => Math.round(v * 1000) / 1000;

/** Puts the i-th tee or seat of the plan to a place. */
export const put = (/** @type {State} */ state, list, i, x, y) => state.edit(
  (plan) => Object.assign(plan[list][i], { x: toMillimetre(x), y: toMillimetre(y) }), `${list}[${i}]`);

/** Asks the solver what it would mean to lay a tee at a place. */
export const wouldMean = (plan, tee, x, y) => ({ kind: "drag", plan, focus: { player: "", club: "", tee }, x, y });

/**
 * lead asks the solver of the verdict, which knows the swings already.
 * @param {State} state
 * @param {Solver["latest"]} lead
 */
export function createMover(state, lead) {
  const hearers = [];
  let going = null; // {tee, x, y} of the tee on its way
  let last = null; // the newest place, on its way or let go
  let read = Promise.resolve(); // once the solver has held it to the floor
  const release = debounce(drop, KEYS_MS);
  const tell = (/** @type {Wire.DragAnswer | null} */ reply) => {
    for (const hear of hearers) hear(reply, going);
  };

  function move(tee, x, y, byKeys = true) {
    going = last = { tee, x, y };
    tell(null); // the picture need not wait for the words
    if (byKeys) release(); // keys have no end as a finger has
    read = hold(going);
    return read;
  }

  async function hold(place) {
    const { tee, x, y } = place;
    const reply = await lead("drag", wouldMean(state.good, tee, x, y));
    if (!reply || reply.error) return;
    Object.assign(place, { x: reply.x, y: reply.y });
    if (place === going) tell(reply);
  }

  async function drop() {
    release.cancel();
    if (!going) return;
    const place = going;
    going = null;
    await read;
    if (last === place || last.tee !== place.tee) await to(place.tee, place.x, place.y);
  }

  async function to(tee, x, y) {
    const i = state.draft.tees.findIndex((one) => one.name === tee);
    if (i >= 0) await put(state, "tees", i, x, y);
  }

  return {
    move, drop, to,
    /** Where a tee is now: on its way, or in the plan. */
    at(tee) {
      return going?.tee === tee ? going : (state.good.tees.find((one) => one.name === tee) ?? state.good.tees[0]);
    },
    get going() { return going; },
    /**
     * Calls hear(reply, {tee, x, y}) as the tee moves: at once with null, then
     * with the solver's reading of the place.
     */
    onMoved: (hear) => hearers.push(hear),
  };
}
