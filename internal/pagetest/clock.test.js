import { test } from "node:test";
import assert from "node:assert/strict";
import { createClock, LINGER } from "../../public/stage/clock.js";

/** Two seconds: a back and a through, the second in two phases. */
const swing = { duration: 2, phases: [{ name: "back", start: 0, end: 1 }, { name: "through", start: 1, end: 1.5 }, { name: "finish", start: 1.5, end: 2 }] };
const near = (got, want) => assert.ok(Math.abs(got - want) < 1e-9, `${got}, want ${want}`);

function loaded() {
  const clock = createClock();
  clock.load(swing);
  clock.setRate(1);
  return clock;
}

/** Passes real time in steps of a picture. */
function pass(clock, seconds, dt = 1 / 64) {
  let moved = 0;
  for (let i = 0; i < Math.round(seconds / dt); i++) if (clock.advance(dt)) moved++;
  return moved;
}

test("an empty clock has nothing to play", () => {
  const clock = createClock();
  clock.play();
  assert.equal(clock.playing, false);
  assert.equal(clock.advance(0.1), false);
  clock.seek(1);
  clock.step(1, 60);
  assert.equal(clock.t, 0);
  assert.equal(clock.phase, "");
});

test("it stands at address until it plays, and stands again when paused", () => {
  const clock = loaded();
  assert.equal(pass(clock, 1), 0);
  clock.play();
  pass(clock, 0.5);
  near(clock.t, 0.5);
  clock.pause();
  assert.equal(pass(clock, 1), 0);
  near(clock.t, 0.5);
});

for (const [rate, want] of [[1, 1], [1 / 4, 0.25], [1 / 16, 0.0625]]) {
  test(`at the rate ${rate} a second is ${want} s of swing`, () => {
    const clock = loaded();
    clock.setRate(rate);
    clock.play();
    pass(clock, 1);
    near(clock.t, want);
  });
}

test("a rate that is none is left out of account, and a stall is not made up for", () => {
  const clock = loaded();
  for (const rate of [0, -1, NaN, undefined]) clock.setRate(rate);
  assert.equal(clock.rate, 1);
  clock.play();
  clock.advance(30);
  near(clock.t, 0.1);
});

test("at the finish it waits and then starts over at address", () => {
  const clock = loaded();
  clock.play();
  pass(clock, 2);
  near(clock.t, 2);
  assert.equal(pass(clock, LINGER - 0.1), 0);
  near(clock.t, 2);
  pass(clock, 0.2);
  assert.ok(clock.t < 0.2 && clock.playing, `at ${clock.t}`);
});

test("a phase is repeated by itself", () => {
  const clock = loaded();
  clock.setLoop("through");
  near(clock.t, 1);
  clock.play();
  pass(clock, 0.5);
  near(clock.t, 1.5);
  pass(clock, LINGER + 0.1);
  assert.ok(clock.t >= 1 && clock.t < 1.2, `at ${clock.t}`);
  clock.setLoop("no such phase");
  assert.equal(clock.loop, "");
});

test("Play at the end, or beside the loop, starts the loop", () => {
  const clock = loaded();
  clock.seek(2);
  clock.play();
  near(clock.t, 0);
  clock.pause();
  clock.setLoop("finish");
  clock.seek(0.3);
  clock.play();
  near(clock.t, 1.5);
});

for (const [name, from, steps, rate, want] of [
  ["one on", 10 / 60, [1], 60, 11 / 60], ["one back", 10 / 60, [-1], 60, 9 / 60], ["on from between", 10.4 / 60, [1], 60, 11 / 60],
  ["back from between", 10.4 / 60, [-1], 60, 10 / 60], ["a fine one", 10 / 60, [1], 240, 41 / 240], ["there and back", 0.5, [1, 1, -1, -1], 240, 0.5],
  ["not past the start", 0, [-1], 60, 0], ["not past the end", 2, [1], 60, 2],
]) {
  test(`step: ${name}`, () => {
    const clock = loaded();
    clock.play();
    clock.seek(from);
    for (const n of steps) clock.step(n, rate);
    near(clock.t, want);
    assert.equal(clock.playing, false);
  });
}

test("another swing is taken where this one is in its phase", () => {
  const clock = loaded();
  clock.seek(1.25); // half of "through"
  clock.setLoop("through");
  clock.play();
  clock.load({ duration: 3, phases: [{ name: "back", start: 0, end: 2 }, { name: "through", start: 2, end: 3 }] });
  near(clock.t, 2.5);
  assert.equal(clock.phase, "through");
  assert.equal(clock.loop, "through");
  assert.equal(clock.playing, true);
  clock.load({ duration: 1, phases: [{ name: "still", start: 0, end: 1 }] });
  near(clock.t, 0);
  assert.equal(clock.loop, "");
});

test("seek stays inside the swing and tells the phase", () => {
  const clock = loaded();
  for (const [at, t, phase] of [[-1, 0, "back"], [1, 1, "through"], [1.49, 1.49, "through"], [9, 2, "finish"]]) {
    clock.seek(at);
    near(clock.t, t);
    assert.equal(clock.phase, phase);
  }
});
