import assert from "node:assert/strict";
import { test } from "node:test";
import { crc32, deflateSync, inflateSync } from "node:zlib";
import { animated } from "../../public/pictures/apng.js";

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const out = Buffer.alloc(4);
  out.writeUInt32BE(data.length);
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([out, body, sum]);
}

/** A grey picture of one shade, its pixels in two chunks as encoders write them. */
function png(wide, high, shade) {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(wide, 0);
  head.writeUInt32BE(high, 4);
  head[8] = 8;
  const pixels = deflateSync(Buffer.concat(Array.from({ length: high }, () => Buffer.from([0, ...Array(wide).fill(shade)]))));
  const half = pixels.length >> 1;
  return new Uint8Array(Buffer.concat([SIGNATURE, chunk("IHDR", head), chunk("IDAT", pixels.subarray(0, half)), chunk("IDAT", pixels.subarray(half)), chunk("IEND", Buffer.alloc(0))]));
}

/** Every chunk, its sum checked by zlib's own. */
function read(bytes) {
  const found = [];
  for (let at = 8; at < bytes.length;) {
    const length = bytes.readUInt32BE(at);
    const body = bytes.subarray(at + 4, at + 8 + length);
    assert.equal(bytes.readUInt32BE(at + 8 + length), crc32(body), `sum of the chunk at ${at}`);
    found.push({ type: body.subarray(0, 4).toString("latin1"), data: body.subarray(4) });
    at += 12 + length;
  }
  return found;
}

test("frames keep their pixels, their times and one count", async () => {
  const shades = [10, 200, 90];
  const blob = animated(shades.map((shade, i) => ({ png: png(3, 2, shade), seconds: 0.05 * (i + 1) })));
  const found = read(Buffer.from(await blob.arrayBuffer()));
  assert.deepEqual(found.map(({ type }) => type), ["IHDR", "acTL", "fcTL", "IDAT", "IDAT", "fcTL", "fdAT", "fdAT", "fcTL", "fdAT", "fdAT", "IEND"]);
  assert.equal(found[1].data.readUInt32BE(0), 3, "frames");
  assert.equal(found[1].data.readUInt32BE(4), 0, "loops for ever");
  const counted = found.filter(({ type }) => type === "fcTL" || type === "fdAT").map(({ data }) => data.readUInt32BE(0));
  assert.deepEqual(counted, counted.map((_, i) => i));
  const delays = found.filter(({ type }) => type === "fcTL").map(({ data }) => data.readUInt16BE(20) / data.readUInt16BE(22));
  assert.deepEqual(delays, [0.05, 0.1, 0.15]);
  const last = inflateSync(Buffer.concat(found.slice(9, 11).map(({ data }) => data.subarray(4))));
  assert.deepEqual([...last], [0, 90, 90, 90, 0, 90, 90, 90]);
});

test("pictures of two sizes are refused", () => {
  assert.throws(() => animated([{ png: png(3, 2, 1), seconds: 1 }, { png: png(2, 2, 1), seconds: 1 }]), /picture 2 is of another size/);
});

test("what is no PNG is refused", () => {
  assert.throws(() => animated([{ png: new Uint8Array(40), seconds: 1 }]), /not a PNG/);
});
