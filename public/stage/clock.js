// The stage's one clock: where in the swing we are. It knows no page and no real
// time; who has both tells it how much has passed.

/** How fast the swing may play, 1 being real time. */
export const RATES = [1, 1 / 4, 1 / 16];
/** Seconds of real time that a loop waits at its end before it starts over. */
export const LINGER = 0.8;
const LONGEST = 0.1; // s that one advance passes at most: after a stall we go on where we were
const SAME = 1e-6; // s within which two moments are one

/** A clock that stands at address until load gives it a swing. */
export function createClock() {
  let duration = 0;
  let phases = []; // of {name, start, end}, s
  let t = 0;
  let playing = false;
  let rate = RATES[1];
  let loop = ""; // name of the phase that is repeated, "" for the whole swing
  let waited = 0; // s at the loop's end

  const clamp = (at) => Math.max(0, Math.min(at, duration));
  const phaseAt = (at) => phases.findLast((phase) => at >= phase.start - SAME) ?? { name: "", start: 0, end: 0 };
  function range() {
    const phase = phases.find(({ name }) => name === loop);
    return phase ? [phase.start, Math.min(phase.end, duration)] : [0, duration];
  }
  function go(to) {
    t = clamp(to);
    waited = 0;
  }

  return {
    get t() { return t; },
    get duration() { return duration; },
    get playing() { return playing; },
    get rate() { return rate; },
    get loop() { return loop; },
    /** The name of the phase we are in. */
    get phase() { return phaseAt(t).name; },

    /** Takes another swing, {duration, phases}, and stays where we are in its phase. */
    load(swing) {
      const was = phaseAt(t);
      const share = was.end > was.start ? Math.min(1, (t - was.start) / (was.end - was.start)) : 0;
      ({ duration, phases } = swing);
      const now = phases.find(({ name }) => name === was.name) ?? { start: 0, end: 0 };
      t = clamp(now.start + share * (now.end - now.start));
      if (!phases.some(({ name }) => name === loop)) loop = "";
    },

    /** Passes dt seconds of real time and tells whether we moved. */
    advance(dt) {
      if (!playing || !(dt > 0) || duration === 0) return false;
      const [from, to] = range();
      if (t >= to - SAME) {
        waited += dt;
        if (waited < LINGER) return false;
        go(from);
        return true;
      }
      t = Math.min(t + Math.min(dt, LONGEST) * rate, to);
      return true;
    },

    /** Plays on; at the loop's end from its start, and before or after the loop too. */
    play() {
      const [from, to] = range();
      if (t >= to - SAME || t < from - SAME) go(from);
      playing = duration > 0;
    },
    pause() { playing = false; },

    /** Goes to a moment, s. */
    seek: go,

    /** Stops, and goes n frames of 1/perSecond on, or back; from between two frames to the next one that way. */
    step(n, perSecond) {
      playing = false;
      const at = t * perSecond;
      const near = Math.round(at);
      const frame = Math.abs(at - near) < SAME * perSecond ? near : n < 0 ? Math.ceil(at) : Math.floor(at);
      go((frame + n) / perSecond);
    },

    /** Sets how fast it plays; anything that is no positive number is left out of account. */
    setRate(to) {
      if (to > 0) rate = to;
    },

    /** Repeats a phase, "" for the whole swing, and goes there unless we are in it. */
    setLoop(name) {
      loop = phases.some((phase) => phase.name === name) ? name : "";
      const [from, to] = range();
      if (t < from || t > to) go(from);
    },
  };
}
