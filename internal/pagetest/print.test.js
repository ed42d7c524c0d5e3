import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import decodeQR from "qr/decode.js";
import { encodeQR } from "../../public/vendor/qr.js";
import { SCALES, scaleFor } from "../../public/print/scale.js";

test("the largest scale that fits is taken, and each has its name", () => {
  assert.deepEqual(scaleFor("imperial", [6.4, 5.5, 3.2]), [64, "3/16 in to the foot"]);
  assert.deepEqual(scaleFor("metric", [6.4, 5.5, 3.2]), [75, ""]);
  assert.equal(scaleFor("metric", [3, 2.5, 2.4])[0], 50);
  assert.equal(scaleFor("metric", [30, 20, 6])[0], 200);
  for (const [by, words] of SCALES.imperial) { // the name says the same as the number
    const [whole, part = "1"] = words.split(" in ")[0].split("/");
    assert.equal(12 / (Number(whole) / Number(part)), by, words);
  }
});

test("the code is read back as the link", () => {
  const link = `https://example.org/room/#p=${"aZ09-_".repeat(150)}`;
  const rows = encodeQR(link, "raw", { ecc: "low", border: 4 });
  const px = 4, width = rows.length * px;
  const data = new Uint8ClampedArray(width * width * 4);
  for (let i = 0; i < width * width; i++) data.fill(rows[Math.floor(i / width / px)][Math.floor((i % width) / px)] ? 0 : 255, 4 * i, 4 * i + 3).fill(255, 4 * i + 3, 4 * i + 4);
  assert.equal(decodeQR({ width, height: width, data }), link);
});

test("the library is what its registry has", () => {
  const [, ...ours] = readFileSync("public/vendor/qr.js", "utf8").split("\n");
  assert.equal(ours.join("\n"), readFileSync("node_modules/qr/index.js", "utf8"));
});
