// What each card asks for. Paths are those of the plan document; makers give a
// new row its first values (metres), which the solver checks like any other.
import { hints } from "../app/glossary.js";

const length = (label, path, more = {}) => ({ kind: "length", label, path, hint: hints[path], ...more });
const text = (label, path) => ({ kind: "text", label, path });
const number = (label, path, unit, more = {}) => ({ kind: "number", label, path, unit, hint: hints[path], ...more });
const choice = (label, path, choices) => ({ kind: "choice", label, path, choices, hint: hints[path] });

/** A speed, a temperature or an altitude: form names its units for the solver. */
const quantity = (label, path, form, more = {}) => length(label, path, { form, ...more });

/** The six faces of a box: where it starts and ends along each axis. */
const boxFields = [
  length("Starts, from the back wall", "min[0]"),
  length("Ends, from the back wall", "max[0]"),
  length("Starts, from the right wall", "min[1]"),
  length("Ends, from the right wall", "max[1]"),
  length("Underside, above the floor", "min[2]"),
  length("Top, above the floor", "max[2]"),
];

const WALLS = [["left", "left wall"], ["right", "right wall"], ["front", "front wall"], ["back", "back wall"]];

/** A name not yet taken in the list: "tee 2", "tee 3"… */
function freshName(list, stem) {
  const taken = new Set((list ?? []).map((item) => item.name));
  if (!taken.has(stem)) return stem;
  let n = 2;
  while (taken.has(`${stem} ${n}`)) n++;
  return `${stem} ${n}`;
}

