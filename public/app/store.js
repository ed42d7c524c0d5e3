// Where the plan is kept: in the address after #p=, and in the browser the one plan
// that the visitor last worked on.
import { putLink } from "./address.js";
import { pack } from "./link.js";

const STORE_KEY = "wide-berth.plan";
const MOST = 1.1e6; // characters that are read of what is kept: the solver refuses a plan of 1 MB in words

let link = "";
let latest = 0;
let warned = false; // that nothing fits any more
let mine = ""; // what lies there, as far as this page goes on from it

/**
 * Keeps the plan of an answer. A plan that is only looked at is not kept in the
 * browser; where another one lies there already it is set aside first, never lost.
 * Resolves to what the visitor should know of that, or to "".
 * @param {Wire.SolveAnswer} answer
 * @param {Whose} whose
 */
export async function keep({ plan, sparse }, whose) {
  const turn = ++latest;
  const told = await keepHere(JSON.stringify(plan), whose);
  const made = await pack(JSON.stringify(sparse));
  if (turn !== latest) return told; // a newer plan took its place
  link = made;
  address();
  return told;
}

async function keepHere(text, whose) {
  const there = savedPlan();
  if (text === there || whose !== "edited") mine = text === there ? there : "";
  if (text === there || whose === "looked") return "";
  const before = mine;
  mine = text; // from now on: the next answer must not set the same plan aside again
  let told = "";
  try {
    if (there && there !== before) {
      const { setAside } = await import("../keep/shelf.js");
      const now = savedPlan(); // another tab may have kept one meanwhile
      if (now !== before) told = setAside(now, before);
    }
    localStorage.setItem(STORE_KEY, text);
  } catch (e) {
    // Private windows and full stores refuse, and setting aside needs a part of the
    // page that may be out of reach: the address holds the plan, and what lay there stays.
    mine = before;
    if (e.name === "QuotaExceededError" && !warned) {
      warned = true;
      told = "This browser has no room left to keep the plan: it is in the address only.";
    }
  }
  return told;
}

/** The kept plan's link. */
export const keptLink = () => link;

/** Puts the kept plan's link into the address. */
export function address() {
  if (link) putLink(link);
}

/** The plan the visitor last worked on as JSON text, or "". */
export function savedPlan() {
  try {
    return (localStorage.getItem(STORE_KEY) ?? "").slice(0, MOST);
  } catch {
    return "";
  }
}
