// The glossary at the foot of the page.
import { h } from "./dom.js";

const words = [
  ["Clearance", "The least distance between a surface and any part of the golfer or club, anywhere in the swing, worked out between the frames as well as on them. Below nothing means the club would be past the surface."],
  ["Loosest swing", "Nobody swings twice the same way. Each player is a family of swings; the loosest is the one that comes nearest."],
  ["Tight", "It passes, by less than the clearance you asked for."],
  ["Address", "The stance before the swing, club soled behind the ball."],
  ["Follow-through", "After the ball, the club coming up and round to the finish. It is where most walls are hit."],
  ["Lie", "The angle between shaft and ground when the club sits flat."],
  ["Loft", "How far the face leans back."],
  ["Left and right wall", "As you stand in the room facing the target. A right-hander's back is towards the left wall."],
];

export function fillGlossary(dl) {
  dl.replaceChildren(...words.flatMap(([word, meaning]) => [h("dt", {}, word), h("dd", {}, meaning)]));
}
