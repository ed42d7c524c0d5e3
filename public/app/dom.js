// Small helpers to build elements without markup strings.

/** h("button", {type: "button", class: "x"}, "text", child…); null children are skipped. */
export function h(tag, attributes = {}, ...children) {
  const el = document.createElement(tag);
  assign(el, attributes);
  el.append(...children.filter((c) => c !== null && c !== undefined));
  return el;
}

const SVG = "http://www.w3.org/2000/svg";

/** The same for an SVG element. */
export function s(tag, attributes = {}, ...children) {
  const el = document.createElementNS(SVG, tag);
  assign(el, attributes);
  el.append(...children.filter((c) => c !== null && c !== undefined));
  return el;
}

function assign(el, attributes) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === false || value === null || value === undefined) continue;
    if (name.startsWith("on")) el.addEventListener(name.slice(2), value);
    else el.setAttribute(name, value === true ? "" : String(value));
  }
}

/** @type {(selector: string, root?: any) => any} */
export const $ = (selector, root = document) => root.querySelector(selector);

/** All of them. @type {(selector: string, root?: any) => any[]} */
export const $$ = (selector, root = document) => [...root.querySelectorAll(selector)];

/** What has the focus. @returns {any} */
export const active = () => document.activeElement;

/** Sets text only when it differs, so that live regions speak once. */
export function setText(el, text) {
  if (el.textContent !== text) el.textContent = text;
}

/** The icon of a verdict: its shape says the same as its colour. */
export function icon(verdict, className = "icon") {
  return s("svg", { class: className, "aria-hidden": "true", focusable: "false" }, s("use", { href: `#icon-${verdict}` }));
}

/** The sentence with each measure ("1 ft 2 5/8 in") kept on one line. */
export function keptTogether(sentence) {
  const measure = /((?:\d[\d.,/]*[ \u00a0])+(?:ft|in|mm|cm|m)\b(?:[ \u00a0]\d[\d/ ]*in\b)?)/;
  return sentence.split(measure).map((text, i) => (i % 2 ? h("span", { class: "measure" }, text) : text));
}

export const VERDICT_WORDS = { strikes: "Strikes", tight: "Tight", clear: "Clear" };

/** text as a sentence: it starts with a capital and ends with a stop. */
export const asSentence = (text) => text.replace(/^\p{Ll}/u, (c) => c.toUpperCase()).replace(/[.!?]?$/, (end) => end || ".");

/** Calls fn once, wait milliseconds after the last call. */
export function debounce(fn, wait) {
  let timer = 0;
  const run = (...args) => {
    clearTimeout(timer);
    timer = setTimeout(() => fn(...args), wait);
  };
  run.cancel = () => clearTimeout(timer);
  return run;
}

const dressed = new Map(); // style sheet → its coming

/** Fetches style sheets of the page, each once; resolves when they are there. @param {...string} files */
export const styles = (...files) => Promise.all(files.map((href) => {
  if (!dressed.has(href)) {
    dressed.set(href, new Promise((done, failed) => {
      document.head.append(h("link", { rel: "stylesheet", href, onload: done, onerror: () => { dressed.delete(href); failed(); } }));
    }));
  }
  return dressed.get(href);
}));

/** Lets what somebody did meanwhile come first. */
export const turn = () => new Promise((resolve) => setTimeout(resolve));

/** Resolves once what was changed is on the screen. */
export const painted = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));

/** A name for files, made of a plan's; "room" where that has no letters. */
export const slug = (title) => (title ?? "").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "") || "room";

/** Has the browser keep a file. */
export function download(blob, name) {
  const url = URL.createObjectURL(blob);
  h("a", { href: url, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(url), 1000);
}
