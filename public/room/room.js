// The room on its sheet: a plan to start with, and walls to drag. Fetched once the
// first verdict stands.
import { styles } from "../app/dom.js";
import { createMine } from "./mine.js";
import { createWalls } from "./walls.js";

export function createRoom(/** @type {Shared} */ shared) {
  styles("room/room.css").catch(() => {}); // plainer without
  const { state, solver } = shared;
  createMine(shared);
  createWalls(state, async (metres) => {
    const reply = await solver.latest("wall", { kind: "length", text: `${metres.toFixed(4)} m`, units: state.good.units });
    return reply?.label ?? null;
  });
}
