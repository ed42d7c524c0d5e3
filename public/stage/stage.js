// The stage: the swing of the check that is looked at, moving, in the flat drawings
// or in the 3D scene, with its timeline. One clock drives both pictures.
import { again } from "../app/again.js";
import { $, active, asSentence, h, setText, styles, turn } from "../app/dom.js";
import { createClock } from "./clock.js";
import { createFlat, describe } from "./flat.js";
import { readReel } from "./reel.js";
import { createKeeping } from "./keeping.js";
import { createLaid } from "./laid.js";
import { createScene, VIEWS } from "./scene.js";
import { createTimeline } from "./timeline.js";

const FLAT_NAMES = { plan: "Plan", side: "Side", face: "End" };
const TURNS = [["←", "Turn left", { type: "orbit", yaw: -15, pitch: 0 }], ["→", "Turn right", { type: "orbit", yaw: 15, pitch: 0 }],
  ["↑", "Tilt up", { type: "orbit", yaw: 0, pitch: 10 }], ["↓", "Tilt down", { type: "orbit", yaw: 0, pitch: -10 }],
  ["+", "Closer", { type: "zoom", factor: 1.25 }], ["−", "Farther", { type: "zoom", factor: 0.8 }]];

/**
 * Builds the stage into #stage-root. ask.reel(request), ask.show(request) and
 * ask.map(which) resolve to the solver's reel, to the scene's recording and to a map,
 * null when there is something newer; ask.started when the solver is there.
 */
