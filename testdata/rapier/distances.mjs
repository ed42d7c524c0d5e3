// Signed distances by Rapier (https://rapier.rs), a general-purpose physics
// library that shares no code with ours. Its numbers are 32-bit floats.
import RAPIER from "@dimforge/rapier3d-compat";

await RAPIER.init();

// far is a prediction distance beyond which Rapier would answer "no contact".
export const far = 1000;
export const upright = { x: 0, y: 0, z: 0, w: 1 };
const vec = ([x, y, z]) => ({ x, y, z });

// place gives the middle of the capsule and the turn that brings Rapier's
// capsule, which lies along its own y axis, onto it.
export function place({ a, b }) {
  const d = b.map((v, i) => v - a[i]);
  const length = Math.hypot(...d);
  return {
    half: length / 2,
    at: vec(a.map((v, i) => (v + b[i]) / 2)),
    turn: length > 0 ? fromY(d.map((v) => v / length)) : upright,
  };
}

// fromY is the shortest rotation, as a quaternion, that takes the y axis to the
// unit vector u: (y × u, 1 + y·u), normalised.
function fromY([x, y, z]) {
  if (y < -1 + 1e-12) return { x: 1, y: 0, z: 0, w: 0 };
  const k = 1 / Math.hypot(z, x, 1 + y);
  return { x: z * k, y: 0, z: -x * k, w: (1 + y) * k };
}

// solid gives the shape and place of a box {min, max} or a half-space {n, d}
// whose free side is n·p ≥ d.
export function solid({ box, plane }) {
  if (plane) {
    return { shape: new RAPIER.HalfSpace(vec(plane.n)), at: vec(plane.n.map((v) => v * plane.d)) };
  }
  const half = box.max.map((v, i) => (v - box.min[i]) / 2);
  const at = box.max.map((v, i) => (v + box.min[i]) / 2);
  return { shape: new RAPIER.Cuboid(...half), at: vec(at) };
}

// gap (m) is the distance that is left to Rapier to measure; see distance.
const gap = 0.002;

// thin (m) is the radius of a capsule that stands for its own axis.
const thin = 0.0001;

// distance returns the signed distance of the capsule to the solid, negative
// when they overlap.
//
// For shapes apart, Rapier's search (GJK) yields the distance of two points of
// the shapes, so it can only be too large; it stops at a relative error of about
// 0.001, a millimetre in a metre, and now and then earlier.
// So it is asked in several ways, and the smallest answer counts: the capsule
// deflated to its axis, and inflated until it all but touches, where the error
// is microns. A capsule whose very axis enters the solid cannot be deflated out
// of it; Rapier's first answer (EPA) stands.
export function distance({ capsule, box, plane }) {
  const { half, at, turn } = place(capsule);
  const s = solid({ box, plane });
  const measure = (r) => {
    const c = new RAPIER.Capsule(half, r);
    return s.shape.contactShape(s.at, upright, c, at, turn, far).distance + r - capsule.r;
  };
  let d = measure(capsule.r);
  if (capsule.r + d - gap <= 0) return d;
  d = Math.min(d, measure(thin));
  for (let i = 0; i < 3; i++) d = Math.min(d, measure(capsule.r + d - gap));
  return d;
}
