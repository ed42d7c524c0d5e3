// Plan and side elevation to a scale that has a name, with a ruler that proves it.
import { h, s } from "../app/dom.js";
import { drawView, MARGIN } from "../drawings/drawings.js";

const MM = 96 / 25.4; // CSS px in a millimetre
const PAGE = { wide: 118, tall: 184 }; // mm that the drawings may take beside what is said, on A4 and on Letter
const BETWEEN = 14; // mm for captions and the ruler

/** Scales with a name, the largest first: what a length in the room is divided by. @type {Record<string, [number, string][]>} */
export const SCALES = {
  imperial: [[12, "1 in to the foot"], [16, "3/4 in to the foot"], [24, "1/2 in to the foot"], [32, "3/8 in to the foot"], [48, "1/4 in to the foot"], [64, "3/16 in to the foot"], [96, "1/8 in to the foot"], [192, "1/16 in to the foot"]],
  metric: [[10, ""], [20, ""], [25, ""], [50, ""], [75, ""], [100, ""], [125, ""], [200, ""]], // those of a scale ruler
};

/** The largest scale with which a room of these sizes, m, fits the page. @param {string} units @param {number[]} room */
export function scaleFor(units, [length, width, height]) {
  const frame = 2 * MARGIN / MM;
  const fits = (by) => 1000 * length / by + frame <= PAGE.wide && 1000 * (width + height) / by + 2 * frame + BETWEEN <= PAGE.tall;
  const scales = SCALES[units] ?? SCALES.metric;
  return scales.find(([by]) => fits(by)) ?? scales[scales.length - 1];
}

/** The two drawings and the ruler; named says their scale. */
export function drawings(/** @type {Wire.Set} */ flat, dims, units) {
  const { plan, side } = flat;
  const [by, words] = scaleFor(units, [...plan.size, side.size[1]]);
  const named = words ? `1:${by}, ${words}` : `1:${by}`;
  const bare = (view) => ({ ...view, sweep: [], path: [], figure: [], tape: undefined, first: undefined });
  const drawing = (name, view, caption) => {
    const width = view.size[0] * 1000 / by * MM + 2 * MARGIN; // px
    const svg = drawView(name, bare(view), dims, caption, width);
    svg.style.width = `${width}px`;
    return h("figure", { class: `paper-${name}` }, h("figcaption", {}, caption), svg);
  };
  return { named, views: [drawing("plan", plan, "Plan, from above"), drawing("side", side, "Side elevation, from the right wall")], ruler: ruler(units) };
}

/** A length of paper to hold a ruler against. */
function ruler(units) {
  const [long, step, said] = units === "imperial" ? [4 * 25.4, 25.4 / 4, "4 in"] : [100, 5, "100 mm"];
  const width = long * MM;
  let ticks = "";
  for (let i = 0; i * step <= long + 1e-6; i++) ticks += `M${(i * step * MM).toFixed(2)} 12V${i % (units === "imperial" ? 4 : 2) ? 7 : 2}`;
  const svg = s("svg", { class: "paper-ruler", viewBox: `-1 0 ${(width + 2).toFixed(2)} 13`, role: "img", "aria-label": `A line ${said} long` },
    s("path", { d: `M0 12H${width.toFixed(2)}${ticks}` }));
  svg.style.width = `${width + 2}px`;
  return h("p", { class: "paper-rule" }, svg, ` ${said} when printed at 100 %. If it measures otherwise, scale no distance off the drawings.`);
}
