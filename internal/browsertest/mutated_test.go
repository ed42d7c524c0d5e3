//go:build browser

package browsertest

import (
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"wideberth/internal/fuzzed"
	"wideberth/internal/link"
	"wideberth/internal/sim/plan"
)

var (
	mutated    = flag.Int("mutated", 12, "how many mutated links and plans TestMalformedLinks opens")
	posted     = flag.Int("posted", 100, "how many of them TestMalformedLinks has its worker answer before that")
	mutatedFor = flag.Duration("mutatedfor", 0, "how long it opens such instead, however many they are")
)

// weighedWorkers has every worker tell how much memory its program has taken.
const weighedWorkers = `globalThis.Worker = class extends Worker {
	constructor(address, { name }) {
		super(URL.createObjectURL(new Blob([
			"const early = [], real = WebAssembly.instantiateStreaming; let made;" +
			"WebAssembly.instantiateStreaming = async (...given) => made = await real(...given);" +
			"addEventListener('message', (e) => { if (!e.data.weigh) return; e.stopImmediatePropagation(); postMessage({ weight: made.instance.exports.mem.buffer.byteLength }); });" +
			"onmessage = ({ data }) => early.push(data);" +
			"import(" + JSON.stringify(String(address)) + ").then(() => { onmessage = null; for (const data of early) dispatchEvent(new MessageEvent('message', { data })); });"
		], { type: "text/javascript" })), { name });
		(globalThis.workers ??= []).push(this);
	}
};
globalThis.weigh = () => new Promise((done) => {
	const one = workers.at(-1);
	one.addEventListener("message", ({ data }) => data.weight && done(data.weight));
	one.postMessage({ weigh: true });
})`

// posts has the page's own worker answer what links and plans may hold, many in one call:
// a damaged link is unpacked, a plan's text goes, of one in eight, through a link of it
// (which takes longer than all the rest) and is opened, or is
// solved and given up at the first sign of work. Each is answered with a plan or a sentence.
const posts = `(async (all) => {
	const { pack, unpack } = await import("/app/link.js");
	const worker = workers.at(-1), done = { opened: 0, refused: 0, left: 0, faults: [] };
	const asked = new Map();
	const hear = ({ data }) => {
		if (!asked.has(data.id)) return;
		if (data.progress !== undefined) worker.postMessage({ stop: data.id });
		asked.get(data.id)(data.body && JSON.parse(data.body));
		asked.delete(data.id);
	};
	const ask = (id, request) => new Promise((answer) => {
		asked.set(id, answer);
		worker.postMessage({ id, body: request.normalize(), patience: 0 });
	});
	worker.addEventListener("message", hear);
	await Promise.all(all.map(async ({ link, text, solve }, i) => {
		const packed = i % 8 === 0;
		const { error, text: read } = packed ? await unpack(link ?? await pack(text)) : { text };
		let answer = { error };
		if (packed && !link && read !== text.replace(/^\ufeff/, "")) done.faults.push("not what was packed: " + read);
		else if (!error) answer = await ask("posted " + i, solve ? '{"kind":"solve","plan":' + text + "}" : JSON.stringify({ kind: "open", linked: read }));
		if (!answer) done.left++;
		else if (!answer.error && answer.plan?.version) done.opened++;
		else if (answer.error?.message.length >= 10 && answer.error.message.length <= 600 && !answer.error.message.includes("fault of the program")) done.refused++;
		else done.faults.push((link ?? text) + " is answered with " + JSON.stringify(answer).slice(0, 300));
	}));
	worker.removeEventListener("message", hear);
	return done;
})`

// mutatedPosts sends the worker many of them; it takes no more memory for
// the last three quarters of them.
func mutatedPosts(t *testing.T, tb *tab, good string, texts []string) {
	rnd := rand.New(rand.NewPCG(13, 9))
	type one struct {
		Link  string `json:"link,omitempty"`
		Text  string `json:"text,omitempty"`
		Solve bool   `json:"solve,omitempty"`
	}
	batch := max(1, min(500, *posted/4))
	var opened, refused, left, early int
	start := time.Now()
	weight := func() int { return eval[int](tb, `weigh()`) }
	for sent := 0; sent < *posted; sent += batch {
		if sent >= *posted/4 && early == 0 {
			early = weight()
		}
		all := make([]one, batch)
		for i := range all {
			text := strings.ToValidUTF8(fuzzed.Text(rnd, texts[rnd.IntN(len(texts))]), "�")
			_, bad := plan.Parse([]byte(text))
			// What works is opened and now and then begun; what does not is tried either way.
			switch all[i] = (one{Text: text, Solve: i%50 == 49 || bad != nil && i%4 > 0}); {
			case i%16 == 0:
				all[i] = one{Link: "#p=" + fuzzed.Text(rnd, good[len("#p="):])}
			case text == "":
				all[i].Text = " "
			}
		}
		body, err := json.Marshal(all)
		if err != nil {
			t.Fatal(err)
		}
		got := eval[struct {
			Opened, Refused, Left int
			Faults                []string
		}](tb, posts+"("+string(body)+")")
		for _, fault := range got.Faults {
			t.Errorf("%.600s", fault)
		}
		opened, refused, left = opened+got.Opened, refused+got.Refused, left+got.Left
	}
	late := weight()
	t.Logf("posted: %d refused, %d opened and %d left in %v; the solver has taken %d MB after a quarter and %d at the end", refused, opened, left, time.Since(start).Round(time.Second), early>>20, late>>20)
	if refused == 0 || opened == 0 {
		t.Errorf("%d refused and %d opened: want some of each", refused, opened)
	}
	if late > early+48<<20 {
		t.Errorf("the solver has taken %d MB, %d after a quarter", late>>20, early>>20)
	}
}

