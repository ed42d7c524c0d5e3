import { test } from "node:test";
import assert from "node:assert/strict";
import { darkBoxes, forScene, frameAt } from "../../public/stage/shade.js";
import { lensAt } from "../../public/builder/lens.js";

const REACH = { min: [0, 0, 0], max: [5.9, 4, 2.6] };
const INCH = 0.0254;

test("a lens goes where the finger does, in whole steps, and stays where it may be", () => {
  const from = [2, 1.5, 2.4];
  for (const [name, by, view, step, want] of /** @type {[string, number[], "plan" | "side", number, number[]][]} */ ([
    ["along the room and down, in elevation", [0.52, -0.31], "side", 0.01, [2.52, 1.5, 2.09]],
    ["along and across, in plan", [-0.2, 0.25], "plan", 0.01, [1.8, 1.75, 2.4]],
    ["only along: what it is not moved by keeps its odd tenth", [0.004, 0], "side", INCH, [2.0066, 1.5, 2.4]],
    ["by whole inches", [0.03, 0], "plan", INCH, [2.032, 1.5, 2.4]],
    ["no farther than the cloth", [9, 0], "side", 0.01, [5.9, 1.5, 2.4]],
    ["nor through the ceiling or the back wall", [-9, 9], "side", 0.01, [0, 1.5, 2.6]],
    ["nowhere", [0, 0], "plan", 0.01, from],
  ])) {
    assert.deepEqual(lensAt(from, by, view, step, REACH), want, name);
  }
  assert.deepEqual(from, [2, 1.5, 2.4], "what it came from is left alone");
});

test("behind the cloth it stays behind it", () => {
  assert.deepEqual(lensAt([6.5, 2, 1], [-2, 0], "plan", 0.01, { min: [6.02, 0, 0], max: [7, 4, 2.6] }), [6.02, 2, 1]);
});

const FILM = { rate: 10, nx: 4, ny: 2, frames: [[], [2, 4], [0, 8]], image: { x: 6, width: 2, height: 1, bottom: 0.5, centre: 3 } };

test("the dark cells of a frame lie on the image, row by row from its golfer's right", () => {
  assert.deepEqual(darkBoxes(FILM, 0), []);
  assert.deepEqual(darkBoxes(FILM, 1), [[3, 0.5, 1, 0.5], [2, 1, 1, 0.5]], "a run goes on in the next row");
  assert.deepEqual(darkBoxes(FILM, 2), [[2, 0.5, 2, 0.5], [2, 1, 2, 0.5]]);
});

test("a moment has the frame nearest to it, none beyond its ends", () => {
  assert.deepEqual([-1, 0, 0.04, 0.06, 0.2, 9].map((t) => frameAt(/** @type {any} */ (FILM), t)), [0, 0, 0, 1, 2, 2]);
});

test("the scene is told of every frame how long it is, in four bytes a number", () => {
  const { runs, right, rate } = forScene(/** @type {any} */ (FILM));
  assert.deepEqual([...new Int32Array(runs.buffer)], [0, 2, 2, 4, 2, 0, 8]);
  assert.deepEqual([right, rate], [2, 10]);
});
