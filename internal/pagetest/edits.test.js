import { test } from "node:test";
import assert from "node:assert/strict";
import { addRow, addVisitor, driverOf, findVisitor, freshName, keepVisitor, removeRow, removeVisitor, renameIn, setDriver, twoTees, VISITOR, VISITOR_CLUB } from "../../public/app/edits.js";
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

/** A demo with a visitor in it. */
function visited() {
  const plan = demo();
  addVisitor(plan, { height: "6'2\"", hand: "left" });
  return plan;
}

test("the driver in a bag", () => {
  const plan = demo();
  plan.players.push({ name: "Putts", height: 1.8, clubs: ["7-iron"] });
  assert.deepEqual(plan.players.map((player) => driverOf(plan, player)), [0, 0, -1]);
  removeRow(plan, "clubs", 0);
  assert.equal(driverOf(plan, plan.players[0]), -1);
});

test("a visitor takes the driver that lies there, and comes once", () => {
  const plan = visited();
  addVisitor(plan, { height: 1.9, hand: "right" });
  assert.deepEqual(plan.players.slice(2), [{ name: VISITOR, height: "6'2\"", hand: "left", clubs: ["driver"] }]);
  assert.equal(plan.clubs.length, 2);
  const irons = demo();
  removeRow(irons, "clubs", 0);
  addVisitor(irons, { height: 1.9, hand: "right" });
  assert.deepEqual(findVisitor(irons).clubs, ["7-iron"], "without a driver, the first club");
});

test("a driver that others swing too stays theirs", () => {
  const plan = demo();
  setDriver(plan, plan.players[1], "46 in");
  assert.deepEqual(plan.clubs.map(({ name, kind, length }) => [name, kind, length]),
    [["driver", "driver", 1.15], ["7-iron", "iron", 0.94], ["Guest's driver", "driver", "46 in"]]);
  assert.deepEqual(clubsOf(plan), { Host: ["driver", "7-iron"], Guest: ["Guest's driver"] });
  setDriver(plan, plan.players[1], 1.2);
  assert.equal(plan.clubs.length, 3, "their own only changes its length");
  assert.equal(plan.clubs[2].length, 1.2);
  setDriver(plan, plan.players[0], 1.1);
  assert.equal(plan.clubs[0].length, 1.1, "what nobody else swings is their own");
});

test("who swings everything gets a driver instead of the one that others have", () => {
  const plan = demo();
  plan.clubs[0].loft = 9;
  setDriver(plan, plan.players[0], "44 in");
  assert.deepEqual(clubsOf(plan), { Host: ["7-iron", "Host's driver"], Guest: ["driver"] });
  assert.equal(plan.clubs[2].loft, 9, "what else is known of the driver goes along");
});

test("who has no driver gets one", () => {
  const plan = demo();
  removeRow(plan, "clubs", 0);
  plan.clubs.push({ name: "Host's driver", kind: "wood" });
  setDriver(plan, plan.players[0], "44 in");
  assert.deepEqual(plan.clubs.at(-1), { name: "Host's driver 2", kind: "driver", length: "44 in" });
  assert.ok(plan.players[0].clubs.includes("Host's driver 2"));
  assert.ok(!plan.players[1].clubs.includes("Host's driver 2"));
});

test("a visitor with a driver of their own goes without a trace", () => {
  const plan = visited();
  setDriver(plan, findVisitor(plan), "46 in");
  assert.deepEqual(clubsOf(plan), { Host: ["driver", "7-iron"], Guest: ["driver"], [VISITOR]: [VISITOR_CLUB] });
  removeVisitor(plan);
  assert.deepEqual(plan, demo());
  const borrowed = visited();
  removeVisitor(borrowed);
  assert.deepEqual(borrowed, demo());
});

test("a visitor is kept under a name that nobody has, and so is the driver", () => {
  const plan = visited();
  setDriver(plan, findVisitor(plan), "46 in");
  assert.equal(keepVisitor(plan, "Host"), "Host 2");
  assert.equal(findVisitor(plan), undefined);
  assert.deepEqual(clubsOf(plan)["Host 2"], ["Host 2's driver"]);
  assert.deepEqual(plan.clubs.map(({ name }) => name), ["driver", "7-iron", "Host 2's driver"]);
  const borrowed = visited();
  assert.equal(keepVisitor(borrowed, "Neighbour"), "Neighbour");
  assert.deepEqual(clubsOf(borrowed).Neighbour, ["driver"]);
});

test("two tees, one for each hand", () => {
  const plan = demo();
  plan.players.push({ name: "Other", height: 1.8, tees: ["middle"] });
  twoTees(plan, [{ name: "right", x: 1, y: 1, players: ["Host"] }, { name: "left", x: 1, y: 3, players: ["Guest"] }]);
  assert.deepEqual(plan.tees, [{ name: "right", x: 1, y: 1 }, { name: "left", x: 1, y: 3 }]);
  assert.deepEqual(plan.players.map(({ tees }) => tees), [["right"], ["left"], undefined]);
});
