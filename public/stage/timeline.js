// The timeline: phases, where it is tight or something is struck, the slider, the
// buttons, and one line that says what is nearest.
import { h, s, setText } from "../app/dom.js";
import { RATES } from "./clock.js";
import { nextStop } from "./reel.js";

/** Frames a second of a step, and of one with Shift: those of the reel. */
export const STEP = 60;
export const FINE_STEP = 240;

const RATE_NAMES = { 1: "full speed", 0.25: "1/4 speed", 0.0625: "1/16 speed" };
const HALF_FRAME = 1 / (2 * FINE_STEP); // s
const NARROW = 0.07; // share of the swing from which a phase's name fits into the band
const PLAYING = "playing"; // a slider that read out every frame would never be quiet

/** What a moment reads as: "0.850 s, downswing: clubhead 4 in from left wall · 62 mph". */
export function momentWords(/** @type {Clock} */ { t, phase }, /** @type {Reel} */ reel) {
  const touch = Math.abs(t - reel.first) < HALF_FRAME ? "; first touch" : "";
  return `${t.toFixed(3)} s, ${phase}: ${reel.said(t)}${touch}`;
}

/** @returns {{from: number, to: number, verdict: string, words: string}[]} the moments as shares of the swing */
export function ticksOf(/** @type {Reel} */ { moments, duration }) {
  const share = (t) => Math.max(0, Math.min(1, t / duration));
  return moments.map(({ start, end, verdict, part, surface }) => ({ from: share(start), to: share(end), verdict, words: `${part}, ${surface}` }));
}

/** What a key asks of the clock: frames to step, or whether to play; null when nothing. */
export function keyAsks({ key, shiftKey }) {
  const rate = shiftKey ? FINE_STEP : STEP;
  if (key === "," || key === "<" || key === "ArrowLeft" || key === "ArrowDown") return { step: -1, rate };
  if (key === "." || key === ">" || key === "ArrowRight" || key === "ArrowUp") return { step: 1, rate };
  return key === " " ? { toggle: true } : null;
}

/**
 * Builds the timeline. changed() is called after each thing that somebody did to
 * the clock here; ids begin with a word of one's own.
 */
export function createTimeline(/** @type {Clock} */ clock, changed, own = "stage") {
  let /** @type {Reel} */ reel = null;
  const glyph = (d) => s("svg", { viewBox: "0 0 24 24", "aria-hidden": "true", focusable: "false" }, s("path", { d }));
  const button = (label, d, does) => h("button", { type: "button", class: "stage-key", "aria-label": label, title: label, onclick: () => { does(); changed(); } }, glyph(d));
  const to = (direction) => () => {
    clock.pause();
    clock.seek(nextStop(reel.stops, clock.t, direction));
  };
  const back = button("Previous strike or tight place", "M11 5L4 12l7 7V5zM20 5l-7 7 7 7V5z", to(-1));
  const stepBack = button("One frame back", "M6 5h3v14H6zM19 5l-8 7 8 7z", () => clock.step(-1, STEP));
  const play = h("button", { type: "button", id: `${own}-play`, class: "stage-play", onclick: () => toggle() }, "Play");
  const stepOn = button("One frame forward", "M15 5h3v14h-3zM5 5l8 7-8 7z", () => clock.step(1, STEP));
  const on = button("Next strike or tight place", "M13 5l7 7-7 7V5zM4 5l7 7-7 7V5z", to(1));
  const tightest = h("button", { type: "button", onclick: () => {
    clock.pause();
    clock.seek(reel.tightest);
    changed();
  } }, "Tightest");
  const rate = h("select", { "aria-label": "Speed", onchange: () => { clock.setRate(Number(rate.value)); changed(); } },
    ...RATES.map((one) => h("option", { value: one, selected: one === clock.rate }, RATE_NAMES[one])));
  const loop = h("select", { "aria-label": "Loop", onchange: () => { clock.setLoop(loop.value); changed(); } });
  const slider = h("input", { type: "range", id: `${own}-slider`, class: "stage-slider", "aria-label": "Moment in the swing", min: 0, max: 1, step: "any", value: 0 });
  slider.addEventListener("input", () => {
    clock.pause();
    clock.seek(Number(slider.value));
    changed();
  });
  const phases = h("div", { class: "stage-phases", "aria-hidden": "true" });
  const ticks = h("div", { class: "stage-ticks", "aria-hidden": "true" });
  const line = h("p", { class: "stage-line" });
  const spoken = h("p", { class: "visually-hidden", role: "status" });
  const el = h("div", { class: "stage-timeline" },
    line,
    h("div", { class: "stage-track" }, phases, ticks, slider),
    h("div", { class: "stage-keys", role: "group", "aria-label": "Playing" }, back, stepBack, play, stepOn, on, tightest, rate, loop),
    spoken);

  function toggle() {
    if (clock.playing) clock.pause();
    else clock.play();
    changed();
  }

  const placed = (part, from, to) => {
    part.style.setProperty("--from", String(from));
    part.style.setProperty("--to", String(to));
    return part;
  };

  return {
    el,
    /** Does what a key asks, if it asks for anything; tells whether it did. */
    press(event) {
      const asks = keyAsks(event);
      if (!asks || !reel) return false;
      if (asks.toggle) toggle();
      else {
        clock.step(asks.step, asks.rate);
        changed();
      }
      return true;
    },

    /** Takes another reel. */
    load(/** @type {Reel} */ next) {
      reel = next;
      slider.max = String(reel.duration);
      slider.dataset.tightest = String(reel.tightest); // for tests, which wait for it
      phases.replaceChildren(...reel.phases.map(({ name, start, end }) => placed(
        h("span", { title: name }, (end - start) / reel.duration > NARROW ? name : ""), start / reel.duration, end / reel.duration)));
      ticks.replaceChildren(...ticksOf(reel).map(({ from, to, verdict, words }) => placed(
        h("span", { class: `is-${verdict}`, title: `${verdict}: ${words}` }, verdict === "strikes" ? s("svg", { viewBox: "0 0 32 32" }, s("use", { href: "#icon-strikes" })) : null), from, to)));
      const { loop: repeated } = clock;
      loop.replaceChildren(h("option", { value: "" }, "whole swing"), ...reel.phases.map(({ name }) => h("option", { value: name, selected: name === repeated }, name)));
    },

    /** Shows where the clock stands. While it plays, nothing is announced. */
    show() {
      slider.value = String(clock.t);
      setText(line, reel.said(clock.t));
      const words = clock.playing ? PLAYING : momentWords(clock, reel);
      if (slider.getAttribute("aria-valuetext") !== words) slider.setAttribute("aria-valuetext", words);
      setText(play, clock.playing ? "Pause" : "Play");
    },

    /** Says why there is no swing to show. */
    fail(message) {
      setText(line, message);
      setText(spoken, message);
    },

    /** Says where the clock stands, to who cannot see it. */
    announce() {
      setText(spoken, clock.playing ? "" : momentWords(clock, reel));
    },
  };
}
