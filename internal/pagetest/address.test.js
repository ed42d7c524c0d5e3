import { beforeEach, test } from "node:test";
import assert from "node:assert/strict";
import { fakeHistory } from "./fake.js";
import { audience, linkInAddress, putAudience, ownStep, putLink, putSheet, sheetInAddress } from "../../public/app/address.js";

let steps;
beforeEach(() => { steps = fakeHistory(); });

test("an address without anything", () => {
  assert.equal(linkInAddress(), "");
  assert.equal(sheetInAddress(), "");
  assert.ok(!ownStep());
});

test("link and sheet stand side by side, whichever comes first", () => {
  for (const hash of ["#p=A-_9&sheet=stand", "#sheet=stand&p=A-_9"]) {
    location.hash = hash;
    assert.equal(linkInAddress(), "#p=A-_9");
    assert.equal(sheetInAddress(), "stand");
  }
});

test("a link takes the place of a link and leaves the sheet", () => {
  location.hash = "#p=old&sheet=stand";
  putLink("#p=new");
  assert.deepEqual(steps.hashes, ["#p=new&sheet=stand"]);
  location.hash = "#sheet=ball";
  putLink("#p=new");
  assert.deepEqual(steps.hashes, ["#p=new&sheet=ball"], "also where there was none");
});

test("a sheet is a step that Back takes back, and leaves the link", () => {
  location.hash = "#p=A";
  putSheet("stand");
  putSheet("");
  assert.deepEqual(steps.hashes, ["#p=A", "#p=A&sheet=stand", "#p=A"]);
});

test("what is there already makes no step", () => {
  putLink("#p=A");
  putSheet("");
  putLink("#p=A");
  assert.deepEqual(steps.hashes, ["#p=A"]);
});

test("a link that was just followed is read before anything is put over it", () => {
  putLink("#p=A");
  steps.follow("#p=B");
  putLink("#p=A"); // kept late: the answer was under way
  assert.equal(linkInAddress(), "#p=B");
  assert.ok(!ownStep(), "or it would pass for the page's own");
  steps.arrive();
  putLink("#p=C");
  assert.equal(linkInAddress(), "#p=C");
});

test("an empty link is a damaged one, not none", () => {
  location.hash = "#p=";
  assert.equal(linkInAddress(), "#p=");
});

test("a name that is no sheet's brings nothing else into the address", () => {
  location.hash = "#sheet=a%26p%3Devil";
  putLink("#p=A");
  assert.equal(linkInAddress(), "#p=A");
  assert.equal(sheetInAddress(), "a&p=evil");
});

test("the page knows its own steps from an address that somebody typed", () => {
  location.hash = "#p=A";
  assert.ok(!ownStep());
  putLink("#p=A");
  assert.ok(ownStep(), "once the plan of the link is open, it is the page's own");
  putSheet("stand");
  assert.ok(ownStep());
});

test("an address that mail or chat has changed is read as it was meant", () => {
  for (const hash of ["#p%3DA-_9%26sheet%3Dstand", "#p=A-_9&amp;sheet=stand", "#p=A-_9&sheet=stand?utm_source=mail", "#p=A-_9&fbclid=x&sheet=stand", "#p=A%2D%5F9&sheet=stand"]) {
    location.hash = hash;
    assert.equal(linkInAddress(), "#p=A-_9", hash);
    assert.equal(sheetInAddress(), "stand", hash);
  }
  location.hash = "#p%3DA%2";
  assert.doesNotThrow(linkInAddress, "cut in the middle of an escape");
});

test("whom a link is for stays until the page says otherwise", () => {
  location.hash = "#p=A&for=friend";
  assert.equal(audience(), "friend");
  putLink("#p=B");
  assert.deepEqual(steps.hashes, ["#p=B&for=friend"]);
  putAudience("");
  assert.deepEqual(steps.hashes, ["#p=B"]);
  assert.equal(audience(), "");
});

test("a browser that takes no more steps stops nothing", (t) => {
  t.mock.method(history, "replaceState", () => { throw new Error("too many calls"); });
  assert.doesNotThrow(() => putLink("#p=A"));
});
