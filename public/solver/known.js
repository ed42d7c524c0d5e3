// What a page asks first, with the solver's answers: of the demonstration room, from the
// build, and of the plan that this browser showed last. The first picture need not wait for
// the program.

/** Where the last answers are kept, beside what the page keeps for use without a network. */
export const LAST = { cache: "wide-berth-last", name: new URL("../last.json", import.meta.url).href };

/**
 * Adds exchanges to the replies that are known, by their requests; without them the
 * solver is asked.
 * @param {Map<string, string>} known
 * @param {() => Promise<Response>} find
 */
async function learn(known, find) {
  try {
    for (const { request, reply } of await (await find()).json()) known.set(JSON.stringify(request), JSON.stringify(reply));
  } catch {
    // Not there, or not whole.
  }
}

export const learnDemo = (known) => learn(known, () => fetch(new URL("../build/known.json", import.meta.url)));
export const learnLast = (known) => learn(known, async () => (await caches.open(LAST.cache)).match(LAST.name));
