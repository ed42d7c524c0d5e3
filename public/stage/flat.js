// The flat drawings, moving. What stands still is drawn once, as the sheets have
// it; golfer, club and ball are painted over it on canvases, frame by frame.
import { $, h, s } from "../app/dom.js";
import { busyPoints, dimsOf, drawView, mapping, MARGIN } from "../drawings/drawings.js";
import { drawFirst, drawTape } from "../drawings/tape.js";
import { describeViews } from "../drawings/words.js";
import { AXES, DEPTHS } from "./reel.js";

const CAPTIONS = { plan: "Plan, from above", side: "Side, from the right wall", face: "End, looking at the target" };
const SHARPEST = 2; // pixels of a canvas for one of CSS, at most
const SWEPT_STEP = 0.03; // m that an end of a part moves from one stroke of the sweep to the next
const AT_TIGHTEST = 0.0125; // s beside the tightest moment in which the tape is shown
const HALF_FRAME = 1 / 480; // s
const BALL_RADIUS = 4; // px, as in the sheets
const DASHES = [10, 3, 2, 3]; // px, of the clubhead's path
const INKS = ["--limb", "--limb-edge", "--shaft", "--clubhead", "--drawn"];
const PARTS = { shaft: "--shaft", grip: "--limb-edge", clubhead: "--clubhead" };

/** The three views; one of them is large. */
export function createFlat() {
  const views = Object.keys(AXES).map(createView);
  const el = h("div", { class: "stage-flat" }, ...views.map(({ el }) => el));
  let /** @type {Reel} */ reel = null;
  let keys = []; // of the reel: by part, the frames that its sweep is made of
  let answer = null;
  let t = 0;
  let picked = ""; // the view somebody chose to see large
  let under = null; // what is painted under the golfer
  let laid = ""; // the places for which the views were laid out

  const large = () => picked || (reel?.face ?? true ? "face" : "side");
  const placesOf = () => views.map((view) => view.place());
  function lay() {
    el.dataset.large = large();
    if (!reel) return;
    const style = getComputedStyle(el);
    const ink = Object.fromEntries(INKS.map((one) => [one, style.getPropertyValue(one)]));
    const places = placesOf(); // all are read before any is changed
    laid = JSON.stringify(places);
    views.forEach((view, i) => view.lay(answer, reel, keys, places[i], ink));
  }
  function relay() {
    lay();
    draw(t);
  }
  function draw(at) {
    t = at;
    if (!reel) return;
    const pose = reel.pose(t);
    const ball = reel.ball(t);
    for (const view of views) view.draw(pose, ball, t, under);
  }
  new ResizeObserver(() => el.clientWidth && JSON.stringify(placesOf()) !== laid && relay()).observe(el); // away with its sheet, it keeps its size
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", relay); // other inks
  lay();

  return {
    el, draw,
    /** The name of the view that is large. */
    get large() { return large(); },
    /** Lays another swing out, an answer of the solver and its reel, to be drawn. */
    show(/** @type {ReturnType<typeof describe>} */ of, /** @type {Reel} */ next) {
      answer = of;
      reel = next;
      keys = reel.parts.map((_, part) => sweptKeys(reel, part));
      lay();
    },
    pick(name) {
      picked = name;
      relay();
    },
    /** Moves golfer, ball and sweep over the floor (m) until another swing is shown. */
    shift(dx, dy) {
      for (const view of views) view.shift([dx, dy, 0]);
    },
    /** Paints something under the golfer: paint(view, ctx, map, t), nothing if null. */
    lie(paint) {
      under = paint;
      draw(t);
    },
    /** The layers of the large drawing. */
    get paper() { return $(`[data-view=${large()}] .stage-paper`, el); },
  };
}

/** What the drawings say and show of an answer. */
export function describe(/** @type {State} */ { answer, focus, check }) {
  const dims = dimsOf(answer.figures);
  return { flat: answer.flat, dims, words: describeViews(answer.flat, dims, focus, check) };
}

