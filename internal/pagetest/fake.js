// A plan and the solver's answer to it, as small as the tests can do with.

export const demo = () => ({
  version: 1, title: "Loft", units: "imperial", margin: 0.15,
  room: { length: 6, width: 4, height: 3 }, floor: {},
  tees: [{ name: "middle", x: 3, y: 2 }],
  clubs: [{ name: "driver", kind: "driver", length: 1.15 }, { name: "7-iron", kind: "iron", length: 0.94 }],
  players: [{ name: "Host", height: 1.8 }, { name: "Guest", height: 1.7, clubs: ["driver"] }],
});

/** What a solver would say of a request. */
export function solved({ plan, focus }) {
  const checks = plan.players.map(({ name }) => ({ player: name, club: "driver", tee: plan.tees[0].name, verdict: "clear", clearance: 1 }));
  const looked = checks.find((c) => focus.player === "" || c.player === focus.player);
  return {
    plan: structuredClone(plan), report: { checks }, notes: ["A remark."],
    focus: { player: looked.player, club: looked.club, tee: looked.tee },
  };
}

const hearers = []; // of "hashchange"
globalThis.addEventListener = (_, hear) => hearers.push(hear);

/**
 * Puts an address and a history in place of the browser's, as much as the page
 * uses of them; hashes are those of the steps so far, the last one the present.
 * follow goes to an address, of which the page hears only when it arrives.
 */
export function fakeHistory() {
  const steps = [{ hash: "", state: null }];
  const at = () => steps[steps.length - 1];
  const put = (into) => (state, _, hash) => Object.assign(into(), { state, hash: hash === "#" ? "" : hash });
  const follow = (hash) => { steps.splice(0, steps.length, { hash, state: null }); }; // begins a new story
  const arrive = () => { for (const hear of hearers) hear(); };
  Object.assign(globalThis, {
    location: {
      get hash() { return at().hash; },
      set hash(hash) {
        follow(hash);
        arrive();
      },
    },
    history: {
      get state() { return at().state; },
      replaceState: put(at),
      pushState: put(() => steps[steps.push({ hash: "", state: null }) - 1]),
    },
  });
  arrive();
  return { get hashes() { return steps.map(({ hash }) => hash); }, follow, arrive };
}

fakeHistory(); // modules read it as they load

/** Puts a storage in place of the browser's, with room for so many characters. */
export function fakeStorage(room = Infinity) {
  const items = new Map();
  const used = () => [...items].reduce((sum, [key, value]) => sum + key.length + value.length, 0);
  const storage = {
    get length() { return items.size; },
    key: (i) => [...items.keys()][i] ?? null,
    getItem: (key) => items.get(key) ?? null,
    removeItem: (key) => { items.delete(key); },
    setItem(key, value) {
      const before = items.get(key);
      items.set(key, String(value));
      if (used() <= room) return;
      if (before === undefined) items.delete(key);
      else items.set(key, before);
      throw Object.assign(new Error("full"), { name: "QuotaExceededError" });
    },
  };
  Object.assign(globalThis, { localStorage: storage });
  return storage;
}
