// The embed before anybody taps it. A plain script: in a sandbox without an origin a
// page may fetch no other, unless the host lets anybody (CORS). The address says
// which room, #p= as the page's own, and has the poster: ?poster=NAME or
// NAME,NAME-BY-LAMPLIGHT, files in posters/, or &poster= after the plan, an SVG packed
// as plans are.
(() => {
  const SUM = 3; // bytes of checksum
  const $ = (selector) => document.querySelector(selector);
  const base = document.baseURI;
  const link = /[#&](p=[^&]*)/.exec(location.hash)?.[1] ?? "";
  const packed = /[#&]poster=([\w-]*)/.exec(location.hash)?.[1] ?? "";
  const names = (new URLSearchParams(location.search).get("poster") ?? "").split(",").filter((name) => /^[\w-]+$/.test(name));
  const files = names.map((name) => `posters/${name}.svg`);
  if (!link && !files.length) files.push("build/poster.svg", "build/poster-dark.svg");

  const image = document.createElement("img");
  image.alt = "An elevation of the room with a golfer at the tightest moment; the answer is written below it.";
  image.addEventListener("error", wait);
  image.addEventListener("load", tell);
  if (files.length) show(files);
  else if (packed) carried();
  else wait();

  /** Shows a poster, and another by lamplight where there is one. */
  function show(files) {
    const picture = document.createElement("picture");
    if (files[1]) {
      const dark = document.createElement("source");
      dark.srcset = files[1];
      dark.media = "(prefers-color-scheme: dark)";
      picture.append(dark);
    }
    image.src = files[0];
    picture.append(image);
    $("#poster").replaceChildren(picture);
    $("#title").className = "visually-hidden"; // the poster says it
  }

  /** A poster that came along in the address. */
  async function carried() {
    try {
      const bytes = Uint8Array.from(atob(packed.replace(/-/g, "+").replace(/_/g, "/")), (c) => c.charCodeAt(0));
      const plain = new Blob([bytes.subarray(SUM)]).stream().pipeThrough(new DecompressionStream("deflate-raw"));
      show([URL.createObjectURL(new Blob([await new Response(plain).blob()], { type: "image/svg+xml" }))]);
    } catch {
      wait();
    }
  }

  /** There is no drawing of this room yet. */
  function wait() {
    const words = document.createElement("p");
    words.textContent = "Nobody has swung here yet.";
    words.className = "embed-blank";
    $("#poster").replaceChildren(words);
    $("#title").className = "";
    tell();
  }

  if (link) $("#whole").href = `./#${link}`;
  const swing = $("#swing");
  swing.hidden = false;
  swing.addEventListener("click", async () => {
    swing.disabled = true;
    swing.textContent = "Fetching\u2026";
    try {
      // A script from "another host" has no base of its own: hence the whole address.
      await (await import(new URL("embed/embed.js", base).href)).start(link && `#${link}`);
    } catch {
      fail("The swing cannot be fetched from inside this frame. The whole page has it.");
    }
  });

  function fail(sentence) {
    const said = document.createElement("p");
    said.role = "alert";
    said.textContent = sentence;
    swing.replaceWith(said);
    tell();
  }

  /** Tells the page around it how high it is, px. */
  function tell() {
    const height = Math.ceil($("main").getBoundingClientRect().height);
    if (parent !== self && height) parent.postMessage({ type: "wide-berth", height }, "*");
  }
  new ResizeObserver(tell).observe($("main"));
})();
