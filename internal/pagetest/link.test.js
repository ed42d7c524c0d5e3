import { test } from "node:test";
import assert from "node:assert/strict";
import { readFile, writeFile } from "node:fs/promises";
import { pack, unpack } from "../../public/app/link.js";

const testdata = (name) => new URL(`../link/testdata/${name}`, import.meta.url);
const read = async (name) => (await readFile(testdata(name), "utf8")).trim();

test("what the command line packs is read, and packed again in the browser's way", async () => {
  const ours = await read("cli.txt");
  const { text } = await unpack(ours);
  assert.equal(JSON.parse(text).title, "Carriage-house loft");
  const link = await pack(text);
  assert.ok(link.length < 1500, `${link.length} characters`);
  if (process.env.UPDATE) await writeFile(testdata("page.txt"), `${link}\n`);
  assert.equal((await unpack(await read("page.txt"))).text, text, "the link kept for the command line's tests");
});

test("any text comes back", async () => {
  for (const text of ["{}", "Räume ½″ 🏌", "x".repeat(199_000)]) assert.equal((await unpack(await pack(text))).text, text);
});

test("damage is told in a sentence", async () => {
  const whole = await read("cli.txt");
  const damaged = /damaged or cut short/;
  const cases = {
    "#p=": /holds no plan/,
    "#p=%20%F0%9F%92%A5!!": damaged,
    "#p=AAAAAAAAAAAAAAAA": damaged,
    "#p=AAAA": damaged,
    "#p=A": damaged,
    [whole.slice(0, whole.length / 2)]: damaged,
    [`${whole.slice(0, 20)}zzzz${whole.slice(24)}`]: damaged,
    [`#p=${"A".repeat(1 << 20)}`]: /too long to hold a plan/,
    [await pack("x".repeat(200_001))]: damaged,
  };
  for (const [link, message] of Object.entries(cases)) {
    const { text, error } = await unpack(link);
    assert.equal(text, undefined, link.slice(0, 60));
    assert.match(error.message, message, link.slice(0, 60));
  }
});

test("a loose end is told, or does no harm", async () => {
  // Engines differ in what they let pass behind or at the end of a deflated stream.
  const whole = await read("cli.txt");
  const { text: want } = await unpack(whole);
  for (const link of [whole.slice(0, -1), `${whole}AAAA`]) {
    const { text, error } = await unpack(link);
    assert.ok(error || text === want);
  }
});

test("no changed letter passes for another plan", async () => {
  const whole = await read("cli.txt");
  const { text: want } = await unpack(whole);
  for (let i = 3; i < whole.length; i++) {
    const { text, error } = await unpack(whole.slice(0, i) + (whole[i] === "A" ? "B" : "A") + whole.slice(i + 1));
    assert.ok(error || text === want, `letter ${i}`);
  }
});

test("what mail and chat put behind a link is not part of it", async () => {
  const whole = await read("cli.txt");
  const { text: want } = await unpack(whole);
  const wrapped = `${whole.slice(0, 76)}\r\n ${whole.slice(76)}`;
  for (const link of [`${whole}.`, `${whole} `, `${whole}),`, `${whole}\u200b`, `${whole}>`, wrapped]) assert.equal((await unpack(link)).text, want, link.slice(-5));
});
