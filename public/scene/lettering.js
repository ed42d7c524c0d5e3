// Lettering for the scene, drawn with the browser's own fonts into one strip of
// coverage that the program cuts up. Nothing here knows where it goes.

const FONT = '"Gill Sans", "Gill Sans MT", "Avenir Next", Optima, Candara, "Liberation Sans", "Segoe UI", sans-serif';
const WIDEST = 2048;
const WHITE = 8; // side of the covered square at the top left, with room to spare

/**
 * letter([[text, bold, most], …], pixels) → {width, height, alpha, places}: a line of
 * the given height for each text, coverage as bytes, and left, top, width,
 * height of each line. A text that would be wider than most of its heights ends in an
 * ellipsis.
 */
export function letter(texts, pixels) {
  const line = Math.ceil(pixels);
  const size = line * 0.76;
  const canvas = document.createElement("canvas");
  const pen = canvas.getContext("2d", { willReadFrequently: true });
  const font = (bold) => `${bold ? "bold " : ""}${size}px ${FONT}`;
  const places = new Float64Array(4 * texts.length);
  let x = WHITE + 2;
  let y = 0;
  let width = x;
  const lines = texts.map(([text, bold, most]) => {
    pen.font = font(bold);
    return clip(text, Math.min(most * line, WIDEST - WHITE - 4) - 2, (t) => pen.measureText(t).width);
  });
  texts.forEach(([, bold], i) => {
    pen.font = font(bold);
    const w = Math.ceil(pen.measureText(lines[i]).width) + 2;
    if (x + w > WIDEST) {
      x = WHITE + 2;
      y += line + 2;
    }
    places.set([x, y, w, line], 4 * i);
    x += w + 2;
    width = Math.max(width, x);
  });
  canvas.width = width;
  canvas.height = Math.max(WHITE, y + line + 2);
  pen.fillStyle = "#fff";
  pen.fillRect(0, 0, WHITE, WHITE);
  pen.textBaseline = "middle";
  texts.forEach(([, bold], i) => {
    pen.font = font(bold);
    const [left, top, w] = places.subarray(4 * i, 4 * i + 3);
    pen.fillText(lines[i], left + 1, top + line / 2, w - 1);
  });
  const rgba = pen.getImageData(0, 0, canvas.width, canvas.height).data;
  const alpha = new Uint8Array(rgba.length / 4);
  for (let i = 0; i < alpha.length; i++) alpha[i] = rgba[4 * i + 3];
  return { width: canvas.width, height: canvas.height, alpha, places };
}

/** The text, or as much of its beginning as fits with an ellipsis; widthOf measures. */
export function clip(text, most, widthOf) {
  if (widthOf(text) <= most) return text;
  const letters = [...text];
  while (letters.length > 1 && widthOf(`${letters.join("").trimEnd()}…`) > most) letters.pop();
  return `${letters.join("").trimEnd()}…`;
}
