// The screen with its returns folded out flat, as on a cutting plan, and where
// the ordinary balls land on it. The solver counts; here circles are drawn.
import { $, s, setText } from "../app/dom.js";

const MARGIN = 14; // px of paper
const WIDEST = 640; // px

export function drawFace(figure, /** @type {Wire.BallAnswer} */ { screen, outcome, summary }) {
  const holder = $(".drawing", figure);
  if (!screen) {
    holder.replaceChildren();
    return;
  }
  const { width, height, sideReturn = 0, topReturn = 0 } = screen;
  const px = Math.min(holder.clientWidth || 320, WIDEST);
  const scale = (px - 2 * MARGIN) / (width + 2 * sideReturn);
  const x0 = MARGIN + sideReturn * scale;
  const y0 = MARGIN + topReturn * scale;
  const [w, t] = [width * scale, height * scale];
  const tall = y0 + t + MARGIN + 16;

  const { heat } = outcome;
  const most = Math.max(...heat.counts, 1);
  const cell = Math.min(w / heat.cols, t / heat.rows);
  const spots = heat.counts.map((n, i) => (n === 0 ? null : s("circle", {
    class: "heat",
    cx: (x0 + w * (1 - (i % heat.cols + 0.5) / heat.cols)).toFixed(1),
    cy: (y0 + t * (1 - (Math.floor(i / heat.cols) + 0.5) / heat.rows)).toFixed(1),
    r: (Math.max(0.62 * cell * Math.sqrt(n / most), 1.2)).toFixed(1),
  })));
  const struck = screen.struck && [x0 + (screen.left - screen.struck[0]) * scale, y0 + t - (screen.struck[1] - screen.bottom) * scale];

  const share = outcome.shares.find((one) => one.kind === "screen");
  const words = `Screen ${screen.label}. ${share ? `${share.count} of ${outcome.balls} ordinary balls land on it; the larger a spot, the more of them.` : "No ordinary ball lands on it."}`;
  setText($(".alt", figure), words);
  holder.replaceChildren(s("svg", { viewBox: `0 0 ${px} ${tall.toFixed(1)}`, role: "img", "aria-label": `${words} ${summary}`, class: "view face-view" },
    sideReturn > 0 ? flap(MARGIN, y0, sideReturn * scale, t, "left return", true) : null,
    sideReturn > 0 ? flap(x0 + w, y0, sideReturn * scale, t, "right return", true) : null,
    topReturn > 0 ? flap(x0, MARGIN, w, topReturn * scale, "top return", false) : null,
    s("rect", { class: "face-screen", x: x0, y: y0, width: w, height: t }),
    ...spots,
    struck ? s("g", { class: "struck" }, s("circle", { cx: struck[0], cy: struck[1], r: 8 }), s("path", { d: `M${struck[0] - 13} ${struck[1]}h9M${struck[0] + 4} ${struck[1]}h9M${struck[0]} ${struck[1] - 13}v9M${struck[0]} ${struck[1] + 4}v9` })) : null,
    s("text", { class: "place-name", x: x0 + w / 2, y: tall - 8, "text-anchor": "middle" }, `lower edge, ${screen.label}`)));
}

/** A return folded flat, hatched lightly, with its name along it. */
function flap(x, y, w, t, name, upright) {
  const [cx, cy] = [x + w / 2, y + t / 2];
  return s("g", {}, s("rect", { class: "face-flap", x, y, width: w, height: t }),
    s("text", { class: "place-name", x: cx, y: cy + 4, "text-anchor": "middle", transform: upright ? `rotate(-90 ${cx} ${cy})` : null }, name));
}
