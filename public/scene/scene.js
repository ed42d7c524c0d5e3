// The scene's document: fetches the program, hands messages between it and the
// page that frames us, and keeps the engine from taking input that is the
// visitor's. All geometry is the program's.
import { letter } from "./lettering.js";
import { watchInput } from "./input.js";

const LABEL = "Paper model of the room with the golfer and the swing. Arrow keys turn it, with Shift they move it, plus and minus zoom.";
const COMMANDS = new Set(["show", "seek", "view", "orbit", "zoom", "pan", "shift", "theme", "motion", "ball", "ghost", "maps", "shade", "picture"]);

const tellPage = (message) => parent.postMessage(message, location.origin);
let failed = false;

function fail(message) {
  if (failed) return;
  failed = true;
  tellPage({ type: "failed", message });
}

/** A short-lived context: the engine makes its own. */
function hasWebGL2() {
  const gl = document.createElement("canvas").getContext("webgl2");
  gl?.getExtension("WEBGL_lose_context")?.loseContext();
  return Boolean(gl);
}

/** Size of the unpacked program, which the transfer's own length does not tell. */
async function programSize() {
  try {
    const answer = await fetch("../build/build.json");
    return (await answer.json())["scene.wasm"].bytes;
  } catch {
    return 0;
  }
}

/** Tells of an answer's body as it comes in. */
async function count(answer, total) {
  let loaded = 0;
  let told = 0;
  for (const reader = answer.body.getReader(); ;) {
    const { done, value } = await reader.read();
    if (done) return;
    loaded += value.byteLength;
    if (loaded - told > 100_000) {
      told = loaded;
      tellPage({ type: "progress", loaded, total });
    }
  }
}

async function start() {
  tellPage({ type: "progress", loaded: 0, total: 0 }); // that there is somebody
  if (!hasWebGL2()) {
    fail("This browser cannot draw in 3D here: WebGL 2 is missing or switched off.");
    return;
  }
  const go = new globalThis.Go();
  const [answer, total] = await Promise.all([fetch("../build/scene.wasm"), programSize()]);
  if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
  count(answer.clone(), total).catch(() => {}); // what breaks here breaks there
  // The answer itself, as it came: of no other does the browser keep the machine code.
  const { instance } = await WebAssembly.instantiateStreaming(answer, go.importObject);
  tellPage({ type: "progress", loaded: total, total });
  go.run(instance).then(() => fail("The 3D view stopped working."), fall);
}

function fall(error) {
  fail(`The 3D view could not be loaded: ${error?.message ?? error}.`);
}

/** The pixels of a picture as a PNG file, handed to the page in the order they came. */
async function tellPicture({ t, width, height, pixels }) {
  const sheet = document.createElement("canvas");
  sheet.width = width;
  sheet.height = height;
  sheet.getContext("2d").putImageData(new ImageData(new Uint8ClampedArray(pixels.buffer), width, height), 0, 0);
  const blob = await new Promise((done) => sheet.toBlob(done, "image/png"));
  const png = await blob.arrayBuffer();
  parent.postMessage({ type: "picture", t, width, height, png }, location.origin, [png]);
}
let pictures = Promise.resolve();

globalThis.wideBerthGlyphs = letter;
globalThis.wideBerthSceneEvent = (event) => {
  if (event.type === "failed") {
    fail(event.message);
    return;
  }
  if (event.type === "picture") {
    pictures = pictures.then(() => tellPicture(event)).catch(fall);
    return;
  }
  if (event.type === "state") input.zoomed(event.zoom);
  const canvas = document.querySelector("canvas");
  if (event.type === "ready" && canvas) {
    canvas.tabIndex = 0;
    canvas.setAttribute("role", "img");
    canvas.setAttribute("aria-label", LABEL);
  } else if (event.type === "state" && canvas && event.title) {
    canvas.setAttribute("aria-label", `${event.title}. ${LABEL}`);
  }
  tellPage(event);
};

addEventListener("message", ({ origin, source, data }) => {
  if (origin !== location.origin || source !== parent || !COMMANDS.has(data?.type)) return;
  globalThis.wideBerthScene?.(data);
});
addEventListener("error", (event) => fall(event.error ?? event.message));
addEventListener("unhandledrejection", (event) => fall(event.reason));

const input = watchInput((message) => globalThis.wideBerthScene?.(message));
start().catch(fall);
