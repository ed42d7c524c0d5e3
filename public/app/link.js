// A plan as the part of the address from "#p=" on: base64 (URL alphabet, no
// padding) of three bytes of checksum and the text of the sparse plan, deflated
// by the browser. internal/link does the same on the command line.

const PREFIX = "#p=";
const SUM = 3; // bytes
const LONGEST = 64 << 10; // characters: far above any plan
const MOST = 200_000; // bytes of text: more than a plan at every limit takes

const DAMAGED = "The link is damaged or cut short: ask for it again, or open the page without it";

/**
 * The link of a plan's text.
 * @param {string} text
 */
export async function pack(text) {
  const plain = new TextEncoder().encode(text);
  const packed = await collect(new Blob([plain]).stream().pipeThrough(new CompressionStream("deflate-raw")), Infinity);
  const bytes = new Uint8Array([...checksum(plain), ...packed]);
  const letters = btoa(Array.from(bytes, (b) => String.fromCharCode(b)).join(""));
  return PREFIX + letters.replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, "");
}

/**
 * The text of a link's plan, or why there is none.
 * @param {string} link
 * @returns {Promise<{text?: string, error?: Wire.Problem}>}
 */
export async function unpack(link) {
  // What stands around or behind an address in a letter is not part of it.
  const [letters] = link.slice(PREFIX.length).replace(/[\s\u200b-\u200f\u2060\ufeff]/g, "").match(/^[\w-]*/);
  if (link === PREFIX) return { error: { message: "The link holds no plan" } };
  if (letters.length > LONGEST) return { error: { message: `The link is too long to hold a plan (${letters.length} characters)` } };
  try {
    const bytes = Uint8Array.from(atob(letters.replace(/-/g, "+").replace(/_/g, "/")), (c) => c.charCodeAt(0));
    const plain = await collect(new Blob([bytes.subarray(SUM)]).stream().pipeThrough(new DecompressionStream("deflate-raw")), MOST);
    if (bytes.length < SUM || checksum(plain).some((b, i) => b !== bytes[i])) throw new Error("another sum");
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(plain) };
  } catch {
    return { error: { message: DAMAGED } };
  }
}

async function collect(stream, most) {
  const parts = [];
  let length = 0;
  for (const reader = stream.getReader(); ;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) {
      await reader.cancel();
      throw new Error("too much");
    }
    parts.push(value);
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
}

/** The low three bytes of 32-bit FNV-1a, the highest first: nothing else would tell a changed letter from another plan. */
function checksum(bytes) {
  let h = 2166136261;
  for (const b of bytes) h = Math.imul(h ^ b, 16777619) >>> 0;
  return [(h >>> 16) & 255, (h >>> 8) & 255, h & 255];
}