// mutatedLinks opens links on a page one after another, as if pasted: such as were changed
// on the way, and sound ones of plans that were. Each ends in a sentence; one that is
// refused leaves plan, answer and address; all go through one worker, which takes no
// more memory for them.
func mutatedLinks(t *testing.T, tb *tab) {
	rnd := rand.New(rand.NewPCG(13, 8))
	good := strings.TrimPrefix(alone, "/")
	checked, err := link.Decode(good)
	if err != nil {
		t.Fatal(err)
	}
	p := checked.Plan()
	texts := []string{string(p.JSON()), string(p.Sparse().JSON()), string(plan.Demo().Sparse().JSON())}
	tb.again(alone)
	type after struct{ Notice, Verdict, Hash string }
	paste := func(hash string) after {
		return eval[after](tb, `(async () => {
			const notice = document.querySelector("#notice"), page = document.documentElement.dataset;
			const to = `+hash+`;
			notice.textContent = location.hash === to ? "It is open already." : "";
			location.hash = to;
			const from = performance.now();
			while (!notice.textContent || page.busy !== "no") {
				if (performance.now() - from > `+fmt.Sprint(patience.Milliseconds())+`) return { Notice: "", Verdict: "nothing in all that time", Hash: location.hash };
				await new Promise((done) => setTimeout(done, 4));
			}
			return { Notice: notice.innerText, Verdict: document.querySelector("#verdict").innerText, Hash: location.hash };
		})()`)
	}
	before := paste(quote(good))
	mutatedPosts(t, tb, good, texts)
	weight := func() int { return eval[int](tb, `weigh()`) }
	const settled = 6 // links after which the solver has what such work takes
	early, opened, refused := 0, 0, 0
	start := time.Now()
	for i := 0; i < *mutated || time.Since(start) < *mutatedFor; i++ {
		if i == settled {
			early = weight()
		}
		hash, what := quote("#p="+fuzzed.Text(rnd, good[len("#p="):])), ""
		if i%4 > 0 {
			what = strings.ToValidUTF8(fuzzed.Text(rnd, texts[rnd.IntN(len(texts))]), "�")
			hash = `await import("/app/link.js").then(({ pack }) => pack(` + quote(what) + `))`
			if _, err := plan.Parse([]byte(what)); err == nil && *mutatedFor == 0 && opened == 2 {
				continue // each takes some half a second to be answered
			}
		}
		got := paste(hash)
		if len(got.Notice) < 10 || len(got.Notice) > 700 || strings.Contains(got.Notice, "fault of the program") {
			t.Errorf("%s%s: the notice = %q (%s)", short(hash), short(what), got.Notice, got.Verdict)
		}
		if !strings.Contains(got.Notice, "What was here is unchanged") {
			opened++
			paste(quote(good))
			continue
		}
		refused++
		if got.Verdict != before.Verdict || got.Hash != before.Hash {
			t.Fatalf("%s%s is refused with %q, and the page reads %q at %s, want %q at %s", short(hash), short(what), got.Notice, got.Verdict, short(got.Hash), before.Verdict, short(before.Hash))
		}
	}
	if got := paste(quote(good)); got != before {
		t.Errorf("after all of them the page reads %+v, want %+v", got, before)
	}
	late := weight()
	t.Logf("%d refused and %d opened in %v; the solver has taken %d MB after %d and %d at the end", refused, opened, time.Since(start).Round(time.Second), early>>20, settled, late>>20)
	if refused == 0 || opened == 0 {
		t.Errorf("%d are refused and %d opened, want some of each", refused, opened)
	}
	if n := eval[int](tb, `workers.length`); n != 1 {
		t.Errorf("%d workers were started, want the one", n)
	}
	if late > early+48<<20 {
		t.Errorf("the solver has taken %d MB, %d after the first %d", late>>20, early>>20, settled)
	}
}
