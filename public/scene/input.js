// What the visitor does on the picture. The engine would swallow every key,
// wheel and touch on its canvas, Tab and scrolling too; we stop it from seeing
// any and turn the few gestures of a picture into messages:
//
//   drag sideways or up and down   turns it (a finger only sideways: up and down scrolls the page)
//   Ctrl + wheel, trackpad pinch   zooms; the bare wheel scrolls the page
//   arrow keys, + and −            the same by keyboard, while the picture has the focus

const DEGREES_PER_PIXEL = 0.35;
const KEY_DEGREES = 5;
const KEY_ZOOM = 1.15;
const KEYS = {
  ArrowLeft: { type: "orbit", yaw: -KEY_DEGREES, pitch: 0 },
  ArrowRight: { type: "orbit", yaw: KEY_DEGREES, pitch: 0 },
  ArrowUp: { type: "orbit", yaw: 0, pitch: KEY_DEGREES },
  ArrowDown: { type: "orbit", yaw: 0, pitch: -KEY_DEGREES },
  "+": { type: "zoom", factor: KEY_ZOOM },
  "=": { type: "zoom", factor: KEY_ZOOM },
  "-": { type: "zoom", factor: 1 / KEY_ZOOM },
};
const ENGINE_EVENTS = [
  "keydown", "keyup", "mousedown", "mouseup", "mousemove", "wheel", "contextmenu",
  "touchstart", "touchend", "touchmove", "touchcancel", "dragover", "drop",
];

export function watchInput(say) {
  const onCanvas = (event) => event.target instanceof HTMLCanvasElement;
  for (const name of ENGINE_EVENTS) {
    addEventListener(name, (event) => {
      event.stopImmediatePropagation();
      if (name === "keydown") onKey(event);
      if (name === "wheel") onWheel(event);
    }, { capture: true, passive: name.startsWith("touch") });
  }

  function onKey(event) {
    const message = KEYS[event.key];
    if (!message || !onCanvas(event) || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    say(message);
  }

  function onWheel(event) {
    if (!event.ctrlKey || !onCanvas(event)) return;
    event.preventDefault();
    say({ type: "zoom", factor: Math.exp(-event.deltaY * 0.004) });
  }

  let turning = null;
  addEventListener("pointerdown", (event) => {
    const canvas = /** @type {any} */ (event.target);
    if (!onCanvas(event) || event.button !== 0 || turning) return;
    turning = { id: event.pointerId, x: event.clientX, y: event.clientY };
    canvas.setPointerCapture(event.pointerId);
    canvas.classList.add("is-turning");
    canvas.focus({ preventScroll: true, focusVisible: false });
  });
  addEventListener("pointermove", (event) => {
    if (event.pointerId !== turning?.id) return;
    const yaw = (turning.x - event.clientX) * DEGREES_PER_PIXEL;
    const pitch = (event.clientY - turning.y) * DEGREES_PER_PIXEL;
    turning.x = event.clientX;
    turning.y = event.clientY;
    say({ type: "orbit", yaw, pitch: event.pointerType === "touch" ? 0 : pitch });
  });
  for (const name of ["pointerup", "pointercancel"]) {
    addEventListener(name, (/** @type {any} */ event) => {
      if (event.pointerId !== turning?.id) return;
      turning = null;
      document.querySelector("canvas")?.classList.remove("is-turning");
    });
  }
}
