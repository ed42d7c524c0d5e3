import { beforeEach, test } from "node:test";
import assert from "node:assert/strict";
import { demo, fakeHistory, fakeStorage } from "./fake.js";
import { fileOf, plansIn, putBack, putOn, readShelf, rename, setAside, takeOff, whyNot } from "../../public/keep/shelf.js";
import { everyoneLines, planLines, surfaceLines } from "../../public/keep/differ.js";
import { keep, keptLink, savedPlan } from "../../public/app/store.js";

const PLAN = "wide-berth.plan";
let storage;
beforeEach(() => {
  storage = fakeStorage();
  fakeHistory();
});
const names = () => readShelf().kept.map(({ name }) => name).sort();
const answer = (title) => ({ plan: { ...demo(), title }, sparse: { title } });

test("plans are kept under names that are free, renamed, removed and put back", () => {
  const one = putOn(demo(), "Loft");
  putOn(demo(), "Loft");
  assert.deepEqual(names(), ["Loft", "Loft 2"]);
  assert.equal(rename(one, "Loft 2").name, "Loft 2 2");
  assert.equal(rename(one, "Loft").name, "Loft", "its own name is free");
  takeOff(one.id);
  assert.deepEqual(names(), ["Loft 2"]);
  putBack(one);
  assert.deepEqual(names(), ["Loft", "Loft 2"]);
});

test("one damaged plan hides no other", () => {
  putOn(demo(), "Loft");
  for (const [i, text] of ["{", "null", "[".repeat(30_000), '{"name":"x","plan":7}'].entries()) storage.setItem(`wide-berth.kept.${i}`, text);
  const { kept, damaged } = readShelf();
  assert.deepEqual([kept.length, damaged], [1, 4]);
});

test("what the page sets aside is kept once, the newest five, and nobody's own goes for it", () => {
  for (let i = 0; i < 5; i++) putOn({ ...demo(), title: `own ${i}` }, `own ${i}`);
  for (let i = 0; i < 7; i++) {
    assert.match(setAside(JSON.stringify({ ...demo(), title: `aside ${i}` })), new RegExp(`under Plans as “aside ${i}”`));
    setAside(JSON.stringify({ ...demo(), title: `aside ${i}` }));
  }
  assert.equal(names().length, 10);
  assert.ok(names().includes("aside 6") && names().includes("own 0"), names().join());
  assert.equal(setAside("no plan"), "");
});

test("a full and a forbidden storage are told apart in words", () => {
  fakeStorage(100);
  assert.throws(() => putOn(demo(), "Loft"), (e) => /no room left/.test(whyNot(e)));
  assert.match(whyNot(new Error("denied")), /private window/);
});

test("files of many plans and of one come back", () => {
  const many = plansIn(fileOf([{ name: "a", plan: demo() }, { name: "b", plan: demo() }]));
  assert.deepEqual(many.map(({ name }) => name), ["a", "b"]);
  assert.deepEqual(plansIn(`\ufeff${JSON.stringify(demo())}`), [{ name: "Loft", plan: demo() }]);
  for (const text of ["", "{}", "[]", "null", '{"kept":[]}', '{"kept":[{"plan":1}]}', "[".repeat(30_000)]) assert.equal(plansIn(text), null, text.slice(0, 20));
});

test("a link that is looked at does not take the place of the visitor's plan; edited, it sets it aside", async () => {
  await keep(answer("mine"), "edited");
  await keep(answer("theirs"), "looked");
  assert.equal(JSON.parse(savedPlan()).title, "mine");
  assert.ok(keptLink(), "the address has the one that is shown");
  const told = await keep(answer("theirs, edited"), "edited");
  assert.match(told, /under Plans as “mine”/);
  assert.equal(JSON.parse(savedPlan()).title, "theirs, edited");
  assert.equal(await keep(answer("theirs, edited more"), "edited"), "", "only once");
  assert.deepEqual(names(), ["mine"]);
  await keep(answer("begun"), "begun");
  assert.deepEqual(names(), ["mine", "theirs, edited more"]);
});

