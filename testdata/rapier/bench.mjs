// usage: node testdata/rapier/bench.mjs QUESTIONS.json NATIVE.txt WASM.txt
// Asks Rapier, moment by moment, what BenchmarkSwept asks of a swing, and prints the time
// of one swing by it and by us, of which the two files are the output of that benchmark
// natively and in WebAssembly. Rapier measures every wanted part at every moment of the
// poses; they are as close as they must be for no clearance to be off by more than ours.
import { readFileSync } from "node:fs";
import RAPIER from "@dimforge/rapier3d-compat";
import { far, place, solid, upright } from "./distances.mjs";

const [questions, ...outputs] = process.argv.slice(2);
const { poses, questions: asked } = JSON.parse(readFileSync(questions, "utf8"));
const array = ({ X, Y, Z }) => [X, Y, Z];
const moments = poses.map((parts) => parts.map(({ A, B, R }) => ({ ...place({ a: array(A), b: array(B) }), r: R })));
// A capsule keeps its size while it moves.
const shapes = moments[0].map(({ half, r }) => new RAPIER.Capsule(half, r));

/** The least distance of some parts to each of some solids. */
const sweep = (parts, solids) => solids.map((s) => {
  let least = Infinity;
  for (const moment of moments) {
    for (const p of parts) {
      const { at, turn } = moment[p];
      least = Math.min(least, s.shape.contactShape(s.at, upright, shapes[p], at, turn, far).distance);
    }
  }
  return least;
});

/** Least milliseconds of our benchmarks, by name. */
const ours = outputs.map((file) => {
  const ms = {};
  for (const [, name, ns] of readFileSync(file, "utf8").matchAll(/^Benchmark(Swept\/\w+|Pairs\/\d+)\S*\s+\d+\s+([\d.]+) ns\/op/gm)) {
    ms[name] = Math.min(ms[name] ?? Infinity, ns / 1e6);
  }
  return ms;
});
const line = (what, rapier, name) => {
  const [native, wasm] = ours.map((one) => one[name]);
  console.log([what, rapier.toPrecision(3), native.toPrecision(3), wasm.toPrecision(3),
    (rapier / native).toFixed(0), (rapier / wasm).toFixed(0), (wasm / native).toFixed(1)].join(" | "));
};

let rapier;
console.log(`one swing of ${moments.length} moments | Rapier (WASM) ms | native ms | WASM ms | Rapier/native | Rapier/WASM | WASM/native`);
for (const { Name, Parts, Surfaces, Clearance } of asked) {
  const solids = Surfaces.map(({ Kind, Plane, Box }) => solid(Kind <= 3 // the flat ones
    ? { plane: { n: array(Plane.N), d: Plane.D } } : { box: { min: array(Box.Min), max: array(Box.Max) } }));
  const found = sweep(Parts, solids); // also compiles
  found.forEach((d, i) => {
    // Rapier cannot see between two moments, and is off by a thousandth.
    if (!(Clearance[i] - d < 0.002 && d - Clearance[i] < 0.004 + 0.002 * Math.abs(d))) {
      throw new Error(`${Name}: Rapier finds ${d} m to ${Surfaces[i].Name}, we find ${Clearance[i]}`);
    }
  });
  rapier = Infinity;
  for (let i = 0; i < 7; i++) {
    const start = performance.now();
    sweep(Parts, solids);
    rapier = Math.min(rapier, performance.now() - start);
  }
  line(Name, rapier, `Swept/${Name}`);
}
// Ours makes the swings too, and says who of them strikes what and when.
const FAMILY = 256;
for (const n of [1, 2, 4, 8]) line(`${n} × ${FAMILY} swings, by multiplication`, n * FAMILY * rapier, `Pairs/${n}`);
