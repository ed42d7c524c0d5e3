// Says so when the page's scripts cannot be fetched: a frame in a sandbox may fetch
// none, unless the host lets anybody (CORS). This script is one that it may.
addEventListener("error", ({ target }) => {
  if (!(target instanceof HTMLScriptElement)) return;
  document.documentElement.dataset.state = "error";
  document.querySelector("#verdict-wait").textContent = origin === "null"
    ? "The frame that this page is in lets it fetch nothing. Open the page by itself."
    : "A part of the page could not be fetched. Open it again when the network is back.";
}, true);
