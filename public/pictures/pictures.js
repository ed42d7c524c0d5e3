// Pictures to keep of the stage: as it is, a strip of key frames, a short loop of
// the strike. shoot(t) draws a moment and resolves to {png: Uint8Array, width, height}.
import { animated } from "./apng.js";

const STRIP = ["address", "top", "impact"]; // phases whose beginning is a key frame, beside tightest and finish
const BEFORE = 0.3; // s of the swing before the moment that a loop is about, and after it
const AFTER = 0.2;
const LOOP_RATE = 60; // frames a second of swing
const SLOWER = 8; // times slower than the swing a loop plays
const PAUSE = 1; // s that a loop rests at its end
const CAPTION = 34; // px below each key frame

/** The moments of a strip: [{t, words}], in order. @param {Reel} reel */
export function keyFrames(reel) {
  const frames = STRIP.map((name) => reel.phases.find((phase) => phase.name === name)).filter(Boolean).map(({ name, start }) => ({ t: start, words: name }));
  frames.push({ t: reel.tightest, words: "tightest" }, { t: reel.duration, words: "finish" });
  return frames.sort((a, b) => a.t - b.t);
}

/** The moments of a loop: [{t, seconds}]. @param {Reel} reel */
export function loopFrames(reel) {
  const about = reel.first ?? reel.tightest;
  const [from, to] = [Math.max(0, about - BEFORE), Math.min(reel.duration, about + AFTER)];
  const count = Math.max(1, Math.round((to - from) * LOOP_RATE));
  return Array.from({ length: count + 1 }, (_, i) => ({ t: from + (i / count) * (to - from), seconds: i === count ? PAUSE : SLOWER / LOOP_RATE }));
}

/** One picture after another: the scene draws one at a time. */
async function all(frames, shoot) {
  const shots = [];
  for (const frame of frames) shots.push({ ...frame, ...(await shoot(frame.t)) });
  return shots;
}

/** The key frames side by side, each with its words, as a PNG. */
export async function strip(reel, shoot, title) {
  const shots = await all(keyFrames(reel), shoot);
  const sheet = document.createElement("canvas");
  sheet.width = shots.reduce((sum, { width }) => sum + width, 0);
  sheet.height = shots[0].height + 2 * CAPTION;
  const ctx = sheet.getContext("2d");
  ctx.fillStyle = "#fffdf6";
  ctx.fillRect(0, 0, sheet.width, sheet.height);
  ctx.fillStyle = "#1f2a33";
  ctx.font = `600 ${CAPTION * 0.55}px sans-serif`;
  ctx.fillText(title, CAPTION / 2, CAPTION * 0.7, sheet.width - CAPTION);
  let x = 0;
  for (const { png, width, words, t } of shots) {
    ctx.drawImage(await createImageBitmap(new Blob([png], { type: "image/png" })), x, CAPTION);
    ctx.fillText(`${words}, ${t.toFixed(2)} s`, x + CAPTION / 2, sheet.height - CAPTION * 0.35, width - CAPTION);
    x += width;
  }
  return new Promise((done) => sheet.toBlob(done, "image/png"));
}

/** The moments about the strike as a picture that moves. */
export async function loop(reel, shoot) {
  return animated(await all(loopFrames(reel), shoot));
}
