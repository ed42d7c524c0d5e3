// The one state of the page: the plan as it is typed, the plan of the last answer,
// that answer, what is looked at, undo and redo. Parts of the page change it by its
// methods and hear of one event, "answered".
import { copy } from "./paths.js";

const HISTORY_LIMIT = 200;
const MERGE_MS = 1500; // edits of one field closer than this are one undo step
const MERGED_MS = 5000; // of such edits that one undo step takes at most
const HALF_MS = 250; // what somebody types is half a figure until they pause for this long: only then they hear why it is refused

/** Nobody's check: the solver chooses, the worst. */
export const ANYBODY = { player: "", club: "", tee: "" };

/**
 * Where the state gets its answers and leaves its plan.
 * @typedef {object} Host
 * @property {(request: Wire.Request) => Promise<(Wire.SolveAnswer & {error?: Wire.Problem}) | null>} ask null when a newer request took its place
 * @property {(busy: boolean) => void} busy from an edit until its answer is shown and kept
 * @property {(answer: Wire.SolveAnswer, whose: Whose) => Promise<void>} keep
 *
 * Whose plan it is: "looked" at, from elsewhere and as it came; "begun" by the visitor
 * in place of the one before; "edited" by the visitor.
 * @typedef {"looked" | "begun" | "edited"} Whose
 */

/** @param {Host} host */
export function createState(host) {
  const past = [];
  const future = [];
  const hearers = [];
  let mark = { path: "", at: 0, since: 0 };
  let /** @type {Whose} */ whose = "looked";
  let revision = 0; // of the draft: an answer to an older one must not overwrite it

  const state = {
    /** What the form shows: a figure may be the text that was typed. It may not pass the solver. */
    draft: null,
    /** The last plan that the solver accepted. @type {any} */
    good: null,
    /** The solver's answer for good. @type {Wire.SolveAnswer} */
    answer: null,
    /** Why the draft was not accepted. @type {Wire.Problem} */
    refusal: null,
    focus: ANYBODY,
    /** What to say about the last thing done. */
    said: "",
    /** Counts the plans that came as a whole: what was typed into the form before is void. */
    opened: 0,

    /** The check that is looked at. */
    get check() {
      const { player, club, tee } = state.focus;
      return state.answer?.report.checks.find((c) => c.player === player && c.club === club && c.tee === tee);
    },

    /**
     * The event: hear is called after every accepted answer, at once if there is
     * one, and refused after every draft that the solver could not use.
     */
    onAnswered(hear, refused = () => {}) {
      hearers.push({ hear, refused });
      if (state.answer) hear(state);
    },

    /**
     * Replaces the draft by an edited copy and asks for its answer. path names the
     * edited field, "" for any other edit. Resolves when the answer is shown.
     */
    edit(change, path = "", focus = state.focus) {
      const next = copy(state.draft);
      change(next);
      state.draft = next;
      whose = "edited";
      const { length, width, height } = state.good.room;
      return solve({ path, focus, walls: { length, width, height } });
    },

    /** Looks at another check; a name left empty is chosen by the solver, the worst of them. */
    look: (focus) => solve({ focus, fresh: true }),

    /**
     * Takes a whole plan (a file, a link, the demo, a room). Resolves to why the solver
     * refused it, and then everything is as it was; else to null.
     * @param {Whose} as
     */
    open(plan, said = "", as = "looked") {
      return replace(copy(plan), { said, fresh: !state.good, as });
    },

    /** The plan that Undo goes back to, if any. */
    get previous() {
      return past.at(-1);
    },
    get canUndo() {
      return past.length > 0 || isDirty();
    },
    get canRedo() {
      return future.length > 0;
    },
    /** A draft that never passed is simply dropped. */
    undo() {
      if (isDirty()) replace(copy(state.good), { fresh: true });
      else if (past.length) {
        future.push(state.good);
        replace(copy(past.pop()), { fresh: true });
      }
    },
    redo() {
      if (!future.length) return;
      past.push(state.good);
      replace(copy(future.pop()), { fresh: true });
    },
  };

  const isDirty = () => Boolean(state.good) && JSON.stringify(state.good) !== JSON.stringify(state.draft);

  async function replace(plan, { as = /** @type {Whose} */ ("edited"), ...how }) {
    const before = { draft: state.draft, refusal: state.refusal, whose };
    mark = { path: "", at: 0, since: 0 };
    state.opened++;
    state.draft = plan;
    whose = as;
    const error = await solve({ ...how, whole: true });
    if (error) {
      ({ draft: state.draft, refusal: state.refusal, whose } = before);
      host.busy(false);
    }
    return error;
  }

  /**
   * fresh makes no undo step (a load, an undo). walls are those before an edit: the
   * solver moves along what nobody has touched since it followed from them. A whole
   * plan that is refused is nobody's typing: nobody hears of it, its error is returned.
   */
  async function solve({ path = "", fresh = false, focus = state.focus, said = "", walls = undefined, whole = false }) {
    const mine = ++revision;
    const newest = () => mine === revision;
    host.busy(true);
    const reply = await host.ask({ kind: "solve", plan: state.draft, focus: known(focus, state.draft), walls });
    if (reply?.error && path) await new Promise((done) => setTimeout(done, HALF_MS));
    if (!reply || (reply.error && !newest())) return null; // a newer edit took its place
    if (reply.error && whole) return reply.error;
    state.refusal = reply.error ?? null;
    if (!reply.error) {
      record(reply.plan, path, fresh);
      state.good = reply.plan;
      if (newest()) state.draft = copy(reply.plan);
      state.answer = reply;
      state.focus = reply.focus;
      state.said = [said, ...reply.notes].filter(Boolean).join(" ");
    }
    for (const { hear, refused } of hearers) (reply.error ? refused : hear)(state);
    if (!reply.error) await host.keep(reply, whose);
    if (newest()) host.busy(false);
    return null;
  }

  /** Makes an undo step of the plan before this one. */
  function record(plan, path, fresh) {
    if (fresh || !state.good || JSON.stringify(state.good) === JSON.stringify(plan)) return;
    const now = Date.now();
    const merges = path !== "" && path === mark.path && now - mark.at < MERGE_MS && now - mark.since < MERGED_MS;
    if (!merges) past.push(state.good);
    if (past.length > HISTORY_LIMIT) past.shift();
    future.length = 0;
    mark = { path, at: now, since: merges ? mark.since : now };
  }

  return state;
}

/**
 * What the plan still has of the focus: with the player gone it is anybody's, and
 * of a club or tee that the player no longer uses the solver picks another, the worst.
 */
function known({ player, club, tee }, plan) {
  const one = plan.players?.find(({ name }) => name === player);
  if (player && !one) return ANYBODY;
  const used = (key, name) => (plan[key] ?? []).some((item) => item.name === name) && (!one?.[key]?.length || one[key].includes(name));
  return { player, club: used("clubs", club) ? club : "", tee: used("tees", tee) ? tee : "" };
}
