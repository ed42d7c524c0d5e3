// How to measure a room and a person, in drawings of our own.
import { $$, h, s, styles } from "../app/dom.js";

/** Opens the dialog. */
export async function openMeasuring() {
  if ($$("dialog[open]").length) return;
  await styles("help/help.css");
  const dialog = h("dialog", { class: "dialog measuring", "aria-labelledby": "measuring-heading" },
    h("h2", { id: "measuring-heading" }, "How to measure"),
    h("div", { class: "measuring-board" },
      step("The room", room(), "Floor to the lowest thing a club could reach, not to the middle of the ceiling: measure under every beam, track and lamp. Width and length at the height of your hands, wall to wall, in three places; type the least."),
      step("Height and span", person(), "Without shoes, back to a wall. Span: arms straight out, from fingertip to fingertip. A span longer than the height is common in tall people, and it matters."),
      step("Ball to toes", address(), "Take your driver, address a ball, and have somebody measure along the floor from the ball to the line of your toes. To the hands: hang a string from them and measure level to the ball.")),
    h("p", { class: "hint" }, "An inch decides: measure twice, and type what you read. Feet and inches, inches, centimetres and metres are all understood."),
    h("form", { method: "dialog" }, h("button", { class: "stamp" }, "Close")));
  dialog.addEventListener("close", () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
}

const step = (heading, drawing, words) => h("section", {}, h("h3", {}, heading), drawing, h("p", {}, words));

const paper = (label, ...children) => s("svg", { class: "measuring-drawing", viewBox: "0 0 240 170", role: "img", "aria-label": label }, ...children);
const line = (d, className = "ln") => s("path", { class: className, d });
const limb = (d, width) => s("g", {}, s("path", { class: "limb-edge", d, "stroke-width": width + 2 }), s("path", { class: "limb", d, "stroke-width": width }));
const head = (x, y, r) => s("circle", { class: "limb-head", cx: x, cy: y, r });

/** A measure along a line, with arrowheads and its name. */
function measure(x0, y0, x1, y1, name, dx = 0, dy = -5, anchor = "middle") {
  const long = Math.hypot(x1 - x0, y1 - y0);
  const [ux, uy] = [(x1 - x0) / long, (y1 - y0) / long];
  const arrow = (x, y, way) => `M${x + way * 7 * ux - 3 * uy} ${y + way * 7 * uy + 3 * ux}L${x} ${y}L${x + way * 7 * ux + 3 * uy} ${y + way * 7 * uy - 3 * ux}`;
  return s("g", {}, line(`M${x0} ${y0}L${x1} ${y1}${arrow(x0, y0, 1)}${arrow(x1, y1, -1)}`, "measure"),
    s("text", { class: "measure-name", x: (x0 + x1) / 2 + dx, y: (y0 + y1) / 2 + dy, "text-anchor": anchor }, name));
}

const room = () => paper("A room from the end: a slope cuts the corner and a beam hangs. The height is measured under the beam.",
  line("M20 150H220V24H70L20 62Z"),
  line("M120 24H140V40H120Z", "ln is-filled"),
  measure(130, 42, 130, 149, "lowest height", 6, 30, "start"),
  measure(21, 110, 219, 110, "width", -52, -5),
  line("M20 62V150", "ln"));

const person = () => paper("A person from the front with both arms straight out: height from floor to crown, span from fingertip to fingertip.",
  line("M10 156H230"),
  limb("M108 92L104 150", 10), limb("M132 92L136 150", 10), limb("M120 56V90", 26),
  limb("M112 52H42", 8), limb("M128 52H198", 8), head(120, 30, 12),
  line("M22 52H42M198 52H218", "hand"),
  measure(22, 70, 218, 70, "span", 70, -4),
  measure(228, 18, 228, 155, "height", -5, 40, "end"));

const address = () => paper("A golfer at address from the side: the ball, the line of the toes, and a string from the hands.",
  line("M10 150H230"),
  limb("M92 100L84 124", 11), limb("M84 124L90 146", 9), limb("M90 147L106 147", 6), limb("M92 98L124 60", 20), head(138, 46, 11),
  limb("M122 64L134 100", 8), line("M134 98L190 147", "club"), s("circle", { class: "ball", cx: 196, cy: 146, r: 4 }),
  line("M134 104V150", "string"),
  measure(110, 158, 196, 158, "ball to toes", -60, 8, "middle"),
  measure(135, 128, 196, 128, "to hands", 40, -4));
