// The shadow that golfer and club throw on the image, frame by frame, on the stage. It is
// fetched, with the builder's program that works it out, when somebody asks for it.
import { builderProgram } from "../builder/client.js";

/** The shadow of the swing that the stage shows; null when there is something newer. */
export function filmOf(/** @type {State} */ { good, focus, check }) {
  return builderProgram().latest("stage", { kind: "film", plan: good, ...focus, variation: check.nearest.variation });
}

/** The number of the frame of a film at a time, s. */
export const frameAt = ({ rate, frames }, t) => Math.min(Math.max(Math.round(t * rate), 0), frames.length - 1);

/** The dark cells of a frame as boxes [y, z, width, height] on the cloth, m: y of the golfer's right end. */
export function darkBoxes({ nx, ny, frames, image: { width, height, bottom, centre } }, frame) {
  const [across, up] = [width / nx, height / ny];
  const right = centre - width / 2;
  const boxes = [];
  const runs = frames[frame];
  for (let i = 0; i < runs.length; i += 2) { // a run goes on from row to row
    for (let at = runs[i], left = runs[i + 1]; left > 0;) {
      const [row, from] = [Math.floor(at / nx), at % nx];
      const n = Math.min(left, nx - from);
      boxes.push([right + across * from, bottom + up * row, across * n, up]);
      at += n;
      left -= n;
    }
  }
  return boxes;
}

/** A film as the 3D scene reads it: of every frame how many numbers its runs have, and these. */
export function forScene({ rate, nx, ny, frames, image: { x, width, height, bottom, centre } }) {
  const runs = new Uint8Array(Int32Array.from(frames.flatMap((frame) => [frame.length, ...frame])).buffer);
  return { rate, nx, ny, x, width, height, bottom, right: centre - width / 2, runs };
}

/** What paints a film under the golfer of a flat drawing: the light, and what is cut out of it. */
export function shadePainter(film) {
  const { image: { x, width, height, bottom, centre }, lens } = film;
  const [right, left, top] = [centre - width / 2, centre + width / 2, bottom + height];
  return (name, ctx, map, t) => {
    const corners = { face: [[right, bottom], [left, bottom], [left, top], [right, top]], side: [[lens[0], lens[2]], [x, bottom], [x, top]], plan: [[lens[0], lens[1]], [x, right], [x, left]] }[name];
    ctx.beginPath();
    for (const [a, b] of corners) ctx.lineTo(map.px(a), map.py(b));
    ctx.closePath();
    ctx.fillStyle = "rgb(242 194 48 / .24)";
    ctx.strokeStyle = "#8a6a00";
    ctx.lineWidth = 1;
    ctx.fill();
    ctx.stroke();
    if (name !== "face") return;
    ctx.fillStyle = "rgb(31 42 51 / .72)";
    ctx.beginPath();
    for (const [y, z, wide, high] of darkBoxes(film, frameAt(film, t))) {
      ctx.rect(map.px(y + wide), map.py(z + high), map.px(y) - map.px(y + wide), map.py(z) - map.py(z + high));
    }
    ctx.fill();
  };
}
