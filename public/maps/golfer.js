// The golfer of the check that is looked at and what the swing sweeps, drawn lightly
// over a map; and what moves with a tee on its way: it is only shifted until the
// answer draws it anew.
import { $$, s } from "../app/dom.js";
import { drawCapsule } from "../drawings/drawings.js";

/** @param {State} state @param {Mover} mover */
export function createGolfer(state, mover) {
  let followers = []; // of the drawing as it is: {el, tee, from, map}
  let there = null; // the tee on its way, or let go and not answered yet

  function shift({ el, tee, from, map, golfer }) {
    const to = there?.tee === tee ? there : (state.good.tees.find(({ name }) => name === tee) ?? from);
    const way = `translate(${((to.x - from.x) * map.scale).toFixed(1)} ${((from.y - to.y) * map.scale).toFixed(1)})`;
    for (const one of golfer ? [el, ...$$("#view-plan .ln-mat")] : [el]) one.setAttribute("transform", way); // the mat lies under the golfer
  }

  /** A group that moves with a tee from the place it had when what is in it was worked out. */
  function follow(tee, from, map, children, golfer = false) {
    const follower = { el: s("g", { "data-follows": tee }, ...children), tee, from: { ...from }, map, golfer };
    followers.push(follower);
    shift(follower);
    return follower.el;
  }

  mover.onMoved((_, going) => {
    there = { ...going };
    followers.forEach(shift);
  });
  const settle = () => {
    if (mover.going) return;
    there = null;
    followers.forEach(shift);
  };
  state.onAnswered(settle, settle);

  return {
    /** Before a drawing is made anew. */
    begin() { followers = []; },

    follow,

    /** Golfer and swept outline. */
    over(/** @type {Paper} */ map) {
      const { sweep, figure } = state.answer.flat.plan;
      const at = state.good.tees.find(({ name }) => name === state.focus.tee);
      if (!at) return [];
      const d = sweep.map((ring) => `${ring.map(([x, y], i) => `${i ? "L" : "M"}${map.px(x).toFixed(1)} ${map.py(y).toFixed(1)}`).join("")}Z`).join("");
      return [inRoom(map, "golfer", follow(at.name, at, map, [
        s("path", { class: "golfer-sweep", d }), s("g", { class: "golfer-figure" }, ...figure.map((limb) => drawCapsule(limb, map))),
      ], true))];
    },
  };
}

/** A group of which only what is inside the room is seen. */
export function inRoom(map, name, ...children) {
  const [x, y] = [map.px(0), map.py(map.across)];
  return s("g", { class: name },
    s("clipPath", { id: `${name}-room` }, s("rect", { x, y, width: map.px(map.length) - x, height: map.py(0) - y })),
    s("g", { "clip-path": `url(#${name}-room)` }, ...children));
}
