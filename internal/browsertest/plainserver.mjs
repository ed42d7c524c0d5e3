// A file server as plain as they come: no header but a type, and of that it knows
// little; a WebAssembly program is just bytes to it. Usage: node plainserver.mjs FOLDER
import { createReadStream, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";

const [, , folder] = process.argv;
const TYPES = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".svg": "image/svg+xml" };

const server = createServer((request, answer) => {
  const path = decodeURIComponent(new URL(request.url ?? "/", "http://localhost").pathname);
  const file = join(folder, normalize(path.endsWith("/") ? `${path}index.html` : path));
  try {
    if (!statSync(file).isFile()) throw new Error("no file");
  } catch {
    answer.writeHead(404).end();
    return;
  }
  answer.writeHead(200, { "Content-Type": TYPES[extname(file)] ?? "application/octet-stream" });
  createReadStream(file).pipe(answer);
});
server.listen(0, "127.0.0.1", () => process.stdout.write(`http://127.0.0.1:${/** @type {any} */ (server.address()).port}\n`));
