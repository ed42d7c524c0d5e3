// usage: node testdata/rapier/check.mjs POSES.json
// Reads an array of {capsule: {a, b, r}, box: {min, max}} or {capsule, plane:
// {n, d}} and prints the array of Rapier's signed distances.
import { readFileSync } from "node:fs";
import { distance } from "./distances.mjs";

const poses = JSON.parse(readFileSync(process.argv[2], "utf8"));
console.log(JSON.stringify(poses.map(distance)));
