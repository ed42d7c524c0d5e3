// The room on its sheet: a plan to start with, and walls to drag. Fetched once the
// first verdict stands.
import { h } from "../app/dom.js";
import { createMine } from "./mine.js";
import { createWalls } from "./walls.js";

export function createRoom(/** @type {Shared} */ shared) {
  document.head.append(h("link", { rel: "stylesheet", href: "room/room.css" }));
  const { state, solver } = shared;
  createMine(shared);
  createWalls(state, async (metres) => {
    const reply = await solver.latest("wall", { kind: "length", text: `${metres.toFixed(4)} m`, units: state.good.units });
    return reply?.label ?? null;
  });
}
