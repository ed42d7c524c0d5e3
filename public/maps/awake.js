// Keeps the screen lit while it shows something to people across the room.

/**
 * Asks for it, and again each time the page comes back into view. kept resolves to
 * whether the browser allowed it; release() lets the screen sleep again.
 */
export function keepAwake() {
  let lock = null;
  let over = false;
  async function ask() {
    if (over || document.visibilityState !== "visible") return false;
    try {
      lock = await navigator.wakeLock.request("screen"); // it may be missing altogether
    } catch {
      return false;
    }
    if (over) lock.release();
    return true;
  }
  document.addEventListener("visibilitychange", ask);
  return {
    kept: ask(),
    release() {
      over = true;
      document.removeEventListener("visibilitychange", ask);
      lock?.release();
    },
  };
}
