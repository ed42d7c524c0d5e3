// The sheet to take to the room, on paper: a page for the wall (who may swing what, and
// where everybody stands), one for the builder (plan and elevation to scale) and, where the
// plan says what is built, one for the shop (quantities, and how each was counted). It is
// made of answers asked for when somebody prints, whichever sheets were opened before.
import { $, $$, asSentence, h, icon, keptTogether, styles, VERDICT_WORDS } from "../app/dom.js";
import { pack } from "../app/link.js";
import { dimsOf } from "../drawings/drawings.js";
import { tapes, SHOWN } from "../maps/guest.js";
import { guestPlan } from "../maps/guestplan.js";
import { drawings } from "./scale.js";
import { linkCode } from "./code.js";

const CATCH = 0.99; // of ordinary balls
const [WIDE, TALL] = [300, 200]; // px: the room with a guest in it

/** Makes the paper and has the browser print it. */
export async function printPaper(/** @type {Shared} */ shared) {
  const { state, solver, mapOf } = shared;
  await styles("print/print.css", "maps/maps.css");
  const { good, focus } = state;
  const [marks, hang, ball, link, amounts] = await Promise.all([mapOf("marks"), mapOf("hang"),
    solver.ask({ kind: "ball", plan: good, focus, catch: CATCH }), pack(JSON.stringify(state.answer.sparse)), amountsOf(good)]);
  $("#paper")?.remove();
  document.body.append(h("article", { id: "paper", "aria-label": "The sheet to print" }, wall(state, marks), builder(state, hang, ball, link), amounts ? shop(state, amounts) : null));
  addEventListener("afterprint", () => $("#paper")?.remove(), { once: true });
  print();
}

/** The quantities of a plan that says what is built, by a program that who prints another plan need not fetch. */
async function amountsOf(plan) {
  if (!plan.build && !plan.projector) return null;
  try {
    const { builderProgram } = await import("../builder/client.js");
    return await builderProgram().ask({ kind: "amounts", plan });
  } catch {
    return { error: { message: "the quantities could not be fetched" } };
  }
}

/** The room's name, the day, and the worst of everyone. */
function head(/** @type {State} */ { good, answer: { sentences, report } }, title) {
  return h("header", { class: "paper-head" },
    h("h1", {}, good.title || "Wide Berth"),
    h("p", {}, `${title}. ${new Date().toLocaleDateString(undefined, { year: "numeric", month: "long", day: "numeric" })}.`),
    h("p", { class: "paper-verdict", "data-verdict": report.verdict }, icon(report.verdict), " ", h("strong", {}, sentences.headline), ` ${sentences.worst}`));
}

/** For the wall of the room. */
function wall(/** @type {State} */ state, marks) {
  const guests = new Map();
  for (const mark of marks?.marks ?? []) {
    const who = JSON.stringify([mark.player, mark.tee]);
    if (!guests.has(who)) guests.set(who, mark); // with the first club: the feet are about the same
  }
  return h("section", { class: "paper-page" },
    head(state, "Who may swing what, and where everybody stands"),
    clearances(state),
    ...[...guests.values()].map((mark) => h("div", { class: "paper-guest" },
      guestPlan(mark, marks.size, SHOWN, WIDE, TALL),
      h("div", {}, h("h2", {}, `${mark.player}, ${mark.club}, ${mark.tee} tee`),
        h("p", {}, icon(mark.verdict), " ", ...keptTogether(mark.sentence)), tapes(mark, true)))),
    h("p", { class: "paper-caution" }, "A model, not a promise. First swings slow, with the longest club, without a ball, and with somebody watching the clubhead."));
}

/** Everybody's clearance with every club, and what it is from. */
function clearances(/** @type {State} */ { answer: { report, figures } }) {
  const tees = new Set(report.checks.map(({ tee }) => tee)).size > 1;
  return h("table", { class: "paper-table" },
    h("caption", {}, "Clearance of the loosest swing; less than nothing strikes"),
    h("thead", {}, h("tr", {}, ...["Player", "Club", ...(tees ? ["Tee"] : []), "Clearance", "Nearest", ""].map((text) => h("th", { scope: "col" }, text)))),
    h("tbody", {}, ...report.checks.map((check, i) => h("tr", {},
      h("th", { scope: "row" }, check.player), h("td", {}, check.club), tees ? h("td", {}, check.tee) : null,
      h("td", { class: "num" }, figures.checks[i]), h("td", {}, check.nearest.surface),
      h("td", {}, icon(check.verdict), ` ${VERDICT_WORDS[check.verdict]}`)))));
}

/** For who builds the room. */
function builder(/** @type {State} */ state, hang, ball, link) {
  const { answer: { flat, figures }, good } = state;
  const drawn = drawings(flat, dimsOf(figures), good.units);
  const [near, far, right, left] = figures.mat;
  const told = (said) => [icon(said.verdict), " ", ...keptTogether(said.text)];
  /** @type {[string, any[][]][]} */
  const facts = [
    ...good.tees.map(({ name }, i) => /** @type {[string, any[][]]} */ ([`Ball, ${name} tee`, [[`${figures.fields[`tees[${i}].x`]} from the back wall, ${figures.fields[`tees[${i}].y`]} from the right wall`]]])),
    ["Mat", near ? [[`${near} to ${far} from the back wall, ${right} to ${left} from the right wall`]] : []],
    ["Overhead", (hang?.things ?? []).map(told)],
    ["The ball", [ball?.said?.caught, ball?.said?.returns, ball?.said?.back].filter(Boolean).map(told)],
  ];
  const { code, address } = linkCode(link);
  return h("section", { class: "paper-page" },
    head(state, `For the builder. Plan and elevation ${drawn.named}`),
    h("div", { class: "paper-board" }, h("div", {}, ...drawn.views, drawn.ruler),
      h("div", {},
        h("dl", { class: "paper-facts" }, ...facts.filter(([, said]) => said.length).flatMap(([name, said]) => [h("dt", {}, name), ...said.map((one) => h("dd", {}, ...one))])),
        code ? h("figure", {}, code, h("figcaption", {}, `This plan, at ${address}`)) : null)),
    h("div", { class: "paper-end" }, h("h2", {}, "Before anyone swings"), ...$$("#cautions ul").map((list) => list.cloneNode(true))));
}

/** For the shop: what to buy. */
function shop(/** @type {State} */ state, { error, quantities, total }) {
  return h("section", { class: "paper-page" },
    head(state, "What to buy, and how it was counted"),
    error ? h("p", {}, asSentence(error.message)) : h("table", { class: "paper-table paper-amounts" },
      h("thead", {}, h("tr", {}, ...["Item", "Count", "Unit price", "Cost", "How it was counted"].map((text) => h("th", { scope: "col" }, text)))),
      h("tbody", {}, ...quantities.map(({ item, count, price, cost, rule }) => h("tr", {},
        h("th", { scope: "row" }, item), h("td", { class: "num" }, count), h("td", { class: "num" }, price), h("td", { class: "num" }, cost), h("td", {}, rule))))),
    error ? null : h("p", { class: "paper-total" }, quantities.some(({ price }) => price) ? `Total ${total}.` : "No prices are in the plan."));
}
