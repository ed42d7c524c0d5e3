import assert from "node:assert/strict";
import { test } from "node:test";
import "./fake.js"; // the page's modules read the address as they load
import { slug } from "../../public/app/dom.js";
import { snippet, wrapped } from "../../public/share/embed.js";

const plain = { base: "https://example.org/golf/index.html", link: "#p=abc_-", name: "the-loft", title: "The loft", sentence: "Clear. All of it.", poster: "PPP", beside: false };

test("the lines to paste name the embed beside the page, the plan, and what a sandbox may", () => {
  const [frame, without] = snippet(plain).split("\n");
  assert.match(frame, /^<iframe src="https:\/\/example\.org\/golf\/embed\.html#p=abc_-&amp;poster=PPP" title="Will a full golf swing fit in The loft\?" loading="lazy" sandbox="allow-scripts [^"]*"/);
  assert.ok(!frame.includes("allow-same-origin"));
  assert.equal(without, '<noscript><img src="the-loft.svg" alt="Clear. All of it."></noscript>');
  assert.match(snippet({ ...plain, beside: true }), /embed\.html\?poster=the-loft#p=abc_-"/);
});

test("no name breaks out of its attribute", () => {
  const text = snippet({ ...plain, title: '"><script>x</script>', sentence: 'a "b" & <c>' });
  assert.ok(!text.includes("<script>") && !text.includes('alt="a "'));
  assert.ok(text.includes("&quot;&gt;") || text.includes('&quot;>'));
});

test("file names are small letters and dashes, whatever the room is called", () => {
  assert.deepEqual(["The Loft!", "  ", undefined, "Ärzte — 2"].map(slug), ["the-loft", "room", "room", "rzte-2"]);
});

test("a sentence breaks between words", () => {
  const measure = (/** @type {string} */ text) => text.length;
  assert.deepEqual(wrapped("one two three four", 9, measure), ["one two", "three", "four"]);
  assert.deepEqual(wrapped("incomprehensible", 4, measure), ["incomprehensible"]);
});
