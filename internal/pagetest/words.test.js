import { test } from "node:test";
import assert from "node:assert/strict";
import { describeViews, named, titleBlock } from "../../public/drawings/words.js";

const dims = { length: "21 ft", width: "14 ft", height: "9 ft" };
const focus = { player: "Host", club: "driver", tee: "middle" };
const check = { nearest: { phase: "in the follow-through", part: "clubhead", surface: "rafters, left" } };
const view = { tape: { surface: "rafters, left", label: "5 in" } };

test("a name with a comma goes in quotes", () => {
  assert.equal(named("ceiling"), "ceiling");
  assert.equal(named("rafters, left"), "“rafters, left”");
});

test("each view is told with its sizes and the reading", () => {
  const words = describeViews({ plan: view, side: view, face: {} }, dims, focus, check);
  assert.equal(words.plan, "Plan from above: room 21 ft by 14 ft; Host with the driver at the middle tee at the tightest moment, in the follow-through. Clubhead to “rafters, left”: 5 in.");
  assert.match(words.side, /21 ft long, 9 ft high/);
  assert.ok(!words.face.includes("5 in"), "without a tape there is no reading");
});

test("the title block names for whom the balls are drawn", () => {
  assert.deepEqual(titleBlock({ title: "" }, focus)[0], ["Room", "no name yet"]);
  assert.deepEqual(titleBlock({ title: "Loft" }, focus), [["Room", "Loft"], ["Player", "Host"], ["Club", "driver"], ["Tee", "middle"]]);
});
