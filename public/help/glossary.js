// What the words of the trade mean: a list of them all, and the meaning of one.
import { h } from "../app/dom.js";

const words = [
  ["Clearance", "The least distance between a surface and any part of the golfer or club, anywhere in the swing, worked out between the frames as well as on them. Below nothing means the club would be past the surface."],
  ["Loosest swing", "Nobody swings twice the same way. Each player is a family of swings; the loosest is the one that comes nearest."],
  ["Tight", "It passes, by less than the clearance you asked for."],
  ["Address", "The stance before the swing, club soled behind the ball."],
  ["Follow-through", "After the ball, the club coming up and round to the finish. It is where most walls are hit."],
  ["Lie", "The angle between shaft and ground when the club sits flat."],
  ["Loft", "How far the face leans back."],
  ["Launch angle", "How steeply the ball leaves, above level."],
  ["Backspin", "How fast the ball turns backwards on its way: it lifts the flight."],
  ["Left and right wall", "As you stand in the room facing the target. A right-hander's back is towards the left wall."],
];

const IN_LABELS = { "Left and right wall": /\b(left|right) wall\b/i }; // words that labels have in another form

/** The meaning of the first of these words that stands in a label, "" without one. */
export function meaningIn(label) {
  const found = words.find(([word]) => (IN_LABELS[word] ?? new RegExp(`\\b${word}\\b`, "i")).test(label));
  return found ? found[1] : "";
}

export function fillGlossary(dl) {
  dl.replaceChildren(...words.flatMap(([word, meaning]) => [h("dt", {}, word), h("dd", {}, meaning)]));
}
