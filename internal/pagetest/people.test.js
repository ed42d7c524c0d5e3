import { test } from "node:test";
import assert from "node:assert/strict";
import { newcomers, nameFriend, roomForFriend, roomiest, takeIn, YOU } from "../../public/share/people.js";
import { demo } from "./fake.js";

test("a friend's room has nobody else's numbers in it", () => {
  const plan = { ...demo(), seats: [{ name: "Uncle's chair" }] };
  const room = roomForFriend(plan, 1.75);
  assert.deepEqual(room.players, [{ name: YOU, height: 1.75, hand: "right" }]);
  assert.deepEqual(room.clubs.map(({ name }) => name), ["driver"]);
  assert.doesNotMatch(JSON.stringify(room), /Host|Guest|Uncle/);
  assert.deepEqual([room.room, room.tees, room.title], [plan.room, plan.tees, plan.title]);
  assert.equal(plan.players.length, 2, "the plan itself stays");
  assert.equal(roomForFriend(room), room, "it is theirs already");
  plan.clubs = [{ name: "w", kind: "wedge", length: 0.9 }, { name: "i", kind: "iron", length: 0.95 }];
  assert.equal(roomForFriend(plan).clubs[0].name, "i", "without a driver the longest");
});

/** What a friend sends back. */
function sent(change = (_) => {}) {
  const room = roomForFriend(demo(), 1.9);
  nameFriend(room, "Ann");
  change(room);
  return room;
}

test("a friend who comes back is taken in once", () => {
  const plan = demo();
  const back = sent();
  const [ann] = newcomers(plan, back);
  assert.equal(takeIn(plan, back, ann), "Ann");
  assert.deepEqual(plan.players[2], { name: "Ann", height: 1.9, hand: "right", clubs: ["driver"] });
  assert.equal(plan.clubs.length, 2, "with the driver that lies there");
  assert.deepEqual(newcomers(plan, back), []);
});

test("with another driver, a name that is taken, and tees for each hand", () => {
  const plan = demo();
  for (const player of plan.players) Object.assign(player, { hand: "left", tees: ["middle"] });
  const back = sent((room) => {
    nameFriend(room, "Host");
    room.clubs[0].length = 1.2;
    room.players[0].hand = "left";
  });
  assert.equal(takeIn(plan, back, back.players[0]), "Host 2");
  const host = plan.players[2];
  assert.deepEqual(host.tees, ["middle"]);
  assert.equal(plan.clubs.find(({ name }) => name === host.clubs[0]).length, 1.2);
  assert.equal(plan.clubs[0].length, 1.15, "the others' driver stays as long as it was");
});

test("of several tees a friend stands where there is most room", () => {
  const checks = [-0.1, 0.2, 0.05].map((clearance, i) => ({ tee: `tee ${i}`, clearance }));
  assert.equal(roomiest(/** @type {any} */ (checks)).tee, "tee 1");
});
