// Paths into the plan document, such as "players[1].height".

export const copy = (value) => structuredClone(value);

/**
 * Splits "players[1].height" into ["players", 1, "height"].
 * @param {string} path
 * @returns {(string | number)[]}
 */
export function steps(path) {
  return path.match(/[^.[\]]+/g).map((s) => (/^\d+$/.test(s) ? Number(s) : s));
}

/** @param {any} root @param {string} path */
export function valueAt(root, path) {
  return steps(path).reduce((node, step) => node?.[step], root);
}

/**
 * Sets a value in place; undefined deletes the key (an optional field left blank).
 * @param {any} root @param {string} path @param {any} value
 */
export function setAt(root, path, value) {
  const keys = steps(path);
  const last = keys.pop();
  const node = keys.reduce((n, step, i) => (n[step] ??= typeof (keys[i + 1] ?? last) === "number" ? [] : {}), root);
  if (value === undefined) delete node[last];
  else node[last] = value;
}
