import { test } from "node:test";
import assert from "node:assert/strict";
import { meaningIn } from "../../public/help/glossary.js";

test("a word in a label has its meaning, whole words only", () => {
  assert.match(meaningIn("Lie"), /angle between shaft and ground/);
  assert.match(meaningIn("Loft"), /face leans back/);
  assert.match(meaningIn("Clearance to call it clear"), /least distance/);
  assert.match(meaningIn("Underside, from the right wall"), /facing the target/);
  assert.equal(meaningIn("Believe"), "");
  assert.equal(meaningIn("Lofty"), "");
  assert.equal(meaningIn("From the back wall"), "");
  assert.equal(meaningIn("Height"), "");
});
