import { test } from "node:test";
import assert from "node:assert/strict";
import { createState } from "../../public/app/state.js";
import { demo, solved } from "./fake.js";

/** A state whose solver answers when the test says so. */
function stage() {
  const asked = [];
  const kept = [];
  const busy = [];
  const whose = [];
  const state = createState({
    ask: (request) => new Promise((resolve) => asked.push({ request: structuredClone(request), resolve })),
    busy: (yes) => busy.push(yes),
    async keep(answer, as) {
      kept.push(answer.plan.title);
      whose.push(as);
    },
  });
  /** Answers the oldest request, as the solver would, or with the error given. */
  const answer = async (error) => {
    const { request, resolve } = asked.shift();
    resolve(error ? { error } : solved(request));
    await new Promise((done) => setImmediate(done));
  };
  return { state, asked, kept, busy, whose, answer };
}

async function pause(t, ms) {
  t.mock.timers.tick(ms);
  await new Promise((done) => setImmediate(done));
}

async function opened() {
  const it = stage();
  it.state.open(demo());
  await it.answer();
  return it;
}

const rename = (title) => (plan) => { plan.title = title; };

test("an edit asks once and tells everybody of the answer", async () => {
  const { state, asked, kept, busy, answer } = stage();
  const heard = [];
  state.onAnswered(() => heard.push("early"));
  state.open(demo(), "The demo is back.");
  assert.equal(asked.length, 1);
  assert.equal(asked[0].request.kind, "solve");
  await answer();
  state.onAnswered(() => heard.push("late"));
  assert.deepEqual(heard, ["early", "late"], "who comes late hears of the answer that is there");
  assert.equal(state.said, "The demo is back. A remark.");
  assert.equal(state.check.club, "driver");
  assert.deepEqual(kept, ["Loft"]);
  assert.deepEqual(busy, [true, false]);
});

test("an edit says where the walls stood in the last good plan; an undo and a whole plan do not", async () => {
  const { state, asked, answer } = await opened();
  const walls = () => asked.at(-1).request.walls;
  const there = { length: 6, width: 4, height: 3 };
  state.edit((plan) => { plan.room.length = "7 m"; }, "room.length");
  assert.deepEqual(walls(), there);
  await answer({ message: "too long", field: "room.length" });
  state.edit((plan) => { plan.room.length = 7; }, "room.length");
  assert.deepEqual(walls(), there, "what was refused moved nothing");
  await answer();
  state.edit((plan) => { plan.room.width = 5; }, "room.width");
  assert.deepEqual(walls(), { ...there, length: 7 });
  await answer();
  state.undo();
  assert.equal(walls(), undefined);
  await answer();
  state.open(demo());
  assert.equal(walls(), undefined);
});

test("a refused draft keeps the last good answer", async (t) => {
  t.mock.timers.enable({ apis: ["setTimeout"] });
  const { state, kept, busy, answer } = await opened();
  const heard = [];
  state.onAnswered(() => heard.push("good"), ({ refusal }) => heard.push(refusal.field));
  state.edit((plan) => { plan.room.height = "tall"; }, "room.height");
  await answer({ message: "“tall” is no length", field: "room.height" });
  await pause(t, 250);
  assert.deepEqual(heard, ["good", "room.height"]);
  assert.equal(state.good.room.height, 3);
  assert.equal(state.draft.room.height, "tall");
  assert.equal(kept.length, 1);
  assert.equal(busy.at(-1), false);
  assert.ok(state.canUndo, "the draft can be dropped");
  state.undo();
  assert.equal(state.draft.room.height, 3);
  await answer();
  assert.equal(state.refusal, null);
});

test("why half a figure is refused is told when the typing pauses", async (t) => {
  t.mock.timers.enable({ apis: ["setTimeout"] });
  const { state, answer } = await opened();
  const heard = [];
  state.onAnswered(() => heard.push(state.good.room.height), ({ draft }) => heard.push(draft.room.height));
  const type = (text) => state.edit((plan) => { plan.room.height = text; }, "room.height");
  type("3 m");
  await answer();
  type("3 m 1");
  await answer({ message: "“3 m 1” is no length", field: "room.height" });
  await pause(t, 249);
  type("3 m 1 f");
  await answer({ message: "“3 m 1 f” is no length", field: "room.height" });
  await pause(t, 249);
  assert.deepEqual(heard, [3, "3 m"], "a refusal was told before the pause");
  await pause(t, 1);
  assert.deepEqual(heard, [3, "3 m", "3 m 1 f"]);
});

test("an answer to an older draft leaves the newer one alone", async () => {
  const { state, busy, answer } = await opened();
  state.edit(rename("one"));
  state.edit(rename("two"));
  await answer();
  assert.equal(state.good.title, "one");
  assert.equal(state.draft.title, "two");
  assert.equal(busy.at(-1), true, "the newer one is still to come");
  await answer();
  assert.equal(state.good.title, "two");
  assert.equal(busy.at(-1), false);
});

test("a refusal of an older draft is not shown", async () => {
  const { state, answer } = await opened();
  state.edit(rename("one"));
  state.edit(rename("two"));
  await answer({ message: "no" });
  assert.equal(state.refusal, null);
  await answer();
  assert.equal(state.good.title, "two");
});

