// A moving picture (APNG) out of still PNGs of one size: their compressed pixels
// are kept as they are and only put into frames. Format: Portable Network Graphics
// Specification, third edition (W3C 2025), sections 5.3 and 11.3.5.

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  for (let k = 0; k < 8; k++) n = n & 1 ? 0xedb88320 ^ (n >>> 1) : n >>> 1;
  return n >>> 0;
});

function crc(bytes) {
  let c = 0xffffffff;
  for (const b of bytes) c = CRC_TABLE[(c ^ b) & 255] ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}

/** A chunk of a type with its data, length and check sum. */
function chunk(type, data) {
  const out = new Uint8Array(12 + data.length);
  const view = new DataView(out.buffer);
  view.setUint32(0, data.length);
  for (let i = 0; i < 4; i++) out[4 + i] = type.charCodeAt(i);
  out.set(data, 8);
  view.setUint32(8 + data.length, crc(out.subarray(4, 8 + data.length)));
  return out;
}

/** The chunks of a PNG: [{type, data}]. */
function chunks(png) {
  if (SIGNATURE.some((b, i) => png[i] !== b)) throw new Error("not a PNG");
  const view = new DataView(png.buffer, png.byteOffset, png.byteLength);
  const found = [];
  for (let at = SIGNATURE.length; at < png.length;) {
    const length = view.getUint32(at);
    const type = String.fromCharCode(...png.subarray(at + 4, at + 8));
    found.push({ type, data: png.subarray(at + 8, at + 8 + length) });
    at += 12 + length;
  }
  return found;
}

/** Big-endian numbers of 4 and 2 bytes. */
function words(...parts) {
  const out = [];
  for (const [value, size] of parts) for (let i = size - 1; i >= 0; i--) out.push((value >>> (8 * i)) & 255);
  return Uint8Array.from(out);
}

/**
 * The frames as one picture that loops for ever.
 * @param {{png: Uint8Array, seconds: number}[]} frames all of one size; seconds is how long each is shown
 * @returns {Blob}
 */
export function animated(frames) {
  const head = chunks(frames[0].png).find(({ type }) => type === "IHDR").data;
  const size = [...head.subarray(0, 8)].join();
  const out = [Uint8Array.from(SIGNATURE), chunk("IHDR", head), chunk("acTL", words([frames.length, 4], [0, 4]))];
  let serial = 0;
  for (const [i, { png, seconds }] of frames.entries()) {
    const own = chunks(png);
    const ihdr = own.find(({ type }) => type === "IHDR").data;
    if ([...ihdr.subarray(0, 8)].join() !== size) throw new Error(`picture ${i + 1} is of another size`);
    const view = new DataView(ihdr.buffer, ihdr.byteOffset);
    const [wide, high] = [view.getUint32(0), view.getUint32(4)];
    // Nothing is kept of the frame before: each is whole.
    out.push(chunk("fcTL", words([serial++, 4], [wide, 4], [high, 4], [0, 4], [0, 4], [Math.round(seconds * 1000), 2], [1000, 2], [0, 1], [0, 1])));
    for (const { type, data } of own) {
      if (type !== "IDAT") continue;
      if (i === 0) out.push(chunk("IDAT", data));
      else out.push(chunk("fdAT", Uint8Array.from([...words([serial++, 4]), ...data])));
    }
  }
  out.push(chunk("IEND", new Uint8Array()));
  return new Blob(out, { type: "image/apng" });
}
