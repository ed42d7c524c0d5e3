// The 3D scene's frame and its controls in HTML. The scene is a document of its
// own (scene.html); it is fetched late and spoken to by messages only.
import { $, h, setText, whenSeen } from "./dom.js";

const HALF_FRAME = 1 / 480; // s
const PLAY_WORDS = { true: "Pause", false: "Play" };

/**
 * show(request) resolves to the bytes of what is looked at, or null when there is
 * nothing newer.
 */
export function createStage(/** @type {State} */ state, show) {
  const holder = $("#stage-frame");
  const controls = $("#stage-controls");
  const scrub = $("#stage-scrub");
  const calm = matchMedia("(prefers-reduced-motion: reduce)");
  const dark = matchMedia("(prefers-color-scheme: dark)");
  let frame = null;
  let ready = false;
  let playOnReady = false;
  const firstMark = $("#stage-first");
  const firstButton = $("[data-act=first]", controls);
  let tightest = 0;
  let first = null; // s, of the first touch
  let playing = false;
  let scrubbing = false;

  const say = (message, transfer = []) => frame?.contentWindow?.postMessage(message, location.origin, transfer);

  async function update() {
    if (!ready) return;
    const { good, focus, check } = state;
    const bytes = await show({ kind: "show", plan: good, focus });
    if (!bytes || !ready) return;
    tightest = check?.nearest.time ?? 0;
    scrub.dataset.tightest = String(tightest); // for tests, which wait for it
    first = check?.contact?.time ?? null;
    firstButton.hidden = first === null;
    firstMark.toggleAttribute("hidden", first === null);
    say({ type: "show", bytes }, [bytes.buffer]);
    if (!playing) say({ type: "seek", t: tightest });
  }

  function load(play) {
    if (frame) return;
    if (!document.createElement("canvas").getContext("webgl2")) {
      fail("This browser cannot draw in 3D here (WebGL 2 is missing or switched off). The answer and the drawings above are complete without it.");
      return;
    }
    playOnReady = play && !calm.matches;
    setText($("#stage-failed"), "");
    $("#stage-load").hidden = true;
    $("#stage-loading").hidden = false;
    frame = h("iframe", { title: "The swing in 3D, in a paper model of the room", src: "scene/scene.html" });
    holder.append(frame);
  }

  function fail(message) {
    frame?.remove();
    frame = null;
    ready = false;
    controls.disabled = true;
    holder.classList.remove("is-ready");
    $("#stage-loading").hidden = true;
    $("#stage-load").hidden = false;
    $("#stage-load").textContent = "Try the 3D view again";
    setText($("#stage-failed"), message);
  }

  async function onReady() {
    ready = true;
    controls.disabled = false;
    holder.classList.add("is-ready");
    say({ type: "theme", dark: dark.matches });
    say({ type: "motion", reduced: calm.matches });
    say({ type: "ball", shown: $("[data-act=ball]", controls).getAttribute("aria-pressed") === "true" });
    await update();
    if (playOnReady) say({ type: "play" });
  }

  function onState({ t, phase, playing: moving, duration }) {
    playing = moving;
    setText($("#stage-play"), PLAY_WORDS[moving]);
    if (duration) scrub.max = String(duration);
    firstMark.style.setProperty("--at", String((first ?? 0) / Number(scrub.max)));
    if (!scrubbing) scrub.value = String(t);
    const touches = first !== null && Math.abs(t - first) < HALF_FRAME ? ", first touch" : "";
    const words = `${t.toFixed(2)} s, ${phase}${touches}`;
    scrub.setAttribute("aria-valuetext", words);
    setText($("#stage-moment"), words);
  }

  addEventListener("message", ({ origin, source, data }) => {
    if (!frame || origin !== location.origin || source !== frame.contentWindow) return;
    if (data.type === "ready") onReady();
    else if (data.type === "failed") fail(`${data.message} The answer and the drawings above are complete without it.`);
    else if (data.type === "state") onState(data);
    else if (data.type === "progress" && data.total > 0) {
      $("#stage-progress").max = data.total;
      $("#stage-progress").value = Math.min(data.loaded, data.total);
    }
  });

  $("#stage-load").addEventListener("click", () => load(true));
  controls.addEventListener("click", (e) => {
    const { act, view, orbit, zoom } = e.target.closest("button")?.dataset ?? {};
    if (act === "play") say({ type: playing ? "pause" : "play" });
    else if (act === "back") say({ type: "step", frames: -1 });
    else if (act === "forward") say({ type: "step", frames: 1 });
    else if (act === "ball") {
      const button = $("[data-act=ball]", controls);
      const shown = button.getAttribute("aria-pressed") !== "true";
      button.setAttribute("aria-pressed", String(shown));
      say({ type: "ball", shown });
    } else if (act === "tightest" || act === "first") {
      say({ type: "pause" });
      say({ type: "seek", t: act === "first" ? first : tightest });
    } else if (view) say({ type: "view", name: view });
    else if (orbit) {
      const [yaw, pitch] = orbit.split(" ").map(Number);
      say({ type: "orbit", yaw, pitch });
    } else if (zoom) say({ type: "zoom", factor: Number(zoom) });
  });
  $("#stage-rate").addEventListener("change", (e) => say({ type: "rate", rate: Number(e.target.value) }));
  scrub.addEventListener("pointerdown", () => { scrubbing = true; });
  addEventListener("pointerup", () => { scrubbing = false; });
  scrub.addEventListener("input", () => {
    if (playing) say({ type: "pause" });
    say({ type: "seek", t: Number(scrub.value) });
  });
  dark.addEventListener("change", () => say({ type: "theme", dark: dark.matches }));
  calm.addEventListener("change", () => say({ type: "motion", reduced: calm.matches }));

  /** Fetches the scene when its place scrolls into view, once nothing else is waiting. */
  function loadWhenSeen() {
    if (/** @type {any} */ (navigator).connection?.saveData) return;
    const idle = globalThis.requestIdleCallback ?? ((fn) => setTimeout(fn, 200));
    whenSeen(holder, { threshold: 0.25 }, () => idle(() => load(false)));
  }

  let waits = true; // for the first verdict
  state.onAnswered(() => {
    if (waits) loadWhenSeen();
    waits = false;
    update();
  });
}
