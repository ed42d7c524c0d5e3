// When to try again. A page that is kept for use without a network can always be
// loaded anew; any other only while there is one.

/** The end of a sentence: "reload the page to try again.", or to wait for the network. */
export const again = () => (navigator.onLine || navigator.serviceWorker?.controller
  ? "reload the page to try again." : "there is no network now; reload the page when there is.");
