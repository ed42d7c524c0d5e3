// "Embed": the plan for an iframe on somebody's own page. A dialog with the lines to
// paste, the poster to keep beside them, and what it looks like at three widths.
import { download, h, keptTogether, s, setText, slug, styles, VERDICT_WORDS } from "../app/dom.js";
import { pack } from "../app/link.js";
import { keptLink } from "../app/store.js";
import { drawView } from "../drawings/drawings.js";
import { drawingText } from "../pictures/paper.js";
import { describe } from "../stage/flat.js";

const LINK = "#p="; // what a packed text begins with
const WIDTHS = [280, 480, 720]; // px of the previews
const POSTER = 480; // px across a poster, and the size of its words
const PAD = 14;
const SAID = 16;
const LINE = 1.3;
const SANDBOX = "allow-scripts allow-popups allow-popups-to-escape-sandbox";
const RATIO = "3 / 4"; // of a frame whose page does not hear how high it wants to be

const attribute = (text) => text.replace(/&/g, "&amp;").replace(/"/g, "&quot;").replace(/</g, "&lt;");

/** The embed's address below the page's: its poster is a file of that name, else it is carried along. */
const embedAddress = ({ link, name, poster }) => (name ? `embed.html?poster=${name}${link}` : `embed.html${link}&poster=${poster}`);

/** The lines to paste. beside says that the poster lies with the page's own files. */
export function snippet({ base, link, name, title, sentence, poster, beside }) {
  const address = new URL(embedAddress({ link, poster, name: beside ? name : "" }), base).href;
  const named = attribute(`Will a full golf swing fit in ${title || "this room"}?`);
  return [
    `<iframe src="${attribute(address)}" title="${named}" loading="lazy" sandbox="${SANDBOX}" style="width:100%;aspect-ratio:${RATIO};max-height:44rem;border:0"></iframe>`,
    `<noscript><img src="${name}.svg" alt="${attribute(sentence)}"></noscript>`,
  ].join("\n");
}

/** A sentence in lines of at most width px. */
export function wrapped(sentence, width, measure) {
  const lines = [];
  for (const word of sentence.split(" ")) {
    const longer = lines.length ? `${lines.at(-1)} ${word}` : word;
    if (lines.length && measure(longer) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** The drawing that shows the tape best, at the tightest moment, with the answer below it. */
function drawPoster(/** @type {State} */ state) {
  const { flat, dims, words } = describe(state);
  const { at, on } = state.check.nearest;
  const name = Math.abs(at[1] - on[1]) >= Math.abs(at[0] - on[0]) ? "face" : "side";
  const drawn = drawView(name, flat[name], dims, words[name], POSTER);
  const [, , , high] = drawn.getAttribute("viewBox").split(" ").map(Number);
  const { headline, verdict } = state.answer.sentences;
  const ctx = document.createElement("canvas").getContext("2d");
  ctx.font = `${SAID * 1.06}px sans-serif`; // fonts differ
  const said = wrapped(`${headline} ${verdict}`, POSTER - 2 * PAD, (text) => ctx.measureText(text).width);
  const height = high + SAID * LINE * said.length + PAD;
  return s("svg", { viewBox: `0 0 ${POSTER} ${height}`, class: "view poster", role: "img", "aria-label": `${words[name]} ${verdict}` },
    s("rect", { class: "poster-ground", width: POSTER, height }),
    s("g", {}, ...drawn.childNodes),
    ...said.map((line, i) => s("text", { class: "poster-said", x: PAD, y: high + SAID * LINE * i + SAID * 0.8 }, line)));
}

let dialog = null;

/** Opens the dialog for the plan as it is answered now. */
export async function openEmbed(/** @type {{state: State}} */ { state }) {
  await styles("share/share.css");
  const { title } = state.good;
  const name = slug(title);
  const { sentences } = state.answer;
  const poster = drawPoster(state);
  const beside = h("input", { type: "checkbox", id: "embed-beside", onchange: write });
  const text = h("textarea", { id: "embed-text", readonly: true, rows: 6, spellcheck: "false" });
  const said = h("p", { role: "status", class: "embed-note" });
  const shown = h("div", { class: "embed-previews", tabindex: "0", role: "group", "aria-label": "Previews" });
  const link = keptLink();
  const previews = [];
  let drawn = ""; // the poster as a file
  let packed = ""; // and as a part of an address
  function write() {
    text.value = snippet({ base: document.baseURI, link, name, title, sentence: `${sentences.headline} ${sentences.verdict}`, poster: packed, beside: beside.checked });
  }
  async function copy() {
    try {
      await navigator.clipboard.writeText(text.value);
      setText(said, "Copied.");
    } catch {
      text.select();
      setText(said, "The browser would not copy by itself; the lines are selected for you.");
    }
  }
  function hear({ source, data }) {
    const frame = previews.find((one) => one.contentWindow === source);
    if (frame && data?.type === "wide-berth") frame.height = String(data.height);
  }

  dialog?.remove();
  dialog = h("dialog", { class: "dialog embed-dialog", "aria-labelledby": "embed-heading", onclose: () => {
    removeEventListener("message", hear);
    dialog.replaceChildren(); // the previews stop
  } },
    h("h2", { id: "embed-heading" }, "On your own page"),
    h("p", {}, h("strong", {}, `${VERDICT_WORDS[state.check.verdict]}. `), ...keptTogether(sentences.verdict)),
    h("div", { class: "embed-parts" },
      h("div", {},
        h("h3", {}, "The poster"), poster,
        h("button", { type: "button", onclick: () => download(new Blob([drawn], { type: "image/svg+xml" }), `${name}.svg`) }, "Download the poster"),
        h("p", { class: "field-line" }, beside, " ", h("label", { for: "embed-beside" }, `Shorter lines: I put it as posters/${name}.svg with this page's files`))),
      h("div", {},
        h("h3", {}, h("label", { for: "embed-text" }, "Paste these lines")), text,
        h("button", { type: "button", class: "stamp", onclick: copy }, "Copy the lines"), said,
        h("p", { class: "quiet" }, "Whoever serves this page must let anybody fetch it: Access-Control-Allow-Origin: *."))),
    h("h3", {}, "What it looks like"),
    shown,
    h("form", { method: "dialog" }, h("button", {}, "Close")));
  document.body.append(dialog);
  dialog.showModal();
  drawn = drawingText(poster, POSTER, poster.viewBox.baseVal.height); // only what is in the page has its styles
  packed = (await pack(drawn)).slice(LINK.length);
  write();
  addEventListener("message", hear);
  const src = embedAddress({ link, poster: packed, name: "" });
  previews.push(...WIDTHS.map((width) => h("iframe", { src, title: `The embed, ${width} px wide`, loading: "lazy", sandbox: SANDBOX, width, height: width * 4 / 3 })));
  shown.append(...WIDTHS.map((width, i) => h("figure", {}, h("figcaption", {}, `${width} px`), previews[i])));
}
