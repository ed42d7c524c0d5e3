// What the visitor does on the picture. The engine would swallow every key,
// wheel and touch on its canvas, Tab and scrolling too; we stop it from seeing
// any and turn the few gestures of a picture into messages:
//
//   drag                           turns it (a finger only sideways: up and down scrolls the page)
//   drag with Shift or the right button, or with two fingers
//                                  moves it
//   wheel, pinch                   zooms; where it cannot zoom out further the wheel scrolls the page
//   arrow keys, with Shift, + and −   the same by keyboard, while the picture has the focus

const DEGREES_PER_PIXEL = 0.35;
const KEY_DEGREES = 5;
const KEY_PIXELS = 24;
const KEY_ZOOM = 1.15;
const WHEEL_ZOOM = { true: 0.004, false: 0.0012 }; // a pixel, pinched on a trackpad or turned
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
const ZOOMS = { "+": KEY_ZOOM, "=": KEY_ZOOM, "-": 1 / KEY_ZOOM, _: 1 / KEY_ZOOM };
const ENGINE_EVENTS = [
  "keydown", "keyup", "mousedown", "mouseup", "mousemove", "wheel", "contextmenu",
  "touchstart", "touchend", "touchmove", "touchcancel", "dragover", "drop",
];

/** The message for a key, or null. */
export function keyMessage({ key, shiftKey }) {
  const arrow = ARROWS[key];
  if (arrow && shiftKey) return { type: "pan", dx: -arrow[0] * KEY_PIXELS, dy: -arrow[1] * KEY_PIXELS };
  if (arrow) return { type: "orbit", yaw: arrow[0] * KEY_DEGREES, pitch: -arrow[1] * KEY_DEGREES };
  return ZOOMS[key] ? { type: "zoom", factor: ZOOMS[key] } : null;
}

/**
 * Pointers on the picture: move(id, x, y) answers the messages for a pointer that was
 * put down. One turns or moves the picture, two move and zoom it by their middle and
 * distance.
 */
export function createPointers() {
  const down = new Map(); // id → {x, y, pans, finger}
  const pair = () => {
    const [a, b] = [...down.values()];
    return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, apart: Math.hypot(a.x - b.x, a.y - b.y) };
  };
  return {
    get count() { return down.size; },
    put(id, x, y, { pans, finger }) {
      if (down.size < 2) down.set(id, { x, y, pans, finger });
    },
    lift: (id) => down.delete(id),
    move(id, x, y) {
      const at = down.get(id);
      if (!at) return [];
      const before = down.size === 2 ? pair() : { x: at.x, y: at.y, apart: 0 };
      at.x = x;
      at.y = y;
      if (down.size === 2) {
        const now = pair();
        const moved = { type: "pan", dx: now.x - before.x, dy: now.y - before.y };
        return before.apart > 0 && now.apart > 0 ? [moved, { type: "zoom", factor: now.apart / before.apart }] : [moved];
      }
      const [dx, dy] = [x - before.x, y - before.y];
      if (at.pans) return [{ type: "pan", dx, dy }];
      return [{ type: "orbit", yaw: -dx * DEGREES_PER_PIXEL, pitch: at.finger ? 0 : dy * DEGREES_PER_PIXEL }];
    },
  };
}

/** say sends a message to the program; zoomed is to be told the zoom that came of it. */
export function watchInput(say) {
  const onCanvas = (event) => event.target instanceof HTMLCanvasElement;
  let zoom = 1;
  for (const name of ENGINE_EVENTS) {
    addEventListener(name, (event) => {
      event.stopImmediatePropagation();
      if (name === "keydown") onKey(event);
      if (name === "wheel") onWheel(event);
      if (name === "contextmenu" && /** @type {any} */ (event).button === 2 && onCanvas(event)) event.preventDefault();
      // Two fingers are ours; one may scroll the page.
      if (name === "touchmove" && /** @type {any} */ (event).touches.length > 1 && event.cancelable) event.preventDefault();
    }, { capture: true, passive: name.startsWith("touch") && name !== "touchmove" });
  }

  function onKey(event) {
    if (!onCanvas(event) || event.ctrlKey || event.altKey || event.metaKey) return;
    const message = keyMessage(event);
    if (!message) return;
    event.preventDefault();
    say(message);
  }

  function onWheel(event) {
    const wholeRoom = zoom <= 1.001 && event.deltaY > 0;
    if (!onCanvas(event) || (wholeRoom && !event.ctrlKey)) return;
    event.preventDefault();
    const lines = event.deltaMode === 1 ? 16 : 1;
    say({ type: "zoom", factor: Math.exp(-event.deltaY * lines * WHEEL_ZOOM[event.ctrlKey]) });
  }

  const pointers = createPointers();
  const turning = () => document.querySelector("canvas")?.classList.toggle("is-turning", pointers.count > 0);
  addEventListener("pointerdown", (event) => {
    const canvas = /** @type {any} */ (event.target);
    if (!onCanvas(event) || (event.button !== 0 && event.button !== 2)) return;
    pointers.put(event.pointerId, event.clientX, event.clientY, { pans: event.button === 2 || event.shiftKey, finger: event.pointerType === "touch" });
    canvas.setPointerCapture(event.pointerId);
    canvas.focus({ preventScroll: true, focusVisible: false });
    turning();
  });
  addEventListener("pointermove", (event) => {
    pointers.move(event.pointerId, event.clientX, event.clientY).forEach(say);
  });
  for (const name of ["pointerup", "pointercancel"]) {
    addEventListener(name, (/** @type {any} */ event) => {
      pointers.lift(event.pointerId);
      turning();
    });
  }
  return { zoomed(now) { zoom = now; } };
}
