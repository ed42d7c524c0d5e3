import { test } from "node:test";
import assert from "node:assert/strict";
import { createSolver } from "../../public/solver/solver.js";

/** The client with workers that answer when the test says so. */
function stage(t) {
  t.mock.timers.enable({ apis: ["setTimeout"] });
  const workers = [];
  class FakeWorker extends EventTarget {
    posted = [];
    gone = false;
    constructor() {
      super();
      workers.push(this);
    }
    postMessage(message) { this.posted.push(message); }
    terminate() { this.gone = true; }
    say(data) { this.dispatchEvent(new MessageEvent("message", { data })); }
    /** Answers the newest request. */
    answer(reply) { this.say({ id: this.posted.findLast(({ id }) => id).id, body: JSON.stringify(reply) }); }
  }
  Object.assign(globalThis, { Worker: FakeWorker, navigator: { onLine: true } });
  const fatal = [];
  const shares = [];
  const known = new Map();
  const solver = createSolver({ onFatal: (message) => fatal.push(message), onProgress: (share) => shares.push(share), known });
  return { solver, known, workers, fatal, shares, tick: (ms) => t.mock.timers.tick(ms) };
}

const solve = (n) => ({ kind: "solve", plan: n });

test("the newest question wins: the one under way is given up, those between are never asked", async (t) => {
  const { solver, workers } = stage(t);
  const replies = [1, 2, 3].map((n) => solver.latest("solve", solve(n)));
  assert.deepEqual(await Promise.all(replies.slice(0, 2)), [null, null]);
  await Promise.resolve();
  assert.deepEqual(workers[0].posted.map((m) => m.stop ?? JSON.parse(m.body).plan), [1, 1, 3], "asked, given up, asked");
  workers[0].say({ id: 1, body: '"too late"' });
  workers[0].answer({ plan: 3 });
  assert.deepEqual(await replies[2], { plan: 3 });
});

test("what a finger asks for is not given up for the next", async (t) => {
  const { solver, workers } = stage(t);
  const replies = [1, 2, 3].map((x) => solver.latest("drag", { kind: "drag", x }));
  workers[0].answer({ x: 1 });
  assert.deepEqual(await replies[0], { x: 1 });
  assert.equal(await replies[1], null);
});

test("maps and changes say that they can wait, a plan says how far it is", (t) => {
  const { solver, workers, shares } = stage(t);
  for (const kind of ["solve", "drag", "maps", "changes"]) solver.ask({ kind });
  solver.warm({ kind: "solve" });
  assert.deepEqual(workers[0].posted.map((m) => m.patience), [0, 0, 1, 1, 2]);
  workers[0].say({ id: 1, progress: 0.5 });
  workers[0].say({ id: 3, progress: 0.9 });
  workers[0].say({ id: 5, progress: 0.9 });
  workers[0].say({ id: 1, progress: -1 });
  assert.deepEqual(shares, [0.5]);
});

test("what is known needs no worker, unless the worker is to learn it", async (t) => {
  const { solver, workers, known } = stage(t);
  known.set(JSON.stringify(solve(1)), '{"plan":1}');
  assert.deepEqual([await solver.ask(solve(1)), await solver.latest("solve", solve(1))], [{ plan: 1 }, { plan: 1 }]);
  assert.equal(workers.length, 0);
  solver.warm(solve(1));
  solver.ask(solve(2));
  assert.equal(workers[0].posted.length, 2);
  let there = false;
  solver.started.then(() => { there = true; });
  await Promise.resolve();
  assert.equal(there, false);
  workers[0].say({ started: true });
  await solver.started;
});

test("what is given up by a button is answered with a sentence", async (t) => {
  const { solver, workers } = stage(t);
  const reply = solver.latest("solve", solve(1));
  solver.giveUp("solve");
  assert.match((await reply).error.message, /stopped/);
  assert.deepEqual(workers[0].posted.at(-1), { stop: 1 });
  solver.giveUp("solve"); // nothing is under way
  const next = solver.latest("solve", solve(2));
  workers[0].answer({ plan: 2 });
  assert.deepEqual(await next, { plan: 2 });
});

test("a worker that falls silent is told of and replaced by whoever asks next; signs of life keep it", async (t) => {
  const { solver, workers, fatal, tick } = stage(t);
  const reply = solver.ask(solve(1));
  for (let i = 0; i < 6; i++) {
    tick(14_000);
    workers[0].say({ progress: -1 });
  }
  assert.deepEqual(fatal, []);
  tick(15_000);
  assert.deepEqual(fatal, [], "a page that was frozen wakes before its worker");
  tick(15_000);
  assert.equal(fatal.length, 1);
  assert.ok(workers[0].gone);
  assert.match((await reply).error.message, /does not answer/);
  const next = solver.ask(solve(2));
  assert.equal(workers.length, 2);
  workers[0].say({ fatal: "a ghost" });
  workers[1].answer({ plan: 2 });
  assert.deepEqual(await next, { plan: 2 });
  tick(100_000);
  assert.equal(fatal.length, 1, "nobody waits for anything");
});

test("a program that cannot start or stops is told of once, all who wait hear why", async (t) => {
  const { solver, workers, fatal } = stage(t);
  const replies = [solver.ask(solve(1)), solver.ask({ kind: "maps" })];
  workers[0].say({ fatal: "It stopped." });
  workers[0].dispatchEvent(new Event("error", { cancelable: true }));
  const said = "It stopped. Your numbers are in the address; reload the page to try again.";
  assert.deepEqual(fatal, [said]);
  for (const reply of await Promise.all(replies)) assert.equal(reply.error.message, said);
});

test("names that look the same are sent the same", (t) => {
  const { solver, workers } = stage(t);
  for (const name of ["Zo\u00eb", "Zoe\u0308"]) solver.ask({ kind: "solve", plan: { name } });
  const [one, other] = workers[0].posted;
  assert.equal(one.body, other.body);
});