function createView(name) {
  const swept = h("canvas", { class: "stage-swept", "aria-hidden": "true" });
  const moving = h("canvas", { "aria-hidden": "true" });
  const over = s("svg", { class: "view", "aria-hidden": "true" });
  const paper = h("div", { class: "stage-paper" });
  const room = h("div", { class: "stage-room" }, paper);
  const el = h("figure", { class: "stage-view", "data-view": name }, room, h("figcaption", {}, CAPTIONS[name]));
  const [across, up] = AXES[name];
  const depth = DEPTHS[name];
  let reel = null;
  let map = null; // null while the view is not seen
  let ink = null;
  let keys = []; // by part
  let done = []; // by part: how many of them are painted
  let order = []; // parts, farthest first
  let path = new Path2D(); // of the clubhead's middle
  let pathed = 0; // frames in it
  let tape = null;
  let burst = null;

  const x = (frame, part, end) => map.px(reel.coordinate(frame, part, 3 * end + across));
  const y = (frame, part, end) => map.py(reel.coordinate(frame, part, 3 * end + up));

  /** The size (px) of the place that the view has. */
  const place = () => ({ wide: room.clientWidth, high: room.clientHeight });

  /** Lays the view out anew and draws what stands still. */
  function lay({ flat, dims, words }, next, strokes, { wide, high }, inks) {
    const view = flat[name];
    const width = fitted(view.size, wide, high);
    map = null;
    if (width < 4 * MARGIN) return;
    reel = next;
    map = mapping(name, view, width);
    const still = { ...view, sweep: [], path: [], figure: [], tape: undefined, first: undefined, marks: view.marks.filter((mark) => mark.name !== "ball") };
    over.setAttribute("viewBox", `0 0 ${map.width} ${map.height}`);
    tape = view.tape ? drawTape(view.tape, map, busyPoints(view, map)) : null;
    burst = view.first ? drawFirst(view.first, map) : null;
    over.replaceChildren(...[burst, tape].filter(Boolean));
    over.classList.remove("is-away");
    paper.style.setProperty("width", `${map.width}px`);
    paper.style.setProperty("height", `${map.height}px`);
    const sharp = Math.min(devicePixelRatio || 1, SHARPEST);
    for (const canvas of [swept, moving]) {
      canvas.width = Math.round(map.width * sharp);
      canvas.height = Math.round(map.height * sharp);
      canvas.style.removeProperty("transform");
      canvas.getContext("2d").setTransform(sharp, 0, 0, sharp, 0, 0);
    }
    paper.replaceChildren(drawView(name, still, dims, words[name] ?? "", width), swept, moving, over);
    ink = inks;
    keys = strokes;
    done = keys.map(() => 1);
    order = keys.map((_, part) => ({ part, depth: 0 }));
    pathed = 0;
  }

  function shift(by) {
    if (!map) return;
    const to = `translate(${map.px(by[across]) - map.px(0)}px, ${map.py(by[up]) - map.py(0)}px)`;
    for (const canvas of [swept, moving]) canvas.style.setProperty("transform", to);
    over.classList.add("is-away"); // no reading is true of a tee on its way
  }

  function draw(pose, ball, t, under) {
    if (!map) return;
    sweep(reel.frameAt(t));
    const ctx = moving.getContext("2d");
    ctx.clearRect(0, 0, map.width, map.height);
    ctx.lineCap = ctx.lineJoin = "round";
    under?.(name, ctx, map, t);
    drawPath(ctx, reel.frameAt(t));
    drawFigure(ctx, pose);
    drawBall(ctx, ball);
    tape?.classList.toggle("is-away", Math.abs(t - reel.tightest) > AT_TIGHTEST);
    burst?.classList.toggle("is-away", t < (reel.first ?? 0) - HALF_FRAME);
  }

  /** Paints what was swept since the last time; after going back, all of it again. */
  function sweep(frame) {
    const ctx = swept.getContext("2d");
    if (keys.some((at, part) => at[done[part] - 1] > frame)) {
      ctx.clearRect(0, 0, map.width, map.height);
      done = keys.map(() => 1);
    }
    ctx.fillStyle = ctx.strokeStyle = ink["--drawn"];
    ctx.lineJoin = "round";
    keys.forEach((at, part) => {
      ctx.lineWidth = Math.max(2 * reel.parts[part].r * map.scale, 1);
      for (; done[part] < at.length && at[done[part]] <= frame; done[part]++) {
        const [from, to] = [at[done[part] - 1], at[done[part]]];
        ctx.beginPath();
        ctx.moveTo(x(from, part, 0), y(from, part, 0));
        ctx.lineTo(x(from, part, 1), y(from, part, 1));
        ctx.lineTo(x(to, part, 1), y(to, part, 1));
        ctx.lineTo(x(to, part, 0), y(to, part, 0));
        ctx.closePath();
        ctx.fill();
        ctx.stroke();
      }
    });
  }

  /** The way of the clubhead's middle so far. */
  function drawPath(ctx, frame) {
    const head = reel.parts.length - 1;
    if (pathed === 0 || pathed > frame + 1) {
      path = new Path2D();
      pathed = 0;
    }
    for (; pathed <= frame; pathed++) path.lineTo((x(pathed, head, 0) + x(pathed, head, 1)) / 2, (y(pathed, head, 0) + y(pathed, head, 1)) / 2);
    ctx.setLineDash(DASHES);
    ctx.lineWidth = 1.5;
    ctx.strokeStyle = ink["--drawn"];
    ctx.stroke(path);
    ctx.setLineDash([]);
  }

  function drawFigure(ctx, pose) {
    for (const one of order) {
      const i = 6 * one.part;
      one.depth = depth(pose[i] + pose[i + 3], pose[i + 1] + pose[i + 4], pose[i + 2] + pose[i + 5]);
    }
    order.sort((a, b) => a.depth - b.depth || b.part - a.part);
    for (const { part } of order) {
      const { name: what, r } = reel.parts[part];
      const wide = Math.max(2 * r * map.scale, what === "shaft" ? 1.6 : 3);
      const i = 6 * part;
      ctx.beginPath();
      ctx.moveTo(map.px(pose[i + across]), map.py(pose[i + up]));
      // A dot is a line too: a length of nothing would not be painted everywhere.
      ctx.lineTo(map.px(pose[i + 3 + across]) + 1e-3, map.py(pose[i + 3 + up]));
      ctx.lineWidth = wide + 2;
      ctx.strokeStyle = ink["--limb-edge"];
      ctx.stroke();
      ctx.lineWidth = wide;
      ctx.strokeStyle = ink[PARTS[what] ?? "--limb"];
      ctx.stroke();
    }
  }

  /** The ball and, from impact on, its way. */
  function drawBall(ctx, ball) {
    const way = ball.map((p) => [map.px(p[across]), map.py(p[up])]);
    ctx.strokeStyle = ink["--drawn"];
    ctx.lineWidth = 2;
    ctx.beginPath();
    for (const at of way) ctx.lineTo(...at);
    ctx.stroke();
    ctx.beginPath();
    ctx.arc(...way.at(-1), BALL_RADIUS, 0, 2 * Math.PI);
    ctx.fillStyle = "#fff";
    ctx.fill();
    ctx.lineWidth = 1.5;
    ctx.stroke();
  }

  return { el, place, lay, draw, shift };
}

/** The width (px) at which a view of that size (m) fits into a place. */
export function fitted([across, up], width, height) {
  return Math.min(width, (height - 2 * MARGIN) * across / up + 2 * MARGIN);
}

/** The frames at which a part has moved on by a stroke of the sweep, from the first. */
export function sweptKeys(/** @type {Reel} */ reel, part) {
  const keys = [0];
  for (let frame = 1; frame < reel.count; frame++) {
    const key = keys.at(-1);
    if (moved(reel, part, 0, key, frame) >= SWEPT_STEP || moved(reel, part, 3, key, frame) >= SWEPT_STEP) keys.push(frame);
  }
  return keys;
}

/** How far (m) an end of a part, its coordinates from i on, is from where it was in another frame. */
function moved(reel, part, i, before, frame) {
  let square = 0;
  for (let axis = i; axis < i + 3; axis++) square += (reel.coordinate(frame, part, axis) - reel.coordinate(before, part, axis)) ** 2;
  return Math.sqrt(square);
}
