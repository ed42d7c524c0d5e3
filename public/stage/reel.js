// The solver's reel, read: where every part is at any time, what is said then, and
// the moments that matter. Everything is room metres; nothing is computed here but
// the straight line between two frames.

const SAME = 1e-4; // s within which two moments are one

/** What of the room's axes a view shows, across and up, and which way it looks. */
export const AXES = { plan: [0, 1], side: [0, 2], face: [1, 2] };
/** How far a point lies towards the viewer, by its x, y, z. */
export const DEPTHS = { plan: (x, y, z) => z, side: (x, y) => -y, face: (x) => -x };

/** @param {Wire.ReelAnswer} answer */
export function readReel(answer) {
  const { rate, parts, said, texts, moments, tightest } = answer;
  const width = 6 * parts.length;
  const motion = new Float32Array(answer.motion); // m
  for (let i = 0; i < motion.length; i++) motion[i] /= 1000;
  for (let i = width; i < motion.length; i++) motion[i] += motion[i - width];
  const count = said.length;
  const between = (t) => {
    const f = Math.max(0, Math.min(t * rate, count - 1));
    const whole = Math.round(f);
    const frame = Math.abs(f - whole) < 1e-3 ? whole : Math.floor(f);
    return { frame, share: frame + 1 < count ? Math.max(0, f - frame) : 0 };
  };

  return {
    ...answer,
    count,
    /** The frame at a time or just before it. */
    frameAt: (t) => between(t).frame,

    /** Fills pose with both ends of every part at t: x y z x y z, m. */
    pose(t, pose = new Float64Array(width)) {
      const { frame, share } = between(t);
      const at = frame * width;
      const next = share > 0 ? at + width : at;
      for (let i = 0; i < width; i++) pose[i] = motion[at + i] + share * (motion[next + i] - motion[at + i]);
      return pose;
    },

    /** One coordinate of a frame: 0–2 of the part's one end, 3–5 of the other, m. */
    coordinate: (frame, part, i) => motion[frame * width + 6 * part + i],

    /** Who is nearest to what at t, in words. */
    said: (t) => texts[said[Math.min(count - 1, Math.round(t * rate))]] ?? "",

    /** The ball's way until t: x, y, z of each, m; the last is where it is. */
    ball(t) {
      const { ball, impact } = answer;
      const ms = 1000 * (t - impact);
      const way = [];
      for (let i = 0; i < ball.length; i += 4) {
        const here = [ball[i + 1] / 1000, ball[i + 2] / 1000, ball[i + 3] / 1000];
        if (ball[i] > ms && i > 0) {
          const before = way.at(-1);
          const k = Math.max(0, (ms - ball[i - 4]) / (ball[i] - ball[i - 4]));
          way.push(before.map((v, axis) => v + k * (here[axis] - v)));
          break;
        }
        way.push(here);
      }
      return way;
    },

    /** Where one wants to look, s: the first touch and every tight or struck place; else the tightest moment. */
    stops: stopsOf(moments, answer.first, tightest),
  };
}

/** The moments to go to, in order, each once. */
function stopsOf(moments, first, tightest) {
  const all = [...moments.map(({ time }) => time), ...(first === undefined ? [] : [first])].sort((a, b) => a - b);
  const stops = all.filter((time, i) => i === 0 || time - all[i - 1] > SAME);
  return stops.length ? stops : [tightest];
}

/** The stop after t, or before it with direction −1; round the end to the other one. */
export function nextStop(stops, t, direction) {
  const beyond = (stop) => (stop - t) * direction > SAME;
  return direction > 0 ? stops.find(beyond) ?? stops[0] : stops.findLast(beyond) ?? stops.at(-1);
}
