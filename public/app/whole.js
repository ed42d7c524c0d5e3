// The parts of the page that come after the first verdict, each fetched by itself.
import { $, $$, setText, styles, turn } from "./dom.js";
import { again } from "./again.js";

const OFFLINE_MS = 4000; // after the first answer: what is in sight comes before what is kept for later

/**
 * Brings them. comesLater(bring, failed) brings a part with the first answer and tries
 * again with the next, withPictures() resolves when the drawings are there; a newcomer is
 * shown round.
 */
export function createWhole({ shared, comesLater, withPictures, open, say, newcomer }) {
  const { state, sheets } = shared;

  /** Brings a part that builds on the drawings: fetchPart() resolves to what makes it of what is shared. */
  async function onPictures(fetchPart) {
    const [make] = await Promise.all([fetchPart(), withPictures()]);
    await turn();
    make(shared);
  }

  /** The key that prints makes the sheet to take to the room: the screen is no sheet of paper. */
  function printByKey() {
    addEventListener("keydown", async (e) => {
      if (e.key.toLowerCase() !== "p" || !(e.ctrlKey || e.metaKey) || e.shiftKey || e.altKey || $("dialog[open]")) return;
      e.preventDefault();
      try {
        await (await import("../print/print.js")).printPaper(shared);
      } catch {
        say(`The sheet to print could not be made; ${again()}`);
      }
    });
  }

  /** The sheets Build and Projector are fetched, with a program of their own, when one of them is opened. */
  function withBuilder() {
    sheets.inSight(["build", "projector"], async () => {
      try {
        (await import("../builder/builder.js")).createBuilder(shared);
      } catch {
        for (const said of ["#build-said", "#projector-said"]) setText($(said), `This sheet could not be fetched; ${again()}`);
      }
    })();
  }

  /** The measured figures are fetched when somebody opens them. */
  async function showMeasured() {
    if (!$("#measured").open) return;
    try {
      (await import("../model/measured.js")).renderMeasured(state.draft.units);
    } catch {
      setText($("#measured-wait"), `This part of the page could not be fetched; ${again()}`);
    }
  }

  /** Fetches a dialog when somebody first asks for it. */
  function onDemand(buttons, fetchPart) {
    for (const button of $$(buttons)) {
      button.addEventListener("click", async () => {
        try {
          (await fetchPart())(shared);
        } catch {
          say(`This part of the page could not be fetched. The answer is complete without it; ${again()}`);
        }
      });
    }
  }

  /** Steps back, the cards, the causes and what explains: nobody needs them before the first answer. */
  async function createRest() {
    const [{ createToolbar }, { createForm }, { showCauses }, { fillGlossary }, { createKeys }] = await Promise.all([
      import("./toolbar.js"), import("../form/form.js"), import("../answer/causes.js"), import("../help/glossary.js"), import("../help/keys.js"), styles("form/form.css")]);
    createToolbar(state, { open, say });
    await turn();
    createForm($("#cards"), shared.cards, state);
    state.onAnswered(showCauses);
    fillGlossary($("#glossary"));
    createKeys();
  }

  comesLater(createRest, () => say(`The numbers of the room could not be fetched. The answer is complete without them; ${again()}`));
  comesLater(() => onPictures(async () => (await import("../ball/ball.js")).createBall),
    () => setText($("#ball-failed"), "The part about the ball could not be fetched. The answer about the swing is complete without it."));
  comesLater(async () => {
    await onPictures(async () => (await import("../maps/maps.js")).createMaps);
    printByKey();
  },
    () => setText($("#map-live"), "The maps could not be fetched. The answer about the swing is complete without them."));
  comesLater(() => onPictures(async () => (await import("../room/room.js")).createRoom),
    () => say("The drawing of the room could not be fetched. Its numbers work without it."));
  withBuilder();
  $("#measured").addEventListener("toggle", showMeasured);
  state.onAnswered(showMeasured);
  onDemand("#plans, #plans-kept", async () => (await import("../keep/keep.js")).openKeep);
  setTimeout(async () => {
    try {
      (await import("../offline/offline.js")).createOffline();
    } catch {
      // Without it the page works as long as there is a network.
    }
  }, OFFLINE_MS);
  if (newcomer) comesLater(() => onPictures(async () => (await import("../help/steps.js")).showSteps), () => {}); // the page explains itself without
  comesLater(async () => (await import("../solver/last.js")).createLast(shared), () => {}); // the next visit asks the solver
  onDemand("#measuring", async () => (await import("../help/measure.js")).openMeasuring);
  onDemand("#share", async () => (await import("../share/share.js")).openShare);
}
