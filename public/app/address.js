// The address after "#": p, the plan packed as a link, and sheet, the drawing
// that is open. Either may be missing.

const read = () => new URLSearchParams(location.hash.slice(1));

/** The part that holds a plan, as link.js reads it; "" without one. */
export const linkInAddress = () => (read().has("p") ? `#p=${read().get("p")}` : "");

/** The name of the open sheet; "" when the address names none. */
export const sheetInAddress = () => read().get("sheet") ?? "";

/**
 * Whether the page wrote this step of the history: then its link is of the plan as
 * it was, and Back means the sheet. Any other address was typed or followed.
 */
export const ownStep = () => Boolean(history.state?.own);

/** Puts a plan's link into the address and leaves the sheet as it is. */
export function putLink(link) {
  put(link, sheetInAddress(), "replaceState");
}

/** Puts a sheet's name into the address as a step that Back takes back. */
export function putSheet(sheet) {
  put(linkInAddress(), sheet, "pushState");
}

function put(link, sheet, how) {
  const parts = [link.replace(/^#/, ""), sheet && `sheet=${encodeURIComponent(sheet)}`].filter(Boolean);
  const hash = `#${parts.join("&")}`;
  const there = hash === (location.hash || "#");
  if (there && ownStep()) return;
  history[there ? "replaceState" : how]({ ...history.state, own: true }, "", hash);
}