test("a plan of another tab is set aside, not overwritten", async () => {
  await keep(answer("mine"), "edited");
  storage.setItem(PLAN, JSON.stringify({ ...demo(), title: "another tab's" }));
  assert.match(await keep(answer("mine, edited"), "edited"), /^Another tab kept .* “another tab's”/);
  storage.setItem(PLAN, JSON.stringify({ ...demo(), title: "its next" }));
  // While this page fetches what it sets plans aside with, the other goes on.
  const told = keep(answer("mine, edited more"), "edited");
  storage.setItem(PLAN, JSON.stringify({ ...demo(), title: "its last" }));
  assert.match(await told, /“its last”/);
  assert.deepEqual(names(), ["another tab's", "its last"]);
  assert.equal(JSON.parse(savedPlan()).title, "mine, edited more");
});

test("a full storage is told once and leaves what is there", async () => {
  fakeStorage(600);
  localStorage.setItem(PLAN, JSON.stringify(demo()));
  assert.match(await keep(answer("x".repeat(400)), "edited"), /no room left/);
  assert.equal(JSON.parse(savedPlan()).title, "Loft");
  assert.equal(await keep(answer("y".repeat(400)), "edited"), "");
});

const cards = [{ id: "room", title: "Room", fields: [{ path: "room.height", label: "Ceiling height", kind: "length" }] },
  { id: "people", title: "People", lists: [
    { path: "tees", title: "Tees", one: "tee", fields: [{ path: "name", label: "Name", kind: "text" }, { path: "x", label: "From the back wall", kind: "length" }, { path: "y", label: "From the right wall", kind: "length" }] },
    { path: "players", title: "Players", one: "player", fields: [{ path: "hand", label: "Hand", kind: "choice", choices: [["right", "right-handed"], ["left", "left-handed"]] }] }] }];
const side = (change, surfaces) => {
  const plan = demo();
  change(plan);
  return { plan, answer: /** @type {any} */ ({
    figures: { fields: { "room.height": `${plan.room.height} m` }, surfaces, checks: ["4 in"] },
    report: { checks: [{ player: "Host", club: "driver", tee: "middle", verdict: "tight" }] } }) };
};

test("what differs between two plans is told in the form's words", async () => {
  const a = side(() => {}, [{ name: "left wall", label: "1 3/8 in", verdict: "tight" }, { name: "ceiling", label: "9 in", verdict: "clear" }]);
  const b = side((plan) => {
    plan.room.height = 3.2;
    Object.assign(plan.tees[0], { y: plan.tees[0].y - 0.1524 });
    plan.players[0].hand = "left";
    plan.players.pop();
  }, [{ name: "ceiling", label: "9 in", verdict: "clear" }, { name: "left wall", label: "7 1/4 in", verdict: "clear" }, { name: "shelf", label: "2 ft", verdict: "clear" }]);
  a.plan.players[0].hand = "right";
  assert.deepEqual(await planLines(/** @type {any} */ (cards), a, b, async (m) => `${Math.round(m / 0.0254)} in`), [
    "Ceiling height: 3 m → 3.2 m", "tee “middle” 6 in to the right", "player “Host”, Hand: right-handed → left-handed", "player “Guest”: only in the first"]);
  assert.deepEqual(surfaceLines(a, b).map(({ of, before, after, changed }) => [of, before, after, changed]), [
    ["left wall", "1 3/8 in", "7 1/4 in", true], ["ceiling", "9 in", "9 in", false], ["shelf", "", "2 ft", true]]);
  assert.deepEqual(everyoneLines(a, b).map(({ of, changed }) => [of, changed]), [["Host, driver, middle", false]]);
});

test("a plan that would not fit for a while goes on from itself", async (t) => {
  await keep(answer("mine"), "edited");
  const full = t.mock.method(storage, "setItem", () => { throw Object.assign(new Error("full"), { name: "QuotaExceededError" }); });
  await keep(answer("mine, larger"), "edited");
  full.mock.restore();
  assert.equal(await keep(answer("mine, smaller"), "edited"), "");
  assert.deepEqual(names(), []);
});
