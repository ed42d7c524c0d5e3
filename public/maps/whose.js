// For whom a map is drawn: everybody, or one player, with every club or one.
import { h } from "../app/dom.js";

/** changed() is called when another is chosen. */
export function createWhose(/** @type {State} */ state, changed) {
  const player = h("select", { id: "map-player", onchange: choose });
  const club = h("select", { id: "map-club", onchange: choose });

  function choose() {
    fillClubs();
    changed();
  }

  /** The clubs that the chosen player swings. */
  function fillClubs() {
    const { players, clubs } = state.good;
    const own = players.find(({ name }) => name === player.value)?.clubs ?? [];
    options(club, [["", "every club"], ...clubs.filter(({ name }) => own.length === 0 || own.includes(name)).map(({ name }) => [name, name])]);
  }

  state.onAnswered(({ good: { players } }) => {
    options(player, [["", "everybody"], ...players.map(({ name }) => [name, name])]);
    fillClubs();
  });

  return {
    el: h("div", { class: "map-whose" }, h("label", { for: "map-player" }, "For"), player, h("label", { for: "map-club" }, "with"), club),
    get focus() { return { player: player.value, club: club.value, tee: "" }; },
  };
}

function options(select, list) {
  const now = select.value;
  select.replaceChildren(...list.map(([value, words]) => h("option", { value }, words)));
  select.value = list.some(([value]) => value === now) ? now : list[0][0];
}
