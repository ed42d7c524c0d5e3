// The conventions that distances.mjs relies on, on poses that can be worked out
// on paper. A new version of Rapier that changed one would make the comparison
// of thousands of poses in Go fail without saying why; this says why.
import assert from "node:assert/strict";
import { test } from "node:test";
import { distance } from "./distances.mjs";

// Half of the 0.1 mm that the comparison in Go allows.
const tolerance = 5e-5;

const cube = { min: [-1, -1, -1], max: [1, 1, 1] };
const cases = [
  ["a sphere beside a cube", { capsule: { a: [3, 0, 0], b: [3, 0, 0], r: 0.5 }, box: cube }, 1.5],
  ["a capsule along x reaches with its end", { capsule: { a: [2, 0, 0], b: [4, 0, 0], r: 0.25 }, box: cube }, 0.75],
  ["a capsule along -y", { capsule: { a: [0, 5, 0], b: [0, 3, 0], r: 0.5 }, box: cube }, 1.5],
  ["a capsule past an edge", { capsule: { a: [2, 2, -3], b: [2, 2, 3], r: 0.25 }, box: cube }, Math.SQRT2 - 0.25],
  ["a capsule in a cube", { capsule: { a: [0.5, 0, 0], b: [3, 0, 0], r: 0.25 }, box: cube }, -0.75],
  ["above a floor", { capsule: { a: [0, 0, 2], b: [1, 0, 3], r: 0.5 }, plane: { n: [0, 0, 1], d: 1 } }, 0.5],
  ["past a ceiling", { capsule: { a: [0, 0, 2], b: [1, 0, 3], r: 0.5 }, plane: { n: [0, 0, -1], d: -2.75 } }, -0.75],
];
for (const [name, pose, want] of cases) {
  test(name, () => {
    const got = distance(pose);
    assert.ok(Math.abs(got - want) < tolerance, `distance = ${got}, want ${want}`);
  });
}
