import assert from "node:assert/strict";
import { test } from "node:test";
import { keyFrames, loopFrames } from "../../public/pictures/pictures.js";

const reel = /** @type {any} */ ({
  duration: 2, tightest: 1.5, first: undefined,
  phases: [{ name: "address", start: 0, end: 0.2 }, { name: "top", start: 0.8, end: 0.9 }, { name: "impact", start: 1.1, end: 1.11 }, { name: "finish", start: 1.8, end: 2 }],
});

test("the strip goes from address to finish, the tightest moment in its place", () => {
  assert.deepEqual(keyFrames(reel), [
    { t: 0, words: "address" }, { t: 0.8, words: "top" }, { t: 1.1, words: "impact" }, { t: 1.5, words: "tightest" }, { t: 2, words: "finish" }]);
});

test("the loop is about the first touch where there is one, inside the swing, and rests at its end", () => {
  for (const first of [undefined, 1.2, 0.1, 1.95]) {
    const frames = loopFrames({ ...reel, first });
    const about = first ?? 1.5;
    assert.equal(frames[0].t, Math.max(0, about - 0.3));
    assert.ok(Math.abs(frames.at(-1).t - Math.min(2, about + 0.2)) < 1e-9);
    assert.equal(frames.at(-1).seconds, 1);
    for (const [i, { t, seconds }] of frames.slice(0, -1).entries()) {
      assert.ok(frames[i + 1].t > t);
      assert.ok(Math.abs(seconds - 8 / 60) < 1e-9, "eight times slower");
    }
  }
});
