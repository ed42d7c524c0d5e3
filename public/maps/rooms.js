// Rooms to start from, instead of the demonstration's. The people, their clubs
// and the units stay.
import { $, h } from "../app/dom.js";

/** Fills the choice once the solver has sent the rooms. */
export async function offerRooms(/** @type {State} */ state, /** @type {Solver} */ solver) {
  const { rooms } = await solver.ask({ kind: "rooms" });
  if (!rooms) return;
  const select = $("#rooms-select");
  select.append(...rooms.map((room, i) => h("option", { value: String(i) }, room.title)));
  $("#rooms").hidden = false;
  select.addEventListener("change", () => {
    const room = rooms[Number(select.value)];
    if (select.value === "" || !room) return;
    select.value = "";
    const { players, clubs, units, margin } = state.good;
    const anywhere = players.map(({ tees, ...player }) => player); // the tees are other ones
    state.open({ ...room, players: anywhere, clubs, units, margin }, `${room.title}, with your players and clubs. Undo returns to your room.`);
  });
}
