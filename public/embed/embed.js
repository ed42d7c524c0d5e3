// The embed once somebody taps it: the room's worst swing, moving, and then the
// visitor's own. It is the page's solver, state and drawings; only what is shown is less.
import { $, asSentence, h, icon, keptTogether, setText, styles } from "../app/dom.js";
import { addVisitor, driverOf, setDriver, VISITOR } from "../app/edits.js";
import { unpack } from "../app/link.js";
import { createSolver } from "../solver/solver.js";
import { createState } from "../app/state.js";
import { createClock } from "../stage/clock.js";
import { createFlat, describe } from "../stage/flat.js";
import { readReel } from "../stage/reel.js";

const PLAYS = "wide-berth:plays"; // what embeds beside each other say when they start
const STYLES = ["drawings/drawings.css", "stage/stage.css"];

/** Shows the room of a link ("" for the demonstration) in the place of the poster. */
export async function start(link) {
  await styles(...STYLES);
  const failed = (message) => {
    setText($("#told"), asSentence(message));
    $("#who").hidden = false;
    $("#swing").hidden = true;
  };
  const solver = createSolver({ onFatal: failed });
  const clock = createClock();
  const flat = createFlat();
  const calm = matchMedia("(prefers-reduced-motion: reduce)");
  const said = h("p", { class: "embed-said" });
  const slider = h("input", { type: "range", min: 0, max: 1, step: "any", value: 0, "aria-label": "Moment in the swing" });
  const play = $("#swing");
  const input = { height: $("#height"), driver: $("#driver") };
  let reel = null;
  let seen = true;
  let frame = 0;
  let last = 0;

  const state = createState({
    ask: (request) => solver.latest("solve", request),
    busy(busy) { document.documentElement.dataset.busy = busy ? "yes" : "no"; },
    keep: async () => {},
  });

  const { text, error: damaged } = link ? await unpack(link) : { text: "", error: undefined };
  if (damaged) return failed(damaged.message);
  const opened = await solver.ask({ kind: "open", linked: text });
  if (opened.error) return failed(opened.error.message); // never another room under this one's name
  $("#embed-stage").append(h("div", { class: "stage-picture" }, flat.el), said, slider);

  function paint() {
    flat.draw(clock.t);
    slider.value = String(clock.t);
    setText(said, reel.said(clock.t));
    setText(play, clock.playing ? "Pause" : "Swing");
  }
  const running = () => clock.playing && seen && !document.hidden;
  function tick(now) {
    frame = 0;
    if (running() && clock.advance((now - last) / 1000)) paint();
    last = now;
    wake();
  }
  function wake() {
    if (!frame && running()) frame = requestAnimationFrame(tick);
  }
  function go() {
    last = performance.now();
    if (clock.playing) tellOthers();
    paint();
    wake();
  }

  play.addEventListener("click", () => {
    if (!reel) return;
    if (clock.playing) clock.pause();
    else clock.play();
    go();
  });
  slider.addEventListener("input", () => {
    clock.pause();
    clock.seek(Number(slider.value));
    go();
  });
  new IntersectionObserver(([entry]) => {
    seen = entry.isIntersecting;
    last = performance.now();
    wake();
  }).observe($("#embed-stage"));
  document.addEventListener("visibilitychange", () => {
    last = performance.now();
    wake();
  });

  // Of several on one page one plays.
  addEventListener("message", ({ source, data }) => {
    if (data !== PLAYS || source === window || !reel || !clock.playing) return;
    clock.pause();
    paint();
  });
  function tellOthers() {
    for (let i = 0; parent !== window && i < parent.frames.length; i++) {
      if (parent.frames[i] !== window) parent.frames[i].postMessage(PLAYS, "*");
    }
  }

  // The visitor is alone in the room: the answer is theirs and nobody else's.
  const apply = () => {
    const typed = Object.fromEntries(Object.entries(input).map(([key, field]) => [key, field.value.trim()]));
    state.edit((plan) => {
      const { hand } = plan.players[0];
      addVisitor(plan, { height: typed.height, hand: plan.players[0].name === VISITOR ? hand : "right" });
      const visitor = plan.players.find(({ name }) => name === VISITOR);
      plan.players = [visitor];
      visitor.height = typed.height;
      delete visitor.tees;
      setDriver(plan, visitor, typed.driver);
    }, "visitor", { player: VISITOR, club: "", tee: "" });
  };
  for (const field of Object.values(input)) field.addEventListener("input", apply);
  $("#who").addEventListener("submit", (e) => e.preventDefault());

  function showAnswer({ answer, check, good, focus }) {
    const { checks } = answer.report;
    if (focus.player === VISITOR && checks.length > 1) { // of the tees, the one with most room; the sentence names it
      const { tee } = checks.reduce((a, b) => (b.clearance > a.clearance ? b : a));
      state.edit((plan) => { plan.players[0].tees = [tee]; }, "visitor");
      return;
    }
    const { headline, verdict, share } = answer.sentences;
    $("#verdict").dataset.verdict = check.verdict;
    $("#verdict").replaceChildren(icon(check.verdict, "verdict-icon"), h("p", {},
      h("strong", { class: "verdict-word" }, headline), " ", ...keptTogether(verdict), " ",
      checks.length === 1 ? h("span", { class: "quiet" }, share) : null));
    if (document.activeElement?.closest("#who")) setText($("#told"), "");
    else fill(answer, good, focus);
    for (const field of Object.values(input)) field.removeAttribute("aria-invalid");
  }
  function fill({ figures }, good, focus) {
    const i = good.players.findIndex(({ name }) => name === focus.player);
    const club = driverOf(good, good.players[i]);
    input.height.value = figures.fields[`players[${i}].height`];
    input.driver.value = figures.fields[`clubs[${club < 0 ? 0 : club}].length`];
  }
  function refuse({ refusal }) {
    const key = refusal.field?.startsWith("clubs") ? "driver" : "height";
    input[key].setAttribute("aria-invalid", "true");
    setText($("#told"), asSentence(refusal.message));
  }

  async function film() {
    if (state.focus.player === VISITOR && state.answer.report.checks.length > 1) return; // one more answer is on its way
    const shown = describe(state);
    const answer = await solver.latest("reel", { kind: "reel", plan: state.good, focus: state.focus });
    if (!answer) return;
    if (answer.error) {
      failed(answer.error.message);
      return;
    }
    const first = !reel;
    reel = readReel(answer);
    clock.load(reel);
    slider.max = String(reel.duration);
    for (const part of [$("#embed-stage"), $("#verdict"), $("#who"), play]) part.hidden = false;
    $("#poster").hidden = true;
    play.disabled = false;
    if (calm.matches) clock.seek(reel.tightest);
    else if (first) clock.play();
    flat.show(shown, reel);
    go();
    document.documentElement.dataset.state = "ready"; // for tests
  }
  state.onAnswered(showAnswer, refuse);
  state.onAnswered(film);
  await state.open(opened.plan);
  if (state.refusal) failed(state.refusal.message);
  else setText($("#title"), state.good.title || "A room");
  $("#title").className = "";
}
