// Where the plan is kept: in the address after #p=, and in the browser.
import { putLink } from "./address.js";
import { pack } from "./link.js";

const STORE_KEY = "wide-berth.plan";

let link = "";
let latest = 0;

/** Keeps the plan of an answer. @param {Wire.SolveAnswer} answer */
export async function keep({ plan, sparse }) {
  const mine = ++latest;
  try {
    localStorage.setItem(STORE_KEY, JSON.stringify(plan));
  } catch {
    // Private windows and full stores refuse; the address still holds the plan.
  }
  const made = await pack(JSON.stringify(sparse));
  if (mine !== latest) return; // a newer plan took its place
  link = made;
  address();
}

/** The kept plan's link. */
export const keptLink = () => link;

/** Puts the kept plan's link into the address. */
export function address() {
  if (link) putLink(link);
}

/** The last good plan as JSON text, or "". */
export function savedPlan() {
  try {
    return localStorage.getItem(STORE_KEY) ?? "";
  } catch {
    return "";
  }
}
