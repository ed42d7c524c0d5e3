// The page without a network: has the browser keep it (sw.js), and tells of a newer
// version, which comes when the visitor says so.
import { $, h } from "../app/dom.js";

/** Keeps the page, unless data is to be saved. Where the browser keeps nothing, nothing is said: the page works as before. */
export async function createOffline() {
  const { serviceWorker } = navigator;
  if (!serviceWorker || /** @type {any} */ (navigator).connection?.saveData) return;
  let controlled = Boolean(serviceWorker.controller);
  serviceWorker.addEventListener("controllerchange", () => {
    if (controlled) location.reload(); // every open page is of the version that answers it
    controlled = true;
  });
  try {
    const kept = await serviceWorker.register("sw.js", { updateViaCache: "none" });
    if (kept.waiting) tell(kept);
    kept.addEventListener("updatefound", () => {
      const { installing } = kept;
      installing.addEventListener("statechange", () => {
        if (installing.state === "installed" && serviceWorker.controller) tell(kept);
      });
    });
    document.addEventListener("visibilitychange", () => {
      if (!document.hidden) kept.update().catch(() => {}); // without a network there is nothing newer
    });
  } catch {
    // A private window, a host without sw.js, no network: it is tried again with the next visit.
  }
}

/** Says that a newer version is here, once. */
function tell(kept) {
  if ($("#update")) return;
  $("#notice").after(h("p", { id: "update", class: "notice", role: "status" }, "A newer version of this page is here. Your plan stays as it is; other tabs with this page load anew too. ",
    h("button", { type: "button", onclick: () => kept.waiting?.postMessage("take over") }, "Take it")));
}