export function createStage(/** @type {State} */ state, /** @type {Mover} */ mover, ask) {
  const root = $("#stage-root");
  const calm = matchMedia("(prefers-reduced-motion: reduce)");
  const clock = createClock();
  const flat = createFlat();
  const timeline = createTimeline(clock, changed);
  const scene = createScene({ ready: sceneReady, lost: () => choose(false), told: onScene });
  let reel = null;
  let solid = false; // the scene is on the stage, not the drawings
  let wantsFlat = false; // somebody chose the drawings
  let asked = 0; // counts the recordings asked for
  let seen = false;
  let comes = false; // the scene was sent for
  let due = false; // the swing of the last answer is still to be asked for
  let frame = 0;
  let last = 0;

  const toggle = (label, pressed, does, name = null) => h("button", { type: "button", "aria-pressed": String(pressed), "aria-label": name, onclick: does }, label);
  const press = (buttons, which) => {
    for (const [name, button] of buttons) button.setAttribute("aria-pressed", String(name === which));
  };
  const kinds = new Map([["3D", toggle("3D", false, () => choose(true))], ["drawings", toggle("Drawings", true, () => choose(false, true))]]);
  const flats = new Map(Object.entries(FLAT_NAMES).map(([name, label]) => [name, toggle(label, false, () => {
    flat.pick(name);
    press(flats, flat.large);
  })]));
  const views = new Map(VIEWS.map(([view, label, name]) => [view, toggle(label, false, () => scene.say({ type: "view", name: view }), name)]));
  const ball = toggle("Ball", true, () => {
    const shown = ball.getAttribute("aria-pressed") !== "true";
    ball.setAttribute("aria-pressed", String(shown));
    scene.say({ type: "ball", shown });
  });
  const typical = toggle("Typical", false, () => {
    const shown = typical.getAttribute("aria-pressed") !== "true";
    typical.setAttribute("aria-pressed", String(shown));
    scene.say({ type: "ghost", shown });
  }, "The typical swing solid, the loosest as a ghost beside it");
  const shade = toggle("Shadow", false, () => {
    shade.setAttribute("aria-pressed", String(!shaded()));
    shadeAnew();
  }, "Shadow of golfer and club on the image");
  const offerShade = () => { shade.hidden = !state.good.projector && !state.good.hung?.some(({ throwRatio }) => throwRatio); };
  const shaded = () => !shade.hidden && shade.getAttribute("aria-pressed") === "true";
  const dark = h("p", { class: "stage-dark", hidden: true });
  let shadows = null; // the shadow frame by frame, once it is there
  const laid = createLaid(state, { ask: ask.map, say: (message) => scene.say(message) });
  const kindGroup = h("div", { class: "stage-group", role: "group", "aria-label": "Picture", hidden: true }, ...kinds.values());
  const flatGroup = h("div", { class: "stage-group", role: "group", "aria-label": "Large drawing" }, ...flats.values());
  const viewGroup = h("div", { class: "stage-group", role: "group", "aria-label": "Look from", hidden: true }, ...views.values());
  const corner = (title, name, buttons) => h("details", {}, h("summary", {}, title), h("div", { class: "stage-group", role: "group", "aria-label": name }, ...buttons));
  const corners = h("div", { class: "stage-corners", hidden: true },
    corner("Turn", "Turn the view", TURNS.map(([glyph, label, message]) => h("button", { type: "button", "aria-label": label, onclick: () => scene.say(message) }, glyph))),
    corner("Show", "Show in the picture", [ball, typical, ...laid.toggles]));
  const [inScene, inFlat] = [$(".stage-group", corners.lastElementChild), h("div", { class: "stage-group" })]; // where the shadow's toggle is
  const picture = h("div", { class: "stage-picture" }, flat.el, scene.el, corners, dark);
  const keeping = createKeeping({
    about: () => ({ reel, t: clock.t, title: `${state.good.title || "Room"}: ${state.answer.sentences.headline} ${state.answer.sentences.verdict}` }),
    shoot: (t, size) => (solid ? scene.shoot(t, size) : shootFlat(t)),
  });
  inFlat.append(shade);
  offerShade();
  root.replaceChildren(h("div", { class: "stage-bar" }, kindGroup, flatGroup, inFlat, viewGroup, keeping), picture, timeline.el, scene.note);

  /** The large drawing at a moment, then back to where the clock is. */
  async function shootFlat(t) {
    const { shootPaper } = await import("../pictures/paper.js");
    flat.draw(t);
    const shot = await shootPaper(flat.paper);
    flat.draw(clock.t);
    return shot;
  }

  /** Puts the scene or the drawings on the stage. */
  function choose(in3D, byHand = false) {
    wantsFlat = byHand ? true : wantsFlat && !in3D;
    solid = in3D && scene.drawn;
    kindGroup.hidden = !scene.drawn;
    press(kinds, solid ? "3D" : "drawings");
    picture.classList.toggle("is-solid", solid);
    flatGroup.hidden = solid;
    viewGroup.hidden = corners.hidden = !solid;
    (solid ? inScene : inFlat).append(shade);
    paint();
  }

  const shadeAnew = () => shadow().catch(() => {
    dark.hidden = false;
    setText(dark, `The shadow could not be fetched; ${again()}`);
  });

  /** Fetches the shadow of the swing that is shown; that of another is taken away at once. */
  async function shadow() {
    const lay = (film) => {
      shadows = film;
      flat.lie(film?.painter ?? null);
      layShade();
      paint();
    };
    lay(null);
    dark.hidden ||= !shaded();
    if (!shaded()) return;
    const [{ filmOf, forScene, frameAt, shadePainter }] = await Promise.all([import("./shade.js"), styles("stage/shade.css")]);
    if (!shaded()) return;
    dark.hidden = false;
    setText(dark, "Working out the shadow\u2026");
    const film = await filmOf(state);
    if (!film || !shaded()) return;
    if (film.error) setText(dark, asSentence(film.error.message));
    else lay({ said: (t) => film.said[frameAt(film, t)], painter: shadePainter(film), scene: forScene(film) });
  }

  /** Has the scene draw the shadow, or take it away. */
  const layShade = () => scene.say({ type: "shade", ...shadows?.scene });

  async function sceneReady() {
    for (const [type, button] of [["ball", ball], ["ghost", typical]]) scene.say({ type, shown: button.getAttribute("aria-pressed") === "true" });
    await record();
    laid.lay();
    layShade();
    choose(!wantsFlat);
  }

  /** Has the scene draw what is looked at now. */
  async function record() {
    if (!scene.drawn) return;
    const mine = ++asked;
    const bytes = await ask.show({ kind: "show", plan: state.good, focus: state.focus });
    if (!bytes || mine !== asked || !scene.drawn) return;
    scene.show(bytes);
    scene.seek(clock.t);
  }

  /** What the scene tells of itself. */
  function onScene({ view, t, tightest }) {
    press(views, view);
    Object.assign(picture.dataset, { t, tightest }); // for tests: what is on the screen
  }

  function paint() {
    if (!reel) return;
    if (solid) scene.seek(clock.t);
    else flat.draw(clock.t);
    if (shadows) setText(dark, `Shadow: ${shadows.said(clock.t)}`);
    timeline.show();
  }

  const running = () => clock.playing && seen && !document.hidden;
  function tick(now) {
    frame = 0;
    if (running() && clock.advance((now - last) / 1000)) paint();
    last = now;
    wake();
  }
  function wake() {
    if (frame || !running()) return;
    frame = requestAnimationFrame(tick);
  }

  /** After somebody did something to the clock. */
  function changed() {
    last = performance.now();
    paint();
    if (active()?.type !== "range") timeline.announce();
    wake();
  }

  function resume() {
    last = performance.now();
    wake();
  }

  /** Another answer: its swing is asked for when the stage is in view. */
  function update() {
    due = true;
    root.dataset.ready = "no"; // for tests
    if (seen) film();
  }

  /** Is the plan and the check of a request still what the answer is about? */
  const answered = ({ plan, focus }) => plan === state.good && focus === state.focus;

  async function film() {
    due = false;
    const shown = describe(state);
    const request = { kind: "reel", plan: state.good, focus: state.focus };
    record();
    offerShade();
    shadeAnew();
    const answer = await ask.reel(request);
    if (!answer) return;
    await turn(); // read, laid out and painted in turns of their own: whoever taps meanwhile is heard
    if (!answered(request)) return;
    picture.hidden = Boolean(answer.error); // rather no swing than that of another plan
    if (answer.error) {
      clock.pause();
      timeline.fail(answer.error.message);
      return;
    }
    const first = !reel;
    reel = readReel(answer);
    root.classList.remove("is-moving");
    clock.load(reel);
    if (first && calm.matches) clock.seek(reel.tightest);
    else if (first) clock.play();
    timeline.load(reel);
    flat.show(shown, reel);
    press(flats, flat.large);
    await turn();
    if (!answered(request)) return;
    paint();
    root.dataset.ready = "yes";
    resume();
    if (comes || document.documentElement.dataset.audience === "friend") return; // 2 MB that a friend has not asked for
    comes = true;
    await ask.started; // one after the other over a slow network, and what is typed before what turns
    scene.come();
  }

  // A tee on its way takes the golfer along before anything is answered.
  mover.onMoved((_reply, going) => {
    const from = state.good.tees.find(({ name }) => name === going.tee);
    if (going.tee !== state.focus.tee || !from) return;
    root.classList.add("is-moving");
    flat.shift(going.x - from.x, going.y - from.y);
    scene.say({ type: "shift", dx: going.x - from.x, dy: going.y - from.y });
  });

  new IntersectionObserver((entries) => {
    seen = entries.at(-1).isIntersecting;
    if (seen && due) film();
    resume();
  }).observe(root);
  document.addEventListener("visibilitychange", resume);
  calm.addEventListener("change", () => {
    if (!calm.matches) return;
    clock.pause();
    changed();
  });
  root.addEventListener("keydown", (event) => {
    const { target, key } = event;
    if (event.ctrlKey || event.altKey || event.metaKey || target.tagName === "SELECT") return;
    if (key === " " && /^(BUTTON|SUMMARY)$/.test(target.tagName)) return; // it presses the button
    if (key.startsWith("Arrow") && target.type !== "range") return;
    if (timeline.press(event)) event.preventDefault();
  });

  state.onAnswered(update);
}
