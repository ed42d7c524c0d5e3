// The map of where to stand: the best places, and the tee to put there.
import { h, icon } from "../app/dom.js";
import { twoTees } from "../app/edits.js";
import { createTee } from "./tee.js";
import { pin } from "./layer.js";

export function createStand(/** @type {State} */ state, ctx) {
  const tee = createTee(state, ctx);
  const buttons = h("div", { class: "map-buttons" });
  const more = h("div", {});

  const placeButton = (place, words) => h("button", { type: "button", class: "place", onclick: () => tee.to(place.x, place.y) },
    icon(place.verdict), " ", words, h("span", { class: "quiet" }, place.text));

  return {
    key: [["strike", "touches something"], ["tight", "passes, but tight"], ["line", "margin and comfort"], ["barred", "no place for a tee"]],
    parts: [...tee.parts, buttons, more],
    request: () => ({ tee: tee.name }),
    handles: tee.handles,

    /** @param {Wire.StandAnswer} answer @param {{player: string}} whose */
    show({ best, players, hands, sharing, limits, reading }, whose) {
      tee.show(reading);
      buttons.replaceChildren(
        best && !whose.player ? placeButton(best, best.verdict === "strikes" ? `${best.lead}: put the tee here` : "Put the tee here for everybody") : "",
        ...players.map((one) => placeButton(one, one.lead)),
        hands.length > 1 ? h("button", { type: "button", onclick: () => state.edit((plan) => twoTees(plan, hands)) }, "Lay two tees, one for each hand") : "");
      more.replaceChildren(
        sharing ? h("p", {}, sharing) : "",
        h("details", {}, h("summary", {}, "What else keeps a tee off the floor"), h("ul", { class: "detail" }, ...limits.map((line) => h("li", {}, line)))));
    },

    /** @param {Wire.StandAnswer | undefined} answer */
    over(map, answer) {
      const best = answer?.best;
      return [...(best ? [pin("best", best.verdict === "strikes" ? "least bad" : "best", best.x, best.y, map)] : []), ...tee.handles(map)];
    },
  };
}
