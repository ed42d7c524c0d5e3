// The plan document in the page: draft, last good plan, undo and redo, and
// where they are kept (the address after #p=, and localStorage).

const STORE_KEY = "wide-berth.plan";
const HISTORY_LIMIT = 200;
const MERGE_MS = 1500; // edits of one field closer than this are one undo step

export const copy = (value) => structuredClone(value);

/** Splits "players[1].height" into ["players", 1, "height"]. */
export function steps(path) {
  return path.match(/[^.[\]]+/g).map((s) => (/^\d+$/.test(s) ? Number(s) : s));
}

export function valueAt(root, path) {
  return steps(path).reduce((node, step) => node?.[step], root);
}

/** Sets a value in place; undefined deletes the key (an optional field left blank). */
export function setAt(root, path, value) {
  const keys = steps(path);
  const last = keys.pop();
  const node = keys.reduce((n, step, i) => (n[step] ??= typeof (keys[i + 1] ?? last) === "number" ? [] : {}), root);
  if (value === undefined) delete node[last];
  else node[last] = value;
}

export function createState() {
  const past = [];
  const future = [];
  let mark = { path: "", at: 0 };
  const state = {
    draft: null, // what the form shows; may not pass the solver
    good: null, // the last plan that the solver accepted
    focus: { player: "", club: "", tee: "" },
    result: null, // the solver's answer for good

    /** Replaces the draft by an edited copy of itself. */
    edit(change) {
      const next = copy(state.draft);
      change(next);
      state.draft = next;
    },

    /**
     * Records an accepted plan. path names the edited field, "" for any other
     * edit; fresh makes no undo step (a load, an undo); newer says that the
     * draft was edited while the solver worked, so it must be left alone.
     */
    accept(plan, result, path, { fresh = false, newer = false } = {}) {
      const changed = state.good && JSON.stringify(state.good) !== JSON.stringify(plan);
      if (changed && !fresh) {
        const now = Date.now();
        const merges = path !== "" && path === mark.path && now - mark.at < MERGE_MS;
        if (!merges) past.push(state.good);
        if (past.length > HISTORY_LIMIT) past.shift();
        future.length = 0;
        mark = { path, at: now };
      }
      state.good = plan;
      if (!newer) state.draft = copy(plan);
      state.result = result;
      state.focus = result.focus ?? state.focus;
      keep(plan, result.link);
    },

    get canUndo() {
      return past.length > 0 || isDirty();
    },
    get canRedo() {
      return future.length > 0;
    },

    /** The plan to go back to, or null. A draft that never passed is simply dropped. */
    undo() {
      mark = { path: "", at: 0 };
      if (isDirty()) return copy(state.good);
      if (!past.length) return null;
      future.push(state.good);
      return copy(past.pop());
    },
    redo() {
      mark = { path: "", at: 0 };
      if (!future.length) return null;
      past.push(state.good);
      return copy(future.pop());
    },
  };
  const isDirty = () => Boolean(state.good) && JSON.stringify(state.good) !== JSON.stringify(state.draft);
  return state;
}

function keep(plan, link) {
  if (link && link !== location.hash) history.replaceState(null, "", link);
  try {
    localStorage.setItem(STORE_KEY, JSON.stringify(plan));
  } catch {
    // Private windows and full stores refuse; the address still holds the plan.
  }
}

/** The last good plan as JSON text, or "". */
export function savedPlan() {
  try {
    return localStorage.getItem(STORE_KEY) ?? "";
  } catch {
    return "";
  }
}
