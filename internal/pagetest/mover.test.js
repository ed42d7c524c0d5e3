import { test } from "node:test";
import assert from "node:assert/strict";
import { createMover } from "../../public/app/mover.js";
import { demo } from "./fake.js";

/** A mover over a state that takes every edit, and a solver that answers when the test says so. */
function stage() {
  const asked = [];
  const edits = [];
  const heard = [];
  const state = {
    good: demo(),
    draft: demo(),
    async edit(change, path) {
      change(state.draft);
      state.good = structuredClone(state.draft);
      edits.push(path);
    },
  };
  const lead = (channel, request) => new Promise((resolve) => asked.push({ channel, request, resolve }));
  const mover = createMover(/** @type {any} */ (state), /** @type {any} */ (lead));
  mover.onMoved((reply, going) => heard.push(reply ? reply.sentence : { ...going }));
  /** Answers the i-th request still open; the solver holds places to the floor. */
  const answer = async (i = 0) => {
    const { request: { x, y }, resolve } = asked.splice(i, 1)[0];
    resolve({ x, y: Math.min(y, 3.99), sentence: `${x} ${y}` });
    await settle();
  };
  return { state, mover, asked, edits, heard, answer, tee: () => ({ ...state.draft.tees[0] }) };
}

const settle = () => new Promise((done) => setImmediate(done));

test("a tee on its way is told of at once, then as the solver reads it, and changes no plan", async () => {
  const { mover, asked, edits, heard, answer } = stage();
  mover.move("middle", 2, 1.5);
  assert.deepEqual(heard, [{ tee: "middle", x: 2, y: 1.5 }]);
  assert.equal(asked[0].channel, "drag");
  assert.deepEqual(asked[0].request.focus, { player: "", club: "", tee: "middle" }, "asked for everybody, not for whom one looks at");
  assert.deepEqual(mover.at("middle"), { tee: "middle", x: 2, y: 1.5 });
  await answer();
  assert.equal(heard.at(-1), "2 1.5");
  assert.deepEqual(edits, []);
  await mover.drop();
});

test("the newest place wins, in whatever order answers come", async () => {
  const { mover, heard, answer, tee } = stage();
  mover.move("middle", 2, 1);
  mover.move("middle", 2, 3);
  await answer(1);
  await answer(0);
  assert.deepEqual(heard.filter((one) => typeof one === "string"), ["2 3"], "the older reading is not told");
  await mover.drop();
  assert.deepEqual(tee(), { name: "middle", x: 2, y: 3 });
});

test("letting go commits once, to the millimetre", async () => {
  const { mover, edits, answer, tee } = stage();
  mover.move("middle", 2.00049, 1.23456);
  await answer();
  await Promise.all([mover.drop(), mover.drop()]);
  await mover.drop();
  assert.deepEqual(edits, ["tees[0]"]);
  assert.deepEqual(tee(), { name: "middle", x: 2, y: 1.235 });
  assert.equal(mover.going, null);
});

test("let go before the solver has read the place, it still lies on the floor", async () => {
  const { mover, edits, heard, answer, tee } = stage();
  mover.move("middle", 2, 4);
  const dropped = mover.drop();
  await settle();
  assert.deepEqual(edits, [], "the place is not known yet");
  await answer();
  await dropped;
  assert.deepEqual(tee(), { name: "middle", x: 2, y: 3.99 });
  assert.deepEqual(edits, ["tees[0]"]);
  assert.equal(heard.length, 1, "what comes late is not told");
});

test("taken hold of again before the last place was read, only the new place counts", async () => {
  const { mover, edits, answer, tee } = stage();
  mover.move("middle", 2, 4);
  const dropped = mover.drop();
  mover.move("middle", 2, 1);
  await answer();
  await dropped;
  await answer();
  await mover.drop();
  assert.deepEqual(tee(), { name: "middle", x: 2, y: 1 });
  assert.deepEqual(edits, ["tees[0]"]);
});

test("keys let go by themselves, a finger does not", async (t) => {
  t.mock.timers.enable({ apis: ["setTimeout"] });
  const { mover, edits, answer, tee } = stage();
  mover.move("middle", 2, 1);
  await answer();
  t.mock.timers.tick(500);
  mover.move("middle", 2, 1.1);
  await answer();
  t.mock.timers.tick(500);
  assert.deepEqual(edits, [], "another key came in between");
  t.mock.timers.tick(200);
  await settle();
  assert.deepEqual(edits, ["tees[0]"]);
  assert.equal(tee().y, 1.1);

  mover.move("middle", 2, 2, false);
  await answer();
  t.mock.timers.tick(5000);
  await settle();
  assert.equal(edits.length, 1);
  await mover.drop();
  t.mock.timers.tick(5000);
  await settle();
  assert.equal(edits.length, 2, "nothing is let go again");
});

test("a tee that the plan no longer has is let go without a trace", async () => {
  const { mover, edits, answer } = stage();
  mover.move("gone", 2, 1);
  await answer();
  await mover.drop();
  assert.deepEqual(edits, []);
  assert.equal(mover.at("gone").name, "middle", "asked for, the first stands for it");
});
