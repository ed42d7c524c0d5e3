// Wires the page: one state, and the parts that change it and hear of its answers.
//
// Hooks for tests, read-only, on <html>: data-state is "loading", "ready" or
// "error" (the solver cannot run); data-busy is "yes" from an edit until its
// answer is painted and in the address; data-stale is "yes" while the numbers
// typed are not those of the answer shown.
import { $, asSentence, setText, styles } from "./dom.js";
import { createSolver } from "../solver/solver.js";
import { createState } from "./state.js";
import { address, keep, keptLink, savedPlan } from "./store.js";
import { audience, linkInAddress, ownStep, putAudience } from "./address.js";
import { createSheets } from "./sheets.js";
import { createMover, wouldMean } from "./mover.js";
import { unpack } from "./link.js";
import { again } from "./again.js";
import { learnDemo, learnLast } from "../solver/known.js";
import { createStrip } from "../form/strip.js";
import { showMoving, showVerdict, showSurfaces } from "../answer/verdict.js";
import { showEveryone } from "../answer/everyone.js";

const page = document.documentElement.dataset;
let newcomer = false; // brings nothing along: neither a link nor a plan of their own
page.audience = audience(); // whom the address was made for: share/
const say = (sentence) => setText($("#notice"), sentence);

const SLOW_MS = 1500; // of waiting before its progress is shown
const progress = $("#progress");
const known = new Map();
let since = 0; // of the page, when the wait for an answer began, ms

function fatal(message) {
  page.state = "error";
  page.busy = "no";
  progress.hidden = true;
  $("#verdict-wait").hidden = Boolean(state.good);
  if (state.good) say(message);
  else setText($("#verdict-wait"), message);
}
const solver = createSolver({
  onProgress(share) {
    progress.hidden = performance.now() - since < SLOW_MS;
    $("progress", progress).value = share;
  },
  onFatal: fatal,
  known,
});
const state = createState({
  ask: (request) => solver.latest("solve", request),
  busy(busy) {
    if (busy && page.busy === "no") since = performance.now();
    page.busy = busy ? "yes" : "no";
    progress.hidden ||= !busy;
  },
  async keep(answer, whose) {
    const told = await keep(answer, page.audience === "friend" ? "looked" : whose);
    if (told) say([state.said, told].filter(Boolean).join(" "));
  },
});

/** Opens a plan by its text, or the demo; a refused one changes nothing. */
async function open(texts, said) {
  const reply = texts.error ? texts : await solver.ask({ kind: "open", ...texts });
  const error = reply.error ?? await state.open(reply.plan, said);
  if (!error) return;
  address();
  say(`${asSentence(error.message)} What was here is unchanged.`);
}

/** The text of the plan in the address. */
async function linked() {
  const link = linkInAddress();
  if (!link) return {};
  const { text, error } = await unpack(link);
  return error ? { error } : { linked: text };
}

$("button", progress).addEventListener("click", () => solver.giveUp("solve"));
state.onAnswered(({ said }) => {
  page.stale = "no";
  if (page.state === "error") page.state = "ready"; // a new worker
  say(said);
}, ({ refusal }) => {
  page.stale = "yes";
  say(`${asSentence(refusal.message)} The answer shown is from the last good numbers.`);
});
state.onAnswered(showVerdict, () => state.answer && showVerdict(state)); // a tee let go where it cannot be: the last good answer stands
for (const show of [showSurfaces, showEveryone]) state.onAnswered(show);
const sheets = createSheets();
const mover = createMover(state, solver.latest);
createStrip(state, mover, (text) => solver.ask({ kind: "length", text, units: state.good.units }));
showMoving(mover);

/** What parts that come later share; idle says that no verdict is under way. */
const shared = { state, solver, drawings: /** @type {Drawings} */ (null), sheets, mover, idle: () => page.busy === "no", cards: /** @type {Wire.Card[]} */ ([]), mapOf: async (/** @type {string} */ _which) => null };

let pictures = null; // on their way, or there

const fetchPictures = () => Promise.all([import("../drawings/drawings.js"), import("../stage/stage.js"), styles("drawings/drawings.css")]);

/** Makes the drawings and the stage, once: the first verdict does not wait for them. */
function withPictures() {
  pictures ??= fetchPictures().then(([{ createDrawings }, { createStage }]) => {
    shared.drawings = createDrawings(state);
    createStage(state, mover, { reel: (request) => solver.latest("reel", request), show: solver.show, map: (which) => shared.mapOf(which), started: solver.started });
  }).catch((error) => {
    pictures = null;
    throw error;
  });
  return pictures;
}

