import { test } from "node:test";
import assert from "node:assert/strict";
import { addRow, findVisitor, freshName, removeRow, removeVisitor, renameIn, setVisitor, twoTees, VISITOR, VISITOR_CLUB } from "../../public/app/edits.js";
import { demo } from "./fake.js";

const clubsOf = (plan) => Object.fromEntries(plan.players.map(({ name, clubs }) => [name, clubs]));

test("names that are taken get a number", () => {
  assert.equal(freshName(undefined, "tee"), "tee");
  assert.equal(freshName([{ name: "tee" }, { name: "tee 3" }], "tee"), "tee 2");
  assert.equal(freshName([{ name: "tee" }, { name: "tee 2" }], "tee"), "tee 3");
});

test("rows are added under a name of their own, also to lists that are not there", () => {
  const plan = demo();
  const seat = { name: "seat", x: 1, y: 2 };
  addRow(plan, "seats", seat);
  addRow(plan, "seats", seat);
  assert.deepEqual(plan.seats, [{ name: "seat", x: 1, y: 2 }, { name: "seat 2", x: 1, y: 2 }]);
  addRow(plan, "room.slopes", { name: "slope" });
  assert.equal(plan.room.slopes[0].name, "slope");
  addRow(plan, "tees", plan.tees[0], "tee");
  assert.deepEqual(plan.tees.map(({ name }) => name), ["middle", "tee"]);
});

test("a new club is swung by who swung them all", () => {
  const plan = demo();
  plan.players.push({ name: "Pro", height: 1.8, clubs: ["driver", "7-iron"] });
  addRow(plan, "clubs", { name: "club", kind: "iron" });
  assert.deepEqual(clubsOf(plan), { Host: undefined, Guest: ["driver"], Pro: ["driver", "7-iron", "club"] });
});

test("a club that goes is taken from everybody", () => {
  const plan = demo();
  removeRow(plan, "clubs", 0);
  assert.deepEqual(clubsOf(plan), { Host: undefined, Guest: undefined }, "none named stands for all");
});

test("a new name is followed", () => {
  const plan = demo();
  renameIn(plan, "clubs", "driver", "big stick");
  assert.deepEqual(plan.players[1].clubs, ["big stick"]);
});

test("the visitor swings the room's driver, or their own, which is nobody else's", () => {
  const plan = demo();
  setVisitor(plan, { height: "6'2\"", hand: "left", length: "" });
  assert.deepEqual(findVisitor(plan), { name: VISITOR, height: "6'2\"", hand: "left", clubs: ["driver"] });
  setVisitor(plan, { height: 1.9, hand: "right", length: "46 in" });
  assert.equal(plan.players.length, 3);
  assert.equal(plan.clubs.at(-1).length, "46 in");
  assert.deepEqual(clubsOf(plan), { Host: ["driver", "7-iron"], Guest: ["driver"], [VISITOR]: [VISITOR_CLUB] });
  setVisitor(plan, { height: 1.9, hand: "right", length: 1.2 });
  assert.equal(plan.clubs.length, 3);
  removeVisitor(plan);
  assert.deepEqual(plan, demo(), "and leaves no trace");
});

test("two tees, one for each hand", () => {
  const plan = demo();
  plan.players.push({ name: "Other", height: 1.8, tees: ["middle"] });
  twoTees(plan, [{ name: "right", x: 1, y: 1, players: ["Host"] }, { name: "left", x: 1, y: 3, players: ["Guest"] }]);
  assert.deepEqual(plan.tees, [{ name: "right", x: 1, y: 1 }, { name: "left", x: 1, y: 3 }]);
  assert.deepEqual(plan.players.map(({ tees }) => tees), [["right"], ["left"], undefined]);
});
