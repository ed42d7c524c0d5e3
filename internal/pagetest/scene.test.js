// The gestures on the 3D picture, and how its names are cut.
import assert from "node:assert/strict";
import { test } from "node:test";
import { createPointers, keyMessage } from "../../public/scene/input.js";
import { clip } from "../../public/scene/lettering.js";

test("keys turn, move and zoom", () => {
  for (const [name, key, shiftKey, want] of /** @type {[string, string, boolean, any][]} */ ([
    ["an arrow turns", "ArrowLeft", false, { type: "orbit", yaw: -5, pitch: 0 }],
    ["an arrow up raises the viewer", "ArrowUp", false, { type: "orbit", yaw: 0, pitch: 5 }],
    ["with Shift it moves the view to the left, the picture to the right", "ArrowLeft", true, { type: "pan", dx: 24, dy: 0 }],
    ["with Shift it moves the view down, the picture up", "ArrowDown", true, { type: "pan", dx: 0, dy: -24 }],
    ["plus zooms, which takes Shift on many keyboards", "+", true, { type: "zoom", factor: 1.15 }],
    ["minus zooms out", "-", false, { type: "zoom", factor: 1 / 1.15 }],
    ["anything else is the page's", "Tab", false, null],
  ])) {
    const got = keyMessage({ key, shiftKey });
    for (const field of ["yaw", "pitch", "dx", "dy"]) if (got?.[field] === 0) got[field] = 0; // no negative zero
    assert.deepEqual(got, want, name);
  }
});

test("one pointer turns or moves, two move and zoom", () => {
  const mouse = createPointers();
  mouse.put(1, 100, 100, { pans: false, finger: false });
  assert.deepEqual(mouse.move(1, 110, 120), [{ type: "orbit", yaw: -3.5, pitch: 7 }]);
  assert.deepEqual(mouse.move(2, 0, 0), [], "a pointer that was not put down");
  mouse.lift(1);
  assert.deepEqual(mouse.move(1, 0, 0), [], "a pointer that was lifted");

  const shifted = createPointers();
  shifted.put(1, 100, 100, { pans: true, finger: false });
  assert.deepEqual(shifted.move(1, 90, 105), [{ type: "pan", dx: -10, dy: 5 }]);

  const fingers = createPointers();
  fingers.put(1, 100, 100, { pans: false, finger: true });
  const [{ yaw, pitch }] = fingers.move(1, 110, 140);
  assert.deepEqual([yaw, pitch], [-3.5, 0], "up and down is the page's to scroll");
  fingers.put(2, 210, 140, { pans: false, finger: true });
  assert.deepEqual(fingers.move(2, 310, 140), [{ type: "pan", dx: 50, dy: 0 }, { type: "zoom", factor: 2 }]);
  fingers.put(3, 0, 0, { pans: false, finger: true });
  assert.equal(fingers.count, 2, "a third finger is left out");
});

test("a long name ends in an ellipsis and fits", () => {
  const widthOf = (text) => [...text].length;
  assert.equal(clip("screen", 6, widthOf), "screen");
  assert.equal(clip("rafters, left", 9, widthOf), "rafters,…");
  assert.equal(clip("boxed beam over the bench", 7, widthOf), "boxed…", "no blank before the ellipsis");
  assert.equal(clip("🏌🏌🏌🏌", 3, widthOf), "🏌🏌…", "no letter is cut in two");
  assert.equal(clip("wide", 0, widthOf), "w…", "one letter is left");
});