/** Brings a part of the page; if that fails, it says so and tries again with the next answer. */
function comesLater(bring, failed) {
  let there = false;
  state.onAnswered(async () => {
    if (there) return;
    there = true;
    try {
      await bring();
    } catch {
      there = false;
      failed();
    }
  });
}

/**
 * Opens the first plan that works: the link's, the one last worked on, the demo. A
 * plan may read well and yet be one that nobody can swing in, so each is tried.
 * A friend gets the room without its people. What a friend sent back is not opened
 * over a plan of the visitor's own, who is asked.
 */
async function openFirst() {
  const { error: damage, ...link } = await linked();
  const saved = savedPlan() || undefined;
  const friend = page.audience === "friend" && link.linked ? await import("../share/friend.js").catch(() => null) : null;
  await friend?.dressForFriend();
  const asks = page.audience === "owner" && link.linked && saved && !(await solver.ask({ kind: "open", saved })).error;
  let error = damage;
  newcomer = !friend && !error && !link.linked && !saved;
  if (newcomer) Promise.all([fetchPictures(), import("./whole.js")]).catch(() => {}); // the line is free while what is known comes
  await (newcomer ? learnDemo : learnLast)(known);
  for (const texts of [asks ? { saved } : { ...link, saved }, { saved }, {}]) {
    const reply = await solver.ask({ kind: "start", ...texts });
    error ??= reply.error;
    if (!reply.plan) continue;
    shared.cards = reply.cards;
    const mine = friend && !error;
    page.audience = mine ? "friend" : "";
    const refused = await state.open(mine ? friend.roomForFriend(reply.plan) : reply.plan,
      error ? `${asSentence(error.message)} Shown instead is your last good plan, or the demo when there is none.` : "");
    if (state.good) {
      page.state = "ready";
      begin(mine ? friend : null);
      if (asks) await askOwner(link.linked);
      return;
    }
    error ??= refused;
  }
  fatal(asSentence(error.message));
}

/** What follows the first answer. */
function begin(friend) {
  styles("app/late.css").catch(() => {}); // plainer without
  if (friend) {
    friend.createFriend(shared, wholePage);
    comesLater(withPictures, () => {}); // the stage
  } else {
    putAudience("");
    comesLater(withPictures, () => say(`The drawings could not be fetched. The answer is complete without them; ${again()}`));
    wholePage();
  }
  addEventListener("hashchange", async () => {
    if (ownStep()) address(); // Back to a sheet; the plan stays as it is, Undo is for that
    else if (audience() === "friend") location.reload(); // another page
    else if (linkInAddress() && linkInAddress() !== keptLink()) {
      const { error, linked: text } = await linked();
      const asks = text && audience() === "owner";
      putAudience("");
      if (asks) await askOwner(text);
      else open({ error, linked: text }, "The plan of that link is open.");
    }
  });
  watchAnswer();
  warmUp();
}

/**
 * After the first answer the solver works it out too where that was known, and learns what
 * a moved tee needs: nobody should wait for that later. What was known may be of another
 * version than the solver, which has the last word.
 */
async function warmUp() {
  const { answer, focus, good } = state;
  if (known.size) {
    const own = await solver.warm({ kind: "solve", plan: good, focus });
    if (own.error || state.answer !== answer) return;
    if (JSON.stringify(own) !== JSON.stringify(answer)) {
      known.clear();
      state.look(focus);
    }
  }
  const { x, y } = mover.at(focus.tee);
  solver.warm(wouldMean(good, focus.tee, x, y));
}

/** Asks the visitor about a player whom a friend sent back; the visitor's plan is open. */
async function askOwner(text) {
  address();
  try {
    await (await import("../share/received.js")).askOwner(shared, text, say);
  } catch {
    say(`What was sent could not be shown; your plan is as it was. Open its link again later, or ${again()}`);
  }
}

/** The parts of the page that come after the verdict. */
const wholePage = () => comesLater(
  async () => (await import("./whole.js")).createWhole({ shared, comesLater, withPictures, open, say, newcomer }),
  () => say(`The rest of the page could not be fetched. The answer is complete without it; ${again()}`));

/** The short answer at the foot of the window while the long one is out of view. */
function watchAnswer() {
  new IntersectionObserver((entries) => { $("#peek").hidden = entries.at(-1).isIntersecting; }).observe($("#verdict-box"));
  $("#peek").addEventListener("click", (e) => {
    e.preventDefault();
    sheets.open("swing");
    $("#answer").focus();
  });
}

openFirst();
