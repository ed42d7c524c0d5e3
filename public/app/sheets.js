// The sheets, as in a set of drawings: one lies on top. The index is a list of
// tabs: by mouse and touch, by arrow keys, and by the address.
import { $, $$, painted } from "./dom.js";
import { putSheet, sheetInAddress } from "./address.js";

/**
 * Shows the sheet of the address, and others as they are chosen. Each tab names
 * its panel in aria-controls; several tabs may share one.
 */
export function createSheets() {
  const tabs = $$("[role=tab]");
  const names = tabs.map((tab) => tab.dataset.sheet);
  const hearers = [];
  let shown = "";

  function show(name) {
    const at = Math.max(names.indexOf(name), 0);
    if (names[at] === shown) return;
    shown = names[at];
    for (const tab of tabs) {
      const on = tab === tabs[at];
      tab.setAttribute("aria-selected", String(on));
      tab.tabIndex = on ? 0 : -1;
    }
    const panel = tabs[at].getAttribute("aria-controls");
    for (const one of $$("[role=tabpanel]")) one.hidden = one.id !== panel;
    $(`#${panel}`).setAttribute("aria-labelledby", tabs[at].id);
    tell();
  }

  /** The sheet lies on top at once; what is on it follows. */
  async function tell() {
    const told = shown;
    await painted();
    if (told !== shown) return;
    for (const hear of hearers) hear(shown);
    document.documentElement.dataset.sheet = shown; // for tests
  }

  function choose(tab) {
    const { sheet } = tab.dataset;
    if (sheet === shown) return;
    putSheet(sheet === names[0] ? "" : sheet);
    show(sheet);
    scrollTo({ top: 0, behavior: "instant" });
  }

  for (const [i, tab] of tabs.entries()) {
    tab.addEventListener("click", (e) => {
      if (e.ctrlKey || e.metaKey || e.shiftKey) return; // a sheet in a tab of its own
      e.preventDefault();
      choose(tab);
    });
    tab.addEventListener("keydown", (e) => {
      const to = { ArrowRight: i + 1, ArrowDown: i + 1, ArrowLeft: i - 1, ArrowUp: i - 1, Home: 0, End: tabs.length - 1 }[e.key];
      if (to === undefined) return;
      e.preventDefault();
      const next = tabs[(to + tabs.length) % tabs.length];
      next.focus();
      choose(next);
    });
  }
  addEventListener("popstate", () => show(sheetInAddress()));
  addEventListener("hashchange", () => show(sheetInAddress()));
  show(sheetInAddress());

  return {
    get shown() { return shown; },
    /** Opens a sheet by its name. */
    open: (name) => choose(tabs[names.indexOf(name)]),
    /**
     * Returns a function that runs fn at once while one of the named sheets is
     * shown, else once it is: nobody waits for what nobody sees.
     */
    inSight(names, fn) {
      let due = false;
      const run = () => {
        due = !names.includes(shown);
        if (!due) fn();
      };
      hearers.push(() => due && run());
      return run;
    },
    /** Calls hear with the name of each sheet that is shown, and at once. */
    onShown(hear) {
      hearers.push(hear);
      hear(shown);
    },
  };
}