export const cards = [
  {
    id: "room", title: "Room", open: true,
    fields: [
      text("Name of this plan", "title"),
      length("Room length, back wall to front wall", "room.length"),
      length("Room width", "room.width"),
      length("Ceiling height", "room.height"),
      length("Clearance to call it clear", "margin", { form: "short" }),
    ],
    lists: [
      {
        path: "room.slopes", title: "Slopes", one: "slope",
        make: (plan) => ({ name: freshName(plan.room.slopes, "slope"), wall: "left", kneeHeight: 2.1, run: 0.9 }),
        fields: [text("Name", "name"), choice("Comes down at", "wall", WALLS), length("Height at the wall", "kneeHeight"), length("Reaches into the room", "run")],
      },
      {
        path: "room.solids", title: "Beams, ducts, columns", one: "beam or duct",
        make: (plan) => ({ name: freshName(plan.room.solids, "beam"), min: [0, 0, plan.room.height - 0.2], max: [0.2, plan.room.width, plan.room.height] }),
        fields: [text("Name", "name"), ...boxFields],
      },
    ],
  },
  {
    id: "players", title: "Players", open: true, lists: [
      {
        path: "players", title: "Players", one: "player", bare: true, duplicate: true,
        make: (plan) => ({ name: freshName(plan.players, "Player"), height: 1.8, hand: "right" }),
        fields: [
          text("Name", "name"), length("Height", "height"),
          choice("Hand", "hand", [["right", "right-handed"], ["left", "left-handed"]]),
          choice("Spread of shots", "skill", [["steady", "steady"], ["average", "average"], ["wild", "wild"]]),
        ],
        more: {
          title: "Build and swing",
          fields: [
            length("Arm span", "span", { optional: true }),
            length("Shoulder to grip", "arm", { optional: true }),
            length("Shoe sole", "shoe", { optional: true }),
            choice("Turn", "turn", [["compact", "compact"], ["full", "full"], ["long", "long"]]),
            choice("Plane", "plane", [["upright", "upright"], ["neutral", "neutral"], ["flat", "flat"]]),
            choice("Follow-through", "follow", [["held", "held off"], ["full", "full"], ["loose", "loose"]]),
            choice("Proportions", "sex", [["", "anyone"], ["man", "man"], ["woman", "woman"]]),
          ],
        },
        members: [
          { path: "clubs", title: "Swings these clubs", from: "clubs" },
          { path: "tees", title: "Plays from these tees", from: "tees" },
        ],
      },
    ],
  },
  {
    id: "clubs", title: "Clubs", lists: [
      {
        path: "clubs", title: "Clubs", one: "club", bare: true, duplicate: true,
        make: (plan) => ({ name: freshName(plan.clubs, "club"), kind: "iron" }),
        fields: [
          text("Name", "name"),
          choice("Kind", "kind", [["driver", "driver"], ["wood", "fairway wood"], ["hybrid", "hybrid"], ["iron", "iron"], ["wedge", "wedge"]]),
          length("Club length", "length", { optional: true, form: "short" }),
          number("Lie", "lie", "degrees", { optional: true }),
          number("Loft", "loft", "degrees", { optional: true }),
          quantity("Ball speed", "ball.speed", "speed", { optional: true }),
          number("Launch angle", "ball.launch", "degrees"),
          number("Backspin", "ball.spin", "rev/min"),
        ],
      },
    ],
  },
  {
    id: "air", title: "Air", fields: [
      quantity("Temperature in the room", "air.temperature", "temperature"),
      quantity("Height above the sea", "air.altitude", "altitude"),
    ],
  },
  {
    id: "tees", title: "Tees", lists: [
      {
        path: "tees", title: "Tees", one: "tee", bare: true, duplicate: true,
        make: (plan) => ({ name: freshName(plan.tees, "tee"), x: plan.tees[0]?.x ?? plan.room.length / 2, y: plan.tees[0]?.y ?? plan.room.width / 2 }),
        fields: [text("Name", "name"), length("From the back wall", "x"), length("From the right wall", "y")],
      },
    ],
  },
  {
    id: "floor", title: "Floor and mat",
    lists: [
      {
        path: "floor.layers", title: "Floor layers", one: "layer",
        make: (plan) => ({ name: freshName(plan.floor?.layers, "layer"), thickness: 0.01 }),
        fields: [text("Name", "name"), length("Thickness", "thickness")],
      },
    ],
    parts: [
      {
        path: "floor.mat", title: "Hitting mat", make: () => ({ thickness: 0.04, length: 1.5, width: 1.5, inset: true }),
        fields: [
          length("Mat thickness", "thickness"), length("Mat length", "length", { optional: true, hint: "" }), length("Mat width", "width", { optional: true }),
          { kind: "check", label: "Set in, flush with the floor around it", path: "inset" },
        ],
      },
    ],
  },
  {
    id: "screen", title: "Screen", parts: [
      {
        path: "screen", title: "Impact screen",
        make: (plan) => ({ x: plan.room.length - 0.4, centre: plan.room.width / 2, bottom: 0.05, width: Math.min(3, plan.room.width), height: Math.min(2, plan.room.height - 0.1) }),
        fields: [
          length("Screen, from the back wall", "x", { hint: "" }), length("Middle, from the right wall", "centre"),
          length("Bottom edge, above the floor", "bottom"), length("Screen width", "width"), length("Screen height", "height"),
          length("Side returns, depth", "sideReturn", { optional: true }), length("Top return, depth", "topReturn", { optional: true }),
        ],
      },
    ],
  },
  {
    id: "hung", title: "Hung things", lists: [
      {
        path: "hung", title: "Hung things", one: "hung thing", bare: true, duplicate: true,
        make: (plan) => ({
          name: freshName(plan.hung, "lamp"),
          min: [plan.room.length / 2 - 0.15, plan.room.width / 2 - 0.15, plan.room.height - 0.25],
          max: [plan.room.length / 2 + 0.15, plan.room.width / 2 + 0.15, plan.room.height],
        }),
        fields: [text("Name", "name"), ...boxFields],
      },
    ],
  },
  {
    id: "seats", title: "Seats", lists: [
      {
        path: "seats", title: "Seats", one: "seat", bare: true, duplicate: true,
        make: (plan) => ({ name: freshName(plan.seats, "seat"), x: 0.6, y: 0.6 }),
        fields: [text("Name", "name"), length("From the back wall", "x", { hint: "To its middle." }), length("From the right wall", "y", { hint: "" }), length("Half its width", "radius", { optional: true })],
      },
    ],
  },
  {
    id: "sensor", title: "Ball sensor", parts: [
      {
        path: "sensor", title: "Floor strip that a ball sensor reads",
        make: (plan) => ({ name: "sensor", min: [plan.tees[0].x - 0.15, plan.tees[0].y - 0.15], max: [plan.tees[0].x + 0.15, plan.tees[0].y + 0.15] }),
        fields: [text("Sensor name", "name"), ...boxFields.slice(0, 4)],
      },
    ],
  },
];
