// Wires the page: one state, and the parts that change it and hear of its answers.
//
// Hooks for tests, read-only, on <html>: data-state is "loading", "ready" or
// "error" (the solver cannot run); data-busy is "yes" from an edit until its
// answer is painted and in the address; data-stale is "yes" while the numbers
// typed are not those of the answer shown.
import { $, asSentence, setText } from "./dom.js";
import { createSolver } from "./solver.js";
import { createState } from "./state.js";
import { address, keep, keptLink, savedPlan } from "./store.js";
import { linkInAddress, ownStep } from "./address.js";
import { createSheets } from "./sheets.js";
import { createMover } from "./mover.js";
import { unpack } from "./link.js";
import { createForm } from "../form/form.js";
import { createStrip } from "../form/strip.js";
import { createToolbar } from "./toolbar.js";
import { showMoving, showVerdict, showSurfaces } from "./verdict.js";
import { showCauses } from "./causes.js";
import { showEveryone } from "./everyone.js";
import { fillGlossary } from "./glossary.js";
import { createKeys } from "./keys.js";

const page = document.documentElement.dataset;
const say = (sentence) => setText($("#notice"), sentence);

const solver = createSolver({
  onFatal(message) {
    page.state = "error";
    page.busy = "no";
    $("#verdict-wait").hidden = Boolean(state.good);
    if (state.good) say(message);
    else setText($("#verdict-wait"), message);
  },
});
const state = createState({
  ask: (request) => solver.latest("solve", request),
  busy(busy) { page.busy = busy ? "yes" : "no"; },
  keep,
});

/** Opens a plan by its text, or the demo; a refused one changes nothing. */
async function open(texts, said) {
  const reply = texts.error ? texts : await solver.ask({ kind: "open", ...texts });
  if (reply.error) {
    address();
    say(`${asSentence(reply.error.message)} What was here is unchanged.`);
  } else state.open(reply.plan, said);
}

/** The text of the plan in the address. */
async function linked() {
  const link = linkInAddress();
  if (!link) return {};
  const { text, error } = await unpack(link);
  return error ? { error } : { linked: text };
}

state.onAnswered(({ said }) => {
  page.stale = "no";
  say(said);
}, ({ refusal }) => {
  page.stale = "yes";
  say(`${asSentence(refusal.message)} The answer shown is from the last good numbers.`);
});
state.onAnswered(showVerdict, () => state.answer && showVerdict(state)); // a tee let go where it cannot be: the last good answer stands
for (const show of [showSurfaces, showCauses, showEveryone]) state.onAnswered(show);
createToolbar(state, { open, say });
createKeys();
const sheets = createSheets();
const mover = createMover(state, solver.latest);
createStrip(state, mover, (text) => solver.ask({ kind: "length", text, units: state.good.units }));
showMoving(mover);

/** What parts that come later share; idle says that no verdict is under way. */
const shared = { state, solver, drawings: /** @type {Drawings} */ (null), sheets, mover, idle: () => page.busy === "no", cards: /** @type {Wire.Card[]} */ ([]) };

let pictures = null; // on their way, or there

/** Fetches the drawings and the stage, once: the first verdict does not wait for them. */
function withPictures() {
  pictures ??= Promise.all([import("../drawings/drawings.js"), import("../stage/stage.js")]).then(([{ createDrawings }, { createStage }]) => {
    shared.drawings = createDrawings(state);
    createStage(state, mover, { reel: (request) => solver.latest("reel", request), show: solver.show });
  }).catch((error) => {
    pictures = null;
    throw error;
  });
  return pictures;
}

/** Fetches a part of the page; if that fails, it says so and tries again with the next answer. */
function comesLater(fetchPart, failed) {
  let there = false;
  state.onAnswered(async () => {
    if (there) return;
    there = true;
    try {
      await withPictures();
      (await fetchPart())(shared);
    } catch {
      there = false;
      failed();
    }
  });
}

/** The sheets Build and Projector are fetched, with a program of their own, when one of them is opened. */
function withBuilder() {
  sheets.inSight(["build", "projector"], async () => {
    try {
      (await import("../builder/builder.js")).createBuilder(shared);
    } catch {
      for (const said of ["#build-said", "#projector-said"]) setText($(said), "This sheet could not be fetched. Reload the page to try again; the answer about the swing is complete without it.");
    }
  })();
}

/** The measured figures are fetched when somebody opens them. */
async function showMeasured() {
  if (!$("#measured").open) return;
  try {
    (await import("../model/measured.js")).renderMeasured(state.draft.units);
  } catch {
    setText($("#measured-wait"), "This part of the page could not be fetched. Reload the page to try again.");
  }
}

async function start() {
  fillGlossary($("#glossary"));
  const { error: damage, ...texts } = await linked();
  const reply = await solver.ask({ kind: "start", ...texts, saved: savedPlan() });
  if (!reply.plan) return; // onFatal has said why
  const error = damage ?? reply.error;
  shared.cards = reply.cards;
  createForm($("#cards"), reply.cards, state);
  await state.open(reply.plan, error ? `${asSentence(error.message)} Shown instead is your last good plan, or the demo when there is none.` : "");
  if (!state.good) return;
  page.state = "ready";
  comesLater(async () => () => {}, () => say("The drawings could not be fetched. The answer is complete without them; reload the page to see it."));
  comesLater(async () => (await import("../ball/ball.js")).createBall,
    () => setText($("#ball-failed"), "The part about the ball could not be fetched. The answer about the swing is complete without it."));
  comesLater(async () => (await import("../maps/maps.js")).createMaps,
    () => setText($("#map-live"), "The maps could not be fetched. The answer about the swing is complete without them."));
  comesLater(async () => (await import("../room/room.js")).createRoom,
    () => say("The drawing of the room could not be fetched. Its numbers work without it."));
  comesLater(async () => withBuilder, () => {});
  $("#measured").addEventListener("toggle", showMeasured);
  state.onAnswered(showMeasured);
  addEventListener("hashchange", async () => {
    if (ownStep()) address(); // Back to a sheet; the plan stays as it is, Undo is for that
    else if (linkInAddress() && linkInAddress() !== keptLink()) open(await linked(), "The plan of that link is open.");
  });
  watchAnswer();
}

/** The short answer at the foot of the window while the long one is out of view. */
function watchAnswer() {
  new IntersectionObserver(([entry]) => { $("#peek").hidden = entry.isIntersecting; }).observe($("#verdict-box"));
  $("#peek").addEventListener("click", (e) => {
    e.preventDefault();
    sheets.open("swing");
    $("#answer").focus();
  });
}

start();
