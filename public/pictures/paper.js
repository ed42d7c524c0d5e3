// A flat drawing as a picture: the page's own SVG with its inks written into it,
// since a picture has no style sheet, and the canvases over it.

const INKS = ["fill", "fill-opacity", "fill-rule", "stroke", "stroke-width", "stroke-dasharray", "stroke-linecap", "stroke-linejoin", "opacity", "font-family", "font-size", "font-weight", "font-style", "text-anchor", "visibility", "paint-order", "display"];

const OWN = { opacity: "1", display: "inline" }; // what is not taken over from the element round it, and goes without saying

/** A copy of an SVG that keeps its look without the page. */
function inked(svg) {
  const copy = svg.cloneNode(true);
  const own = [svg, ...svg.querySelectorAll("*")];
  const copies = [copy, ...copy.querySelectorAll("*")];
  for (const [i, el] of own.entries()) {
    const style = getComputedStyle(el);
    const round = getComputedStyle(el.parentElement);
    copies[i].removeAttribute("class");
    for (const name of INKS) {
      const value = style.getPropertyValue(name);
      const said = copies[i].hasAttribute(name); // weaker than the style, and not always the same
      if (i === 0 || said || value !== (OWN[name] ?? round.getPropertyValue(name))) copies[i].setAttribute(name, value);
    }
  }
  return copy;
}

/** A drawing of the page as the text of a file that is width by height px. */
export function drawingText(svg, width, height) {
  const copy = inked(svg);
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  copy.setAttribute("width", String(width));
  copy.setAttribute("height", String(height));
  return new XMLSerializer().serializeToString(copy);
}

async function imageOf(svg, width, height) {
  const url = URL.createObjectURL(new Blob([drawingText(svg, width, height)], { type: "image/svg+xml" }));
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    return image;
  } finally {
    URL.revokeObjectURL(url);
  }
}

/**
 * A drawing that lies in layers, SVGs and canvases, as a PNG with the sharpness of
 * its canvases.
 * @param {HTMLElement} paper
 */
export async function shootPaper(paper) {
  const canvases = [...paper.querySelectorAll("canvas")];
  const { width, height } = canvases[0];
  const sheet = document.createElement("canvas");
  Object.assign(sheet, { width, height });
  const ctx = sheet.getContext("2d");
  ctx.fillStyle = getComputedStyle(document.documentElement).getPropertyValue("--paper");
  ctx.fillRect(0, 0, width, height);
  for (const layer of paper.children) {
    ctx.globalAlpha = Number(getComputedStyle(layer).opacity);
    ctx.drawImage(layer instanceof HTMLCanvasElement ? layer : await imageOf(layer, width, height), 0, 0);
  }
  const blob = await new Promise((done) => sheet.toBlob(done, "image/png"));
  return { png: new Uint8Array(await blob.arrayBuffer()), width, height };
}