test("a replaced request changes nothing", async () => {
  const { state, asked, busy } = await opened();
  state.edit(rename("one"));
  state.edit(rename("two"));
  asked.shift().resolve(null);
  await new Promise((done) => setImmediate(done));
  assert.equal(state.good.title, "Loft");
  assert.equal(busy.at(-1), true);
});

test("undo and redo", async () => {
  const { state, answer } = await opened();
  assert.ok(!state.canUndo && !state.canRedo);
  for (const title of ["one", "two"]) {
    state.edit(rename(title));
    await answer();
  }
  state.undo();
  await answer();
  assert.equal(state.good.title, "one");
  state.undo();
  await answer();
  assert.equal(state.good.title, "Loft");
  assert.ok(!state.canUndo && state.canRedo);
  state.redo();
  await answer();
  assert.equal(state.good.title, "one");
  state.edit(rename("three"));
  await answer();
  assert.ok(!state.canRedo, "an edit closes the way forward");
});

test("edits of one field in quick succession are one step", async (t) => {
  t.mock.timers.enable({ apis: ["Date"] });
  const { state, answer } = await opened();
  for (const height of [3.1, 3.2, 3.3]) {
    state.edit((plan) => { plan.room.height = height; }, "room.height");
    await answer();
    t.mock.timers.tick(100);
  }
  t.mock.timers.tick(2000);
  state.edit((plan) => { plan.room.height = 3.4; }, "room.height");
  await answer();
  state.undo();
  await answer();
  assert.equal(state.good.room.height, 3.3);
  state.undo();
  await answer();
  assert.equal(state.good.room.height, 3);
});

test("the focus is kept while the plan has what it names", async () => {
  const { state, asked, answer } = await opened();
  state.look({ player: "Guest", club: "", tee: "" });
  assert.equal(asked[0].request.focus.player, "Guest");
  await answer();
  assert.equal(state.focus.player, "Guest");
  assert.ok(!state.canUndo, "looking is no edit");
  state.edit((plan) => { plan.players.pop(); });
  assert.deepEqual(asked[0].request.focus, { player: "", club: "", tee: "" });
});

test("with the club or tee gone the focus stays with the player", async () => {
  const { state, asked, answer } = await opened();
  state.look({ player: "Guest", club: "driver", tee: "middle" });
  await answer();
  for (const [change, focus] of [
    [(plan) => { plan.players[1].clubs = ["7-iron"]; }, { player: "Guest", club: "", tee: "middle" }],
    [(plan) => { delete plan.players[1].clubs; }, { player: "Guest", club: "driver", tee: "middle" }],
    [(plan) => { plan.tees[0].name = "left"; }, { player: "Guest", club: "driver", tee: "" }],
    [(plan) => { plan.clubs.shift(); }, { player: "Guest", club: "", tee: "left" }],
  ]) {
    state.edit(change);
    assert.deepEqual(asked.at(-1).request.focus, focus);
    await answer();
  }
});

test("whole plans are counted, so that what was typed before is void", async () => {
  const { state, answer } = await opened();
  const before = state.opened;
  state.edit(rename("one"));
  await answer();
  assert.equal(state.opened, before);
  state.undo();
  assert.equal(state.opened, before + 1);
});

test("a whole plan that the solver refuses leaves everything as it was", async () => {
  const { state, kept, busy, answer } = await opened();
  const heard = [];
  state.onAnswered(() => {}, () => heard.push("refused"));
  const opening = state.open({ ...demo(), title: "none" });
  await answer({ message: "nobody can stand there" });
  assert.deepEqual(await opening, { message: "nobody can stand there" });
  assert.deepEqual(heard, [], "it is nobody's typing");
  assert.equal(state.draft.title, "Loft");
  assert.ok(!state.canUndo, "no draft lies hidden");
  assert.equal(busy.at(-1), false);
  state.edit(rename("mine"));
  await answer();
  assert.equal(state.good.title, "mine");
  assert.equal(kept.at(-1), "mine");
  const none = stage();
  const first = none.state.open(demo());
  await none.answer({ message: "no" });
  assert.deepEqual(await first, { message: "no" }, "also when it is the first");
});

test("a plan is looked at until somebody edits it", async () => {
  const { state, whose, answer } = await opened();
  state.look({ player: "Guest", club: "", tee: "" });
  await answer();
  assert.deepEqual(whose, ["looked", "looked"]);
  state.edit(rename("mine"));
  await answer();
  state.open(demo());
  await answer();
  state.undo();
  await answer();
  state.open(demo(), "", "begun");
  await answer();
  assert.deepEqual(whose.slice(2), ["edited", "looked", "edited", "begun"]);
});

test("edits that go on for long are more than one step", async (t) => {
  t.mock.timers.enable({ apis: ["Date"] });
  const { state, answer } = await opened();
  for (let i = 1; i <= 300; i++) {
    state.edit((plan) => { plan.room.height = 3 + i / 1000; }, "room.height");
    await answer();
    t.mock.timers.tick(100);
  }
  let steps = 0;
  for (; state.canUndo; steps++) {
    state.undo();
    await answer();
  }
  assert.equal(state.good.room.height, 3);
  assert.ok(steps >= 5 && steps <= 10, `${steps} steps for 300 edits in half a minute`);
});
