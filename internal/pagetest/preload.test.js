import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { posix } from "node:path";
import { test } from "node:test";

test("the page names every module of the first answer, so that a slow network is asked for all at once", () => {
  const seen = new Set();
  const visit = (file) => {
    if (seen.has(file)) return;
    seen.add(file);
    for (const [, from] of readFileSync(`public/${file}`, "utf8").matchAll(/^import [^;]*? from "([^"]+)";/gm)) visit(posix.join(posix.dirname(file), from));
  };
  visit("app/app.js");
  const named = [...readFileSync("public/index.html", "utf8").matchAll(/<link rel="modulepreload" href="([^"]+)">/g)].map(([, href]) => href);
  assert.deepEqual(named.sort(), [...seen].sort());
});
