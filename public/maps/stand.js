// The map of where to stand: the best places, and the tee to put there.
import { h, icon, setText } from "../app/dom.js";
import { twoTees } from "../app/edits.js";
import { pin } from "./layer.js";

export function createStand(/** @type {State} */ state, { tee }) {
  const buttons = h("div", { class: "map-buttons" });
  const sharing = h("p", {});
  const alone = fold("For one player alone", h("div", { class: "map-buttons" }));
  const limits = fold("What else keeps a tee off the floor", h("ul", { class: "detail" }));

  const placeButton = (place, words, more = "") => h("button", { type: "button", class: "place", onclick: () => tee.to(place.x, place.y) },
    icon(place.verdict), " ", words, h("span", { class: "quiet" }, more));

  return {
    key: [["strike", "touches something"], ["tight", "passes, but tight"], ["line", "margin and comfort"], ["barred", "no place for a tee"]],
    parts: [...tee.parts, buttons, sharing, alone.el, limits.el],
    request: () => ({ tee: tee.name }),

    /** @param {Wire.StandAnswer} answer @param {{player: string}} whose */
    show({ best, players, hands, sharing: shared, limits: lines, reading }, whose) {
      tee.show(reading);
      const ofEach = players.map((one) => placeButton(one, one.lead, one.text));
      buttons.replaceChildren(
        // Where it is and what is nearest there stands in the sentence above.
        ...(best && !whose.player ? [placeButton(best, best.verdict === "strikes" ? `${best.lead}, still strikes: put the tee there` : "Put the tee here for everybody")] : []),
        ...(whose.player ? ofEach : []),
        ...(hands.length > 1 ? [h("button", { type: "button", onclick: () => state.edit((plan) => twoTees(plan, hands)) }, "Lay two tees, one for each hand")] : []));
      setText(sharing, shared ?? "");
      alone.fill(whose.player ? [] : ofEach);
      limits.fill(lines.map((line) => h("li", {}, line)));
    },

    /** @param {Wire.StandAnswer | undefined} answer */
    over(map, answer) {
      const best = answer?.best;
      return best ? [pin("best", best.verdict === "strikes" ? "least bad" : "best", best.x, best.y, map)] : [];
    },
  };
}

/** A list that is read by who wants to; without anything in it, it is not there. */
function fold(title, list) {
  const el = h("details", {}, h("summary", {}, title), list);
  return {
    el,
    fill(items) {
      list.replaceChildren(...items);
      el.hidden = items.length === 0;
    },
  };
}
