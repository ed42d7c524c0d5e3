// Wires the page: what is typed goes to the solver, its answer onto the page.
//
// Hooks for tests, read-only, on <html>: data-state is "loading", "ready" or
// "error" (the solver cannot run); data-busy is "yes" from an edit until its
// answer is painted; data-stale is "yes" while the numbers typed are not those
// of the answer shown.
import { $, debounce, setText, VERDICT_WORDS } from "./dom.js";
import { createSolver } from "./solver.js";
import { createState, savedPlan, setAt, valueAt, copy } from "./state.js";
import { createForm } from "./form.js";
import { parseNumber } from "./form-field.js";
import { createQuick } from "./quick.js";
import { createToolbar } from "./toolbar.js";
import { createDrawings } from "./flat.js";
import { createStage } from "./stage.js";
import { renderVerdict, renderRemedies, renderSurfaces } from "./verdict.js";
import { renderMatrix } from "./table.js";
import { describeViews } from "./words.js";
import { fillGlossary } from "./help.js";
import { setVisitor, removeVisitor, renameIn, VISITOR, VISITOR_CLUB } from "./plan-edits.js";

const LIVE_MS = 250;
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

async function labels(metres) {
  if (metres.length === 0) return [];
  const reply = await solver.ask({ kind: "labels", metres, units: units() });
  return reply.labels ?? metres.map(() => "");
}
const parse = (text) => solver.ask({ kind: "length", text, units: units() });

const form = createForm($("#cards"), { changed: fieldChanged, restructure, labels });
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
  openText: async (text, name) => take(await solver.ask({ kind: "start", link: "", saved: text }), `${name} is open.`),
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

function edit(change) {
  revision++;
  state.edit(change);
  page.busy = "yes";
}

/** Takes a whole plan (a file, a link, the demo); a refused one changes nothing. */
async function take(reply, sentence) {
  if (reply.error) {
    say(reply.error.message);
    return;
  }
  edit(() => {});
  state.draft = copy(reply.plan);
  await solve();
  say([...(reply.notes ?? []), sentence].join(" "));
}

function travel(plan) {
  if (!plan) return;
  revision++;
  state.draft = plan;
  form.release();
  solve("", { fresh: true });
}

function restructure(change) {
  edit(change);
  return solve();
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
  say(`${message.replace(/^./, (c) => c.toUpperCase()).replace(/\.?$/, ".")} The answer shown is from the last good numbers.`);
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
  drawings.render(flat, dims, describeViews(flat, dims, state.focus, check));
  await Promise.all([
    renderSurfaces(check, plan.margin, labels),
    renderMatrix(report, plan, state.focus, labels, setFocus),
    form.render(state.draft),
    quick.render(state.draft, labels),
  ]);
  stage.update();
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

const later = debounce((field) => applyField(field), LIVE_MS);

function fieldChanged(field, settled) {
  later.cancel();
  if (settled) applyField(field);
  else if (field.spec.kind !== "text") later(field);
}

async function applyField(field) {
  const { spec, path, text } = field;
  page.busy = "yes";
  const value = await readField(field);
  if (value?.error) {
    page.busy = "no";
    field.hold(value.error);
    markStale(true);
    say(`${value.error} The answer shown is from the last good numbers.`);
    return;
  }
  field.unhold();
  const before = valueAt(state.draft, path);
  edit((plan) => {
    setAt(plan, path, value);
    const [, list, index, key] = /^(clubs|tees)\[(\d+)\]\.(\w+)$/.exec(path) ?? [];
    if (key === "name") renameIn(plan, list, before, text);
    // Another kind of club has other usual numbers: let the solver fill them in.
    if (key === "kind") for (const usual of ["length", "lie", "loft", "ball"]) delete plan.clubs[index][usual];
  });
  await solve(path);
}

/** The value typed, undefined for a blank optional field, or {error: sentence}. */
async function readField({ spec, text, input }) {
  if (spec.kind === "check") return input.checked;
  if (text === "" && spec.optional) return undefined;
  if (spec.kind === "length") {
    const reply = await parse(text);
    return reply.error ? { error: reply.error.message } : reply.metres;
  }
  if (spec.kind === "number") {
    const n = parseNumber(text);
    return Number.isNaN(n) ? { error: `${spec.label}: “${text}” is not a number of ${spec.unit}.` } : n;
  }
  return text;
}

async function start() {
  fillGlossary($("#glossary"));
  const reply = await solver.ask({ kind: "start", link: location.hash, saved: savedPlan() });
  if (!reply.plan) return; // onFatal has said why
  state.draft = copy(reply.plan);
  await solve("", { fresh: true });
  if (!state.good) return;
  const words = [reply.error?.message, ...(reply.notes ?? [])].filter(Boolean);
  if (words.length) say(words.join(" "));
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
