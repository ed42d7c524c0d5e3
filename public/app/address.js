// The address after "#": p, the plan packed as a link, for, whom the link was made
// for, and sheet, the drawing that is open. Each may be missing.

const NAMES = ["p", "for", "sheet"];

let heard = location.hash; // what the page put there or was told of
addEventListener("hashchange", () => { heard = location.hash; });

/**
 * What is after the "#", also as mail and chat hand it on: escaped once more, with
 * "&amp;" for "&", or with something of their own behind it, which is left out.
 */
function read() {
  let hash = location.hash.slice(1).replace(/&amp;/g, "&");
  if (/^p%3d/i.test(hash)) hash = decoded(hash);
  return new URLSearchParams(hash.replace(/[?#]/g, "&"));
}

function decoded(text) {
  try {
    return decodeURIComponent(text);
  } catch {
    return text; // cut in the middle of an escape: the link's sum will tell
  }
}

/** The part that holds a plan, as link.js reads it; "" without one. */
export const linkInAddress = () => (read().has("p") ? `#p=${read().get("p")}` : "");

/** Whom the link was made for: "friend", "owner" or "". */
export const audience = () => read().get("for") ?? "";

/** The name of the open sheet; "" when the address names none. */
export const sheetInAddress = () => read().get("sheet") ?? "";

/**
 * Whether the page wrote this step of the history: then its link is of the plan as
 * it was, and Back means the sheet. Any other address was typed or followed.
 */
export const ownStep = () => Boolean(history.state?.own);

/** Puts a plan's link into the address and leaves the sheet and whom it is for as they are. */
export function putLink(link) {
  put({ p: link.slice("#p=".length) }, "replaceState");
}

/** Says whom the link is for, "" for nobody in particular. */
export function putAudience(whom) {
  put({ for: whom }, "replaceState");
}

/** Puts a sheet's name into the address as a step that Back takes back. */
export function putSheet(sheet) {
  put({ sheet }, "pushState");
}

function put(parts, how) {
  if (location.hash !== heard) return; // a link was just followed: it is read first, not overwritten
  const now = read();
  const all = NAMES.map((name) => [name, parts[name] ?? now.get(name)]).filter(([, value]) => value);
  const hash = `#${all.map(([name, value]) => `${name}=${encodeURIComponent(value)}`).join("&")}`;
  const there = hash === (location.hash || "#");
  if (there && ownStep()) return;
  try {
    history[there ? "replaceState" : how]({ ...history.state, own: true }, "", hash);
    heard = location.hash;
  } catch {
    // Some browsers refuse more than so many steps in a while: the next one brings it up to date.
  }
}
