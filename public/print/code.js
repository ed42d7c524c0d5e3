// The link of the plan as a QR code, to be read by a phone in front of the paper.
import { s } from "../app/dom.js";
import { encodeQR } from "../vendor/qr.js";

const MOST = 2300; // bytes: a finer code no longer reads off paper

/** The code of a plan's link, null where that is too long for paper, and the page it opens. */
export function linkCode(link) {
  const [page] = location.href.split("#");
  const url = page + link;
  return { address: page, code: url.length <= MOST ? draw(/** @type {boolean[][]} */ (encodeQR(url, "raw", { ecc: "low", border: 4 }))) : null };
}

/** @param {boolean[][]} rows */
function draw(rows) {
  const d = rows.map((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : "")).join("")).join("");
  return s("svg", { class: "paper-code", viewBox: `0 0 ${rows.length} ${rows.length}`, role: "img", "aria-label": "The link of this plan as a QR code", "shape-rendering": "crispEdges" },
    s("path", { d }));
}
