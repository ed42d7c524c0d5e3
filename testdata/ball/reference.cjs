// Makes reference.json: golf balls flown by a general-purpose solver that shares
// nothing with ours, odex 2.0.4 from npm (a port of E. Hairer and G. Wanner's
// ODEX, Gragg-Bulirsch-Stoer extrapolation; ours is a Runge-Kutta pair).
//
//   npm install --no-save odex@2.0.4
//   node testdata/ball/reference.cjs > testdata/ball/reference.json
"use strict";
const fs = require("node:fs");
const path = require("node:path");
const { Solver } = require("odex");

const tables = { CD: [], CL: [] };
let speeds = [];
for (const line of fs.readFileSync(path.join(__dirname, "bearman_harvey.csv"), "utf8").trim().split("\n")) {
  if (line.startsWith("#")) continue;
  const [name, rpm, ...rest] = line.split(",");
  if (rpm === "rpm") speeds = rest.map(Number);
  else tables[name].push({ rpm: Number(rpm), values: rest.map(Number) });
}

const clamp = (x, lo, hi) => Math.min(Math.max(x, lo), hi);

function lookUp(rows, speed, rpm) {
  const v = clamp(speed, speeds[0], speeds.at(-1));
  const along = (row) => {
    const i = clamp(speeds.findLastIndex((s) => s <= v), 0, speeds.length - 2);
    return row.values[i] + (row.values[i + 1] - row.values[i]) * (v - speeds[i]) / (speeds[i + 1] - speeds[i]);
  };
  const n = clamp(rpm, rows[0].rpm, rows.at(-1).rpm);
  const j = clamp(rows.findLastIndex((r) => r.rpm <= n), 0, rows.length - 2);
  const w = (n - rows[j].rpm) / (rows[j + 1].rpm - rows[j].rpm);
  return (1 - w) * along(rows[j]) + w * along(rows[j + 1]);
}

const mass = 0.04593, diameter = 0.04267, g = 9.80665;
const k = (density) => density * Math.PI * diameter ** 2 / 4 / 2 / mass;

// spin axis: level and square to the heading for backspin, leaning by tilt in
// the plane square to the motion.
function motion({ speed, launch, azimuth, spin, tilt, density }) {
  const rad = Math.PI / 180;
  const [e, a, t] = [launch * rad, azimuth * rad, tilt * rad];
  const velocity = [speed * Math.cos(e) * Math.cos(a), speed * Math.cos(e) * Math.sin(a), speed * Math.sin(e)];
  const left = [-Math.sin(a), Math.cos(a), 0];
  const above = [-Math.sin(e) * Math.cos(a), -Math.sin(e) * Math.sin(a), Math.cos(e)];
  const axis = left.map((l, i) => -Math.cos(t) * l + Math.sin(t) * above[i]);
  const rhs = (_, y) => {
    const [vx, vy, vz] = y.slice(3);
    const v = Math.hypot(vx, vy, vz);
    const drag = k(density) * lookUp(tables.CD, v, spin) * v;
    const lift = k(density) * lookUp(tables.CL, v, spin) * Math.min(1, spin / 2000) * v;
    return [vx, vy, vz,
      -drag * vx + lift * (axis[1] * vz - axis[2] * vy),
      -drag * vy + lift * (axis[2] * vx - axis[0] * vz),
      -drag * vz + lift * (axis[0] * vy - axis[1] * vx) - g];
  };
  return { rhs, start: [0, 0, 0, ...velocity] };
}

const cases = [
  { name: "driver, straight", speed: 74.97, launch: 10.8, azimuth: 0, spin: 2599, tilt: 0, density: 1.225 },
  { name: "7-iron, pulled and drawing", speed: 53.6, launch: 16.3, azimuth: 6, spin: 7097, tilt: 12, density: 1.225 },
  { name: "wedge, pushed and fading", speed: 45.6, launch: 24.2, azimuth: -5, spin: 9304, tilt: -8, density: 1.10 },
  { name: "hosel shot", speed: 35, launch: 9, azimuth: -45, spin: 3500, tilt: -30, density: 1.20 },
  { name: "skied, little spin", speed: 40, launch: 55, azimuth: 1, spin: 1200, tilt: 0, density: 1.225 },
  { name: "slower than the table", speed: 12, launch: 30, azimuth: 0, spin: 4000, tilt: 5, density: 1.225 },
];
const times = [0.02, 0.06, 0.12, 0.5, 1.5];

for (const c of cases) {
  const { rhs, start } = motion(c);
  const solver = new Solver(6);
  solver.absoluteTolerance = solver.relativeTolerance = 1e-13;
  solver.maxSteps = 1e6;
  c.states = times.map((t) => {
    // A ball that goes under z = 0 flies on: this is about the equations only.
    const { y, outcome } = solver.solve(rhs, 0, start, t);
    if (outcome !== 0) throw new Error(`${c.name}: the solver gave up at ${t} s`);
    return { time: t, y };
  });
}
console.log(JSON.stringify({
  source: "npm odex 2.0.4, tolerance 1e-13, made by testdata/ball/reference.cjs; status: computed",
  units: "speed m/s; launch, azimuth, tilt degrees; spin rev/min; density kg/m3; y = x, y, z (m), vx, vy, vz (m/s)",
  cases,
}, null, 1));
