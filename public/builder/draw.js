// Lines on paper for both sheets: a drawing of room metres scaled to the width it has.
import { h, s } from "../app/dom.js";
import { MARGIN, mapping } from "../drawings/drawings.js";

export { MARGIN };

/** A figure with room for a drawing of at most tallest px. */
export function paper(name, caption, tallest) {
  const sheet = h("div");
  const holder = h("div", { class: "drawing build-holder" }, sheet);
  const el = h("figure", { class: `build-figure build-${name}` }, h("figcaption", {}, caption), holder);
  const self = {
    el, holder,
    /** How the view that is drawn lies in the holder. @type {Paper | null} */
    map: null,
    left: 0, // px before it
    /** Draws a view of that size (m); lines(map) makes its SVG. */
    draw(kind, size, words, lines) {
      if (holder.clientWidth === 0) return; // on another sheet; it is drawn when that is shown
      const width = Math.min(holder.clientWidth, (tallest - 2 * MARGIN) * size[0] / size[1] + 2 * MARGIN);
      const map = mapping(kind, /** @type {any} */ ({ size }), width);
      const svg = s("svg", { viewBox: `0 0 ${map.width.toFixed(1)} ${map.height.toFixed(1)}`, role: "img", "aria-label": words, class: "view build-view" },
        s("rect", { class: "room-paper", x: map.px(kind === "face" ? size[0] : 0), y: map.py(size[1]), width: size[0] * map.scale, height: size[1] * map.scale }),
        s("g", { class: "layer-lines" }, ...lines(map).filter(Boolean)),
        s("rect", { class: "ln ln-wall", x: map.px(kind === "face" ? size[0] : 0), y: map.py(size[1]), width: size[0] * map.scale, height: size[1] * map.scale }));
      svg.style.maxWidth = `${width}px`;
      sheet.replaceChildren(svg);
      Object.assign(self, { map, left: (holder.clientWidth - width) / 2 });
    },
  };
  return self;
}

/** Points (m) as a path. */
export const path = (map, points, closed = true) => points.map(([x, y], i) => `${i ? "L" : "M"}${map.px(x).toFixed(1)} ${map.py(y).toFixed(1)}`).join("") + (closed ? "Z" : "");

/** A rectangle by two corners, m. */
export const box = (map, x0, y0, x1, y1) => path(map, [[x0, y0], [x1, y0], [x1, y1], [x0, y1]]);

export const line = (name, d, title) => s("path", { class: `ln ${name}`, d }, title ? s("title", {}, title) : null);

export const label = (map, x, y, text, anchor = "middle") => s("text", { class: "build-label", x: map.px(x).toFixed(1), y: map.py(y).toFixed(1), "text-anchor": anchor }, text);
