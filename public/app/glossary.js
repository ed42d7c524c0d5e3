// Words for the page: hints beside fields (keyed by the field's path within its
// card) and the glossary at the foot.
import { h } from "./dom.js";

export const hints = {
  margin: "Anything nearer than this is called tight.",
  "room.height": "Bare floor to ceiling; layers and mat are taken off below.",
  kneeHeight: "Where the slope meets the wall, above the bare floor.",
  run: "Level distance from the wall to where the ceiling is flat.",
  span: "Fingertip to fingertip; blank: guessed from height.",
  arm: "Top of the shoulder to the middle of the grip; blank: guessed.",
  shoe: "Adds to the height of the shoulders.",
  turn: "How far the shoulders go back.",
  plane: "How steep the swing is.",
  follow: "How wide and loose the finish is.",
  length: "Blank: usual for the kind.",
  lie: "blank: usual for the kind",
  loft: "blank: usual for the kind",
  skill: "How far the ball strays from shot to shot.",
  "ball.speed": "Blank or usual: each player's own swing sets it. Measured: type it.",
  "ball.launch": "above level, struck well",
  "air.altitude": "Thin air slows a ball less.",
  x: "To the ball.",
  y: "To the ball; the right wall as you face the target.",
};

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
