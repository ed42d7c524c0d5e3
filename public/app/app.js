// Wires the page: what is typed goes to the solver, its answer onto the page.
//
// Hooks for tests, read-only, on <html>: data-state is "loading", "ready" or
// "error" (the solver cannot run); data-busy is "yes" from an edit until its
// answer is painted; data-stale is "yes" while the numbers typed are not those
// of the answer shown.
import { $, setText, VERDICT_WORDS } from "./dom.js";
import { createSolver } from "./solver.js";
import { createState, savedPlan, copy } from "./state.js";
import { createForm } from "../form/form.js";
import { createTyping } from "../form/typing.js";
import { createQuick } from "../form/quick.js";
import { createToolbar } from "./toolbar.js";
import { createDrawings } from "../drawings/drawings.js";
import { createStage } from "./stage.js";
import { renderVerdict, renderRemedies, renderSurfaces } from "./verdict.js";
import { renderSensitivity } from "./causes.js";
import { renderMatrix } from "./everyone.js";
import { describeViews, titleBlock } from "../drawings/words.js";
import { fillGlossary } from "./glossary.js";
import { setVisitor, removeVisitor, VISITOR, VISITOR_CLUB } from "./edits.js";

const page = document.documentElement.dataset;
const state = createState();
let revision = 0; // of the draft: an answer to an older one must not overwrite it

const solver = createSolver({
  onFatal(message) {
    page.state = "error";
    page.busy = "no";
    $("#verdict-wait").hidden = Boolean(state.good);
    setText($("#verdict-wait"), message);
    if (state.good) say(message);
  },
});
const units = () => (state.draft?.units === "metric" ? "metric" : "imperial");
const say = (sentence) => setText($("#notice"), sentence);
const asSentence = (text) => text.replace(/^\p{Ll}/u, (c) => c.toUpperCase()).replace(/[.!?]?$/, (end) => end || ".");
const LAST_GOOD = "The answer shown is from the last good numbers.";

/** Labels of lengths: form "" for sizes, "short" for clubs, "down" for clearances. */
async function labels(metres, form = "") {
  if (metres.length === 0) return [];
  const reply = await solver.ask({ kind: "labels", metres, units: units(), form });
  return reply.labels ?? metres.map(() => "");
}
/** Reads a length or, where of names one, another quantity: {metres} or {value}. */
const parse = (text, of = "") => solver.ask({ kind: of ? "quantity" : "length", of, text, units: units() });

const form = createForm($("#cards"), {
  restructure, labels,
  changed: createTyping({
    state, parse, edit, solve,
    revision: () => revision,
    busy() { page.busy = "yes"; },
    tidy: (field) => form.tidy(field, state.draft),
    unreadable(message) {
      page.busy = "no";
      markStale(true);
      say(`${asSentence(message)} ${LAST_GOOD}`);
    },
  }),
});
const drawings = createDrawings();
const quick = createQuick({
  parse,
  async apply(visitor) {
    edit((plan) => setVisitor(plan, visitor));
    const own = state.draft.players.find((p) => p.name === VISITOR);
    await solve("visitor", { focus: { player: VISITOR, club: own.clubs?.[0] ?? VISITOR_CLUB, tee: state.draft.tees[0].name } });
    await focusWorst(VISITOR);
  },
  remove() {
    edit(removeVisitor);
    solve();
  },
});
const toolbar = createToolbar({
  undo: () => travel(state.undo()),
  redo: () => travel(state.redo()),
  demo: async () => take(await solver.ask({ kind: "demo" }), "The demo is back. Undo returns to your room."),
  // Nothing saved means the demo to the solver; an empty file is a mistake.
  openText: async (text, name) => take(text.trim() === ""
    ? { error: { message: `${name} is empty: a plan file is one JSON object.` } }
    : await solver.ask({ kind: "start", link: "", saved: text }), `${name} is open.`),
  plan: () => state.good,
  units(name) {
    edit((plan) => { plan.units = name; });
    solve();
  },
  say,
});
const stage = createStage({
  async show() {
    const reply = await solver.show({ kind: "show", plan: state.good, focus: state.focus });
    return reply?.bytes ? { bytes: reply.bytes, tightest: focusedCheck()?.nearest?.time ?? 0 } : null;
  },
});
/** The part about the ball is fetched once the first verdict stands. */
let ball = null;
async function updateBall() {
  ball ??= import("../ball/ball.js").then(({ createBall }) => createBall({
    ask: (catchRate) => solver.latest("ball", { kind: "ball", plan: state.good, focus: state.focus, catch: catchRate }),
    idle: () => page.busy === "no",
    lay: drawings.lay,
  }));
  try {
    (await ball).update();
  } catch {
    ball = null; // the next answer tries again
    setText($("#ball-failed"), "The part about the ball could not be fetched. The answer about the swing is complete without it.");
  }
}

/** So are the maps, the standing marks and the changes that would do. */
let maps = null;
async function updateMaps() {
  maps ??= import("../maps/maps.js").then(({ createMaps }) => createMaps({
    state, edit, solve, restructure, take, drawings, units,
    lead: (channel, request) => solver.latest(channel, request),
    idle: () => page.busy === "no",
    parse: (text) => parse(text),
  }));
  try {
    (await maps).update();
  } catch {
    maps = null; // the next answer tries again
    setText($("#map-live"), "The maps could not be fetched. The answer about the swing is complete without them.");
  }
}

