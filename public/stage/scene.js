// The 3D scene on the stage: a document of its own (scene/scene.html) in a frame,
// spoken to by messages only. It comes by itself once the answer stands and nothing
// is under way; where it cannot, one line says why and offers it.
import { h, setText } from "../app/dom.js";

const FRAME = { title: "The swing in 3D, in a paper model of the room", src: "scene/scene.html" };
const PATIENCE = 2000; // ms
const SILENCE = 120_000; // ms; a slow machine compiles the program for long without a word
const ABSENT = "The 3D model did not come.";
const NO_WEBGL = "No 3D here: this browser lacks WebGL 2.";
const NO_ORIGIN = "No 3D inside this frame: it is shut off from its own page. The drawings are complete without it.";
const SAVING = "Your browser saves data: the 3D model is 2 MB.";

/** The named views; the scene knows where each stands. */
export const VIEWS = [
  ["behind", "Behind", "From behind"], ["face-on", "Face-on", "Face-on"], ["above", "Above", "From above"],
  ["target", "Target", "From the target"], ["golfer", "Golfer", "Golfer's eyes"], ["camera", "Camera", "Camera"],
];

/** A short-lived context: the engine makes its own. */
function hasWebGL2() {
  const gl = document.createElement("canvas").getContext("webgl2");
  gl?.getExtension("WEBGL_lose_context")?.loseContext();
  return Boolean(gl);
}

/**
 * ready() is called when the scene has drawn its first picture, lost() when it is
 * gone, told(state) when it tells of itself.
 */
export function createScene({ ready, lost, told }) {
  const calm = matchMedia("(prefers-reduced-motion: reduce)");
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const el = h("div", { class: "stage-scene", hidden: true });
  const why = h("span", { role: "status" });
  const wanted = h("button", { type: "button", class: "stage-load", onclick: () => load() }, "Show the 3D model");
  const progress = h("progress", { "aria-label": "Fetching the 3D model" });
  const note = h("p", { class: "stage-note", hidden: true }, why, " ", wanted, progress);
  let frame = null;
  let drawn = false;
  let heard = false; // anything of the frame's document
  let wait = 0; // until it is given up
  const orders = []; // who waits for a picture, in turn
  let sent = NaN; // the moment the scene was last sent to, s
  let view = null; // where the viewer stands, as the scene last told
  let back = null; // where the viewer stood when the scene was lost

  const say = (message, transfer = []) => frame?.contentWindow?.postMessage(message, location.origin, transfer);

  function tell(words, offer) {
    setText(why, words);
    wanted.hidden = !offer;
    progress.hidden = offer;
    note.hidden = false;
  }

  function fail(message) {
    clearTimeout(wait);
    const was = drawn;
    drawn = false;
    frame?.remove();
    frame = null;
    tell(message, true);
    if (was) lost();
  }

  /** Gives the frame so long to say anything; out of sight nothing is drawn, and it may be silent. */
  function expect(ms) {
    clearTimeout(wait);
    wait = setTimeout(() => (document.hidden ? expect(ms) : fail(ABSENT)), ms);
  }

  /** A frame that is there begins by saying so; one whose files are missing says nothing. */
  function loaded() {
    if (!heard) expect(PATIENCE);
  }

  /** Begins to wait for the frame's document. */
  function fetching() {
    heard = false;
    progress.removeAttribute("value");
    tell("Fetching the 3D model.", false);
    expect(SILENCE);
  }

  /** A browser that takes the scene's picture away makes its document load again; it also goes when the whole page is put away, and comes back with that. */
  function gone({ persisted }) {
    if (!drawn || persisted) return;
    drawn = false;
    back = view;
    fetching();
    lost();
  }

  /** Stands where the viewer stood. */
  function goBack(now) {
    if (back.view) say({ type: "view", name: back.view });
    else {
      say({ type: "orbit", yaw: back.yaw - now.yaw, pitch: back.pitch - now.pitch });
      say({ type: "zoom", factor: back.zoom / now.zoom });
    }
    back = null;
  }

  function load() {
    if (frame) return;
    const why = globalThis.origin === "null" ? NO_ORIGIN : hasWebGL2() ? "" : NO_WEBGL;
    if (why) {
      fail(why);
      return;
    }
    fetching();
    frame = h("iframe", { ...FRAME, onload: loaded });
    el.append(frame);
    el.hidden = false; // the engine measures its place
  }

  addEventListener("message", ({ origin, source, data }) => {
    if (!frame || origin !== location.origin || source !== frame.contentWindow) return;
    heard = true;
    if (!drawn) expect(SILENCE);
    if (data.type === "failed") fail(data.message);
    else if (data.type === "state") {
      if (back) goBack(data);
      else view = data;
      told(data);
    }
    else if (data.type === "picture") orders.shift()?.({ png: new Uint8Array(data.png), width: data.width, height: data.height });
    else if (data.type === "ready") {
      drawn = true;
      clearTimeout(wait);
      sent = NaN;
      frame.contentWindow.addEventListener("pagehide", gone);
      note.hidden = true;
      say({ type: "theme", dark: dark.matches });
      say({ type: "motion", reduced: calm.matches });
      ready();
    } else if (data.type === "progress" && data.total > 0) {
      progress.max = data.total;
      progress.value = Math.min(data.loaded, data.total);
    }
  });
  dark.addEventListener("change", () => say({ type: "theme", dark: dark.matches }));
  calm.addEventListener("change", () => say({ type: "motion", reduced: calm.matches }));

  return {
    el, note, say,
    get drawn() { return drawn; },

    /** Has the scene come by itself: at once, or when nothing else is going on. */
    come() {
      if (/** @type {any} */ (navigator).connection?.saveData) {
        tell(SAVING, true);
        return;
      }
      const idle = globalThis.requestIdleCallback ?? ((fn, _options) => setTimeout(fn, 200));
      idle(() => load(), { timeout: PATIENCE }); // a slow machine that plays is never idle
    },

    /** Gives it another recording. */
    show(bytes) {
      say({ type: "show", bytes }, [bytes.buffer]);
      sent = NaN;
    },

    /** A picture of a moment, s, as its view is now; without a size as it is on the screen. */
    shoot(t, size = {}) {
      say({ type: "picture", t, ...size });
      return new Promise((done) => orders.push(done));
    },

    /** Sends it to a moment, s, unless it is there. */
    seek(t) {
      if (t === sent) return;
      sent = t;
      say({ type: "seek", t });
    },
  };
}
