import { test } from "node:test";
import assert from "node:assert/strict";
import { nextStop, readReel } from "../../public/stage/reel.js";
import { keyAsks, momentWords, ticksOf, FINE_STEP, STEP } from "../../public/stage/timeline.js";
import { createClock } from "../../public/stage/clock.js";
import { fitted, sweptKeys } from "../../public/stage/flat.js";

/** Three frames, 1/10 s apart, of one part that goes 1 m along x each; its other end stays. */
const answer = {
  focus: { player: "Host", club: "driver", tee: "tee" }, rate: 10, duration: 0.2, impact: 0.1, tightest: 0.15, face: true,
  phases: [{ name: "back", start: 0, end: 0.1 }, { name: "through", start: 0.1, end: 0.2 }],
  parts: [{ name: "clubhead", r: 0.05 }],
  motion: [1000, 2000, 3000, 0, 0, 500, 1000, 0, 0, 0, 0, 0, 1000, 0, 0, 0, 0, 0],
  ball: [0, 3000, 2000, 20, 50, 4000, 2000, 520],
  said: [0, 1, 1], texts: ["clubhead 5 in from ceiling", "clubhead 1 in past ceiling · 62 mph"],
  moments: [{ start: 0.1, end: 0.16, time: 0.15, verdict: "strikes", surface: "ceiling", part: "clubhead" },
    { start: 0.02, end: 0.04, time: 0.03, verdict: "tight", surface: "left wall", part: "clubhead" }],
  first: 0.12,
};
const close = (got, want) => got.forEach((v, i) => assert.ok(Math.abs(v - want[i]) < 1e-6, `${[...got]}, want ${want}`));

test("a pose is a frame's, or on the straight line between two", () => {
  const reel = readReel(answer);
  for (const [t, x] of [[0, 1], [0.1, 2], [0.15, 2.5], [0.2, 3], [-1, 1], [9, 3]]) close(reel.pose(t), [x, 2, 3, 0, 0, 0.5]);
  for (const [t, frame] of [[0, 0], [0.0999999, 1], [0.09, 0], [0.2, 2], [5, 2]]) assert.equal(reel.frameAt(t), frame);
});

test("the words are those of the nearest frame", () => {
  const reel = readReel(answer);
  assert.equal(reel.said(0.04), answer.texts[0]);
  assert.equal(reel.said(0.06), answer.texts[1]);
  assert.equal(reel.said(9), answer.texts[1]);
});

test("the ball lies until impact and then flies", () => {
  const reel = readReel(answer);
  assert.deepEqual(reel.ball(0.05).length, 2);
  close(reel.ball(0.05).at(-1), [3, 2, 0.02]);
  close(reel.ball(0.125).at(-1), [3.5, 2, 0.27]);
  close(reel.ball(0.2).at(-1), [4, 2, 0.52]);
});

test("stops are the moments and the first touch, or the tightest moment", () => {
  assert.deepEqual(readReel(answer).stops, [0.03, 0.12, 0.15]);
  assert.deepEqual(readReel({ ...answer, moments: [], first: undefined }).stops, [0.15]);
  assert.deepEqual(readReel({ ...answer, first: 0.15 }).stops, [0.03, 0.15]);
});

for (const [t, direction, want] of [[0, 1, 0.03], [0.03, 1, 0.12], [0.15, 1, 0.03], [0.2, -1, 0.15], [0.12, -1, 0.03], [0.03, -1, 0.15]]) {
  test(`the stop ${direction > 0 ? "after" : "before"} ${t} s is at ${want} s`, () => {
    assert.equal(nextStop([0.03, 0.12, 0.15], t, direction), want);
  });
}

test("ticks lie on the swing as shares of it", () => {
  const [strike, tight] = ticksOf(readReel(answer));
  close([strike.from, strike.to, tight.from, tight.to], [0.5, 0.8, 0.1, 0.2]);
  assert.deepEqual([strike.verdict, strike.words], ["strikes", "clubhead, ceiling"]);
});

test("the moment in words", () => {
  const clock = createClock();
  const reel = readReel(answer);
  clock.load(reel);
  clock.seek(0.15);
  assert.equal(momentWords(clock, reel), "0.150 s, through: clubhead 1 in past ceiling · 62 mph");
  clock.seek(0.121);
  assert.equal(momentWords(clock, reel), "0.121 s, through: clubhead 1 in past ceiling · 62 mph; first touch");
});

for (const [key, shiftKey, want] of [
  [",", false, { step: -1, rate: STEP }], ["<", true, { step: -1, rate: FINE_STEP }], [".", false, { step: 1, rate: STEP }], [">", true, { step: 1, rate: FINE_STEP }],
  ["ArrowLeft", true, { step: -1, rate: FINE_STEP }], ["ArrowRight", false, { step: 1, rate: STEP }], [" ", false, { toggle: true }], ["x", false, null], ["Tab", false, null],
]) {
  test(`the key ${JSON.stringify(key)}${shiftKey ? " with Shift" : ""}`, () => assert.deepEqual(keyAsks({ key, shiftKey }), want));
}

test("a view fits by its width or by its height", () => {
  assert.equal(fitted([4, 2], 460, 900), 460);
  assert.equal(fitted([4, 2], 900, 260), 460); // 30 px of paper on each side of 400 by 200
});

test("the sweep takes the frames in which a part moved on", () => {
  assert.deepEqual(sweptKeys(readReel(answer), 0), [0, 1, 2]);
  assert.deepEqual(sweptKeys(readReel({ ...answer, motion: answer.motion.map((v, i) => (i < 6 ? v : i < 12 ? v / 50 : 0)) }), 0), [0]);
});