/** The measured figures are fetched when somebody opens them. */
async function showMeasured() {
  if (!$("#measured").open) return;
  try {
    (await import("../model/measured.js")).renderMeasured(units());
  } catch {
    setText($("#measured-wait"), "This part of the page could not be fetched. Reload the page to try again.");
  }
}
$("#measured").addEventListener("toggle", showMeasured);

function edit(change) {
  revision++;
  state.edit(change);
  page.busy = "yes";
}

/** Takes a whole plan (a file, a link, the demo); a refused one changes nothing. */
async function take(reply, said) {
  if (reply.error) {
    if (state.result?.link) history.replaceState(null, "", state.result.link);
    say(`${asSentence(reply.error.message)} What was here is unchanged.`);
    return;
  }
  form.release();
  edit(() => {});
  state.draft = copy(reply.plan);
  await solve();
  say([said, ...(reply.notes ?? [])].join(" "));
}

function travel(plan) {
  if (!plan) return;
  revision++;
  state.draft = plan;
  form.release();
  solve("", { fresh: true });
}

/** An edit that adds or takes away rows; focusOn is the path of the field to go to. */
async function restructure(change, focusOn) {
  edit(change);
  await solve();
  if (focusOn) form.focus(focusOn(state.draft));
}

/** Only names that the plan still has; the solver picks the worst for the rest. */
function knownFocus({ player, club, tee }, plan) {
  const has = (list, name) => (list ?? []).some((item) => item.name === name);
  const known = has(plan.players, player) && has(plan.clubs, club) && has(plan.tees, tee);
  return known ? { player, club, tee } : { player: "", club: "", tee: "" };
}

async function solve(path = "", { fresh = false, focus = state.focus } = {}) {
  const mine = revision;
  page.busy = "yes";
  const plan = state.draft;
  const reply = await solver.latest("solve", { kind: "solve", plan, focus: knownFocus(focus, plan) });
  if (!reply) return; // a newer edit took its place
  if (reply.error) {
    refuse(reply.error);
    return;
  }
  state.accept(reply.plan, reply, path, { fresh, newer: mine !== revision });
  await paint();
  if (mine === revision) page.busy = "no";
}

/** Keeps the last good answer and says beside the field what is wrong. */
function refuse({ message, field }) {
  page.busy = "no";
  markStale(true);
  toolbar.render(state);
  form.clearErrors();
  quick.clearErrors();
  if (field) {
    form.fail(field, message);
    quick.fail(field, message, state.draft);
  }
  say(`${asSentence(message)} ${LAST_GOOD}`);
}

function markStale(stale) {
  page.stale = stale ? "yes" : "no";
}

const focusedCheck = () => {
  const { player, club, tee } = state.focus;
  return state.result?.report.checks.find((c) => c.player === player && c.club === club && c.tee === tee);
};

async function paint() {
  const { report, sentences, flat, notes } = state.result;
  const plan = state.good;
  const check = focusedCheck();
  renderVerdict(check, sentences);
  markStale(form.anyHeld());
  if (!form.anyHeld()) say((notes ?? []).join(" "));
  renderRemedies(check, (changed) => restructure((p) => Object.assign(p, changed)));
  toolbar.render(state);
  setText($("#peek"), `${VERDICT_WORDS[check?.verdict] ?? ""}: ${state.focus.player}, ${state.focus.club}`);
  $("#peek").dataset.verdict = check?.verdict ?? "";
  document.title = `${VERDICT_WORDS[report.verdict]}: ${plan.title || "Wide Berth"}`;

  const [length, width, height] = await labels([plan.room.length, plan.room.width, plan.room.height]);
  const dims = { length, width, height };
  drawings.render(flat, dims, describeViews(flat, dims, state.focus, check), titleBlock(plan, state.focus, check));
  await Promise.all([
    renderSurfaces(check, plan.margin, labels),
    renderSensitivity(check, labels),
    renderMatrix(report, plan, state.focus, labels, setFocus),
    form.render(state.draft),
    quick.render(state.draft, labels),
  ]);
  stage.update();
  updateBall();
  updateMaps();
  showMeasured();
}

function setFocus(focus) {
  state.focus = focus;
  return solve("", { fresh: true, focus });
}

async function focusWorst(player) {
  const checks = (state.result?.report.checks ?? []).filter((c) => c.player === player);
  const worst = checks.reduce((a, b) => (b.clearance < a.clearance ? b : a), checks[0]);
  if (worst && (state.focus.player !== player || worst.tee !== state.focus.tee)) {
    await setFocus({ player: worst.player, club: worst.club, tee: worst.tee });
  }
}

async function start() {
  fillGlossary($("#glossary"));
  const reply = await solver.ask({ kind: "start", link: location.hash, saved: savedPlan() });
  if (!reply.plan) return; // onFatal has said why
  state.draft = copy(reply.plan);
  await solve("", { fresh: true });
  if (!state.good) return;
  if (reply.error) say(`${asSentence(reply.error.message)} Shown instead is your last good plan, or the demo when there is none.`);
  page.state = "ready";
  stage.loadWhenSeen();
  watchAnswer();
}

/** The short answer at the foot of the window while the long one is out of view. */
function watchAnswer() {
  new IntersectionObserver(([entry]) => { $("#peek").hidden = entry.isIntersecting; }).observe($("#verdict-box"));
}

addEventListener("hashchange", async () => {
  if (location.hash.startsWith("#p=")) take(await solver.ask({ kind: "start", link: location.hash, saved: "" }), "The plan of that link is open.");
});

start();
