import { test } from "node:test";
import assert from "node:assert/strict";
import { setAt, steps, valueAt } from "../../public/app/paths.js";

test("paths come apart", () => {
  assert.deepEqual(steps("players[1].height"), ["players", 1, "height"]);
  assert.deepEqual(steps("room.solids[10].min[2]"), ["room", "solids", 10, "min", 2]);
});

test("values are found, also where the way ends early", () => {
  const plan = { players: [{ height: 1.8 }, { height: 0 }] };
  assert.equal(valueAt(plan, "players[1].height"), 0);
  assert.equal(valueAt(plan, "players[2].height"), undefined);
  assert.equal(valueAt(plan, "floor.mat.length"), undefined);
});

test("values are put, and the way is made", () => {
  const plan = {};
  setAt(plan, "hung[0].min[2]", 2.4);
  assert.deepEqual(plan, { hung: [{ min: [, , 2.4] }] });
  setAt(plan, "floor.mat", { inset: true });
  setAt(plan, "floor.mat.inset", undefined);
  assert.deepEqual(plan.floor, { mat: {} });
});
