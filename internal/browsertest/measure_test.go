//go:build browser

package browsertest

import (
	"flag"
	"fmt"
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/heapprofiler"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

var measure = flag.Duration("measure", 0, "how long TestMeasureMemory plays the swing; without it nothing is measured")

// slowNetwork is a phone's, in the country: after Lighthouse's "slow 4G" (560 ms of
// request latency, 1.44 Mbit/s), from memory.
const (
	slowLatency = 560 * time.Millisecond
	slowRate    = 180e3 // bytes/s, of all requests together
)

// slowServer serves the page as over that network, by HTTP/2 as static hosts do.
func slowServer(next http.Handler) *httptest.Server {
	var line sync.Mutex // one line carries all
	slow := httptest.NewUnstartedServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		time.Sleep(slowLatency)
		next.ServeHTTP(&slowWriter{w, &line}, r)
	}))
	slow.EnableHTTP2 = true
	slow.StartTLS()
	return slow
}

type slowWriter struct {
	http.ResponseWriter
	line *sync.Mutex
}

func (w *slowWriter) Write(b []byte) (int, error) {
	const chunk = 4096
	for sent := 0; sent < len(b); {
		n := min(chunk, len(b)-sent)
		w.line.Lock()
		time.Sleep(time.Duration(float64(n) / slowRate * float64(time.Second)))
		_, err := w.ResponseWriter.Write(b[sent : sent+n])
		w.line.Unlock()
		if err != nil {
			return sent, err
		}
		sent += n
	}
	return len(b), nil
}

// trusting is cold and takes the slow server's certificate, which nobody signed.
var trusting = &browser{flags: append(slices.Clone(cold.flags), chromedp.Flag("ignore-certificate-errors", true))}

// watchFirst notes in the page when the first verdict is painted, and the longest that
// something a person did took until the next picture.
const watchFirst = `
	const first = new MutationObserver(() => {
		if (document.documentElement.dataset.state !== "ready" || document.documentElement.dataset.busy !== "no") return;
		first.disconnect();
		requestAnimationFrame(() => setTimeout(() => { window.firstVerdict = performance.now(); }));
	});
	first.observe(document, {subtree: true, attributes: true, attributeFilter: ["data-state", "data-busy"]});
	window.longest = 0;
	new PerformanceObserver((list) => { for (const e of list.getEntries()) if (e.duration > window.longest) [window.longest, window.slowest] = [e.duration, e.name + " " + e.target?.id]; }).observe({type: "event", durationThreshold: 16, buffered: true});
	new PerformanceObserver((list) => { window.largest = list.getEntries().at(-1).startTime; }).observe({type: "largest-contentful-paint", buffered: true});`

// TestMeasure prints what a visitor waits for, as a table. Times are this machine's on
// this day; nothing is held to them here.
func TestMeasure(t *testing.T) {
	if *measure == 0 {
		t.Skip("make bench measures")
	}
	slow := slowServer(server.Config.Handler)
	defer slow.Close()
	defer trusting.stop()
	columns := []string{"profile", "largest paint", "first verdict", "again, warm", "typed value", "moved tee", "map", "one of eleven more heights", "one of somebody new's", "longest interaction"}
	lines := []string{strings.Join(columns, " | ")}
	for _, profile := range []struct {
		name   string
		cpu    float64 // how many times slower the page's own thread is; its workers are not
		server *httptest.Server
	}{{"no throttle", 1, server}, {"page 4x slower", 4, server}, {"page 4x slower, slow phone network", 4, slow}} {
		tb := open(t, trusting, phone)
		tb.origin = profile.server.URL
		if _, err := chromedp.Call(tb.ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: profile.cpu}); err != nil {
			t.Fatal(err)
		}
		tb.before(watchFirst)
		tb.goTo("/")
		firstVerdict := func() float64 {
			tb.until("the first verdict", `window.firstVerdict > 0`)
			return eval[float64](tb, `window.firstVerdict`)
		}
		cold := firstVerdict()
		tb.until("the changes that would do, the last part", `document.querySelector("#changes button")`)
		largest := eval[float64](tb, `window.largest`)
		tb.untilKept("solve") // the answers for the next visit
		tb.reload()
		warm := firstVerdict()
		tb.until("the changes that would do, the last part", `document.querySelector("#changes button")`)

		// From what a person does to the picture of what it means.
		took := func(does, done string) float64 {
			return eval[float64](tb, `new Promise((resolve) => {
				const start = performance.now();
				`+does+`;
				const look = () => ((`+done+`) ? setTimeout(() => resolve(performance.now() - start)) : requestAnimationFrame(look));
				requestAnimationFrame(look);
			})`)
		}
		idle := func() { tb.until("the answer kept", `document.documentElement.dataset.busy === "no"`) }
		verdict := `document.querySelector("#verdict").textContent` // which says a distance
		height := func(text string) float64 {
			defer idle()
			return took(`const field = document.querySelector("#strip-height"), was = `+verdict+`; field.value = "`+text+`"; field.dispatchEvent(new Event("input", {bubbles: true}))`, verdict+` !== was`)
		}
		heights := func() float64 {
			var took []float64
			for inches := range 11 {
				eval[bool](tb, `new Promise((done) => setTimeout(() => done(true), 600))`) // as a person looks at it
				took = append(took, height(fmt.Sprintf("5 ft %d in", inches)))
			}
			slices.Sort(took)
			return took[len(took)/2]
		}
		typed := height("6 ft 2 in")
		moved := took(`const said = document.querySelector("#verdict-moving"), slider = document.querySelector("#strip-slide"); said.textContent = ""; slider.value = String(Number(slider.value) + 0.1); slider.dispatchEvent(new Event("input", {bubbles: true}))`,
			`said.textContent !== ""`)
		mapped := took(`document.querySelector("[data-sheet=stand]").click()`, `document.documentElement.dataset.sheet === "stand" && document.querySelector("#view-plan").dataset.busy === "no"`)
		tb.touch("#tab-swing")
		again := heights()
		eval[bool](tb, `((who) => { who.value = [...who.options].at(-1).value; return who.dispatchEvent(new Event("change", { bubbles: true })); })(document.querySelector("#strip-who"))`)
		tb.until("somebody new", `document.querySelector("#strip-who").value === "Visitor"`)
		idle()
		visitor := heights()
		eval[bool](tb, `(window.longest = 0, true)`)
		for _, one := range []string{"#tab-overhead", "#tab-ball", "#tab-stand", "#tab-swing", "#strip-open", "#stage-play", "#stage-play"} {
			tb.touch(one)
		}
		tb.touch("#strip-height")
		for _, key := range "5 ft 9 in" {
			tb.press(string(key))
		}
		longest := eval[float64](tb, `new Promise((done) => setTimeout(() => done(window.longest), 500))`)
		row := []string{profile.name}
		for _, ms := range []float64{largest, cold, warm, typed, moved, mapped, again, visitor, longest} {
			row = append(row, fmt.Sprintf("%.2f s", ms/1000))
		}
		lines = append(lines, strings.Join(row, " | ")+" ("+eval[string](tb, `window.slowest ?? ""`)+")")
	}
	fmt.Println(strings.Join(lines, "\n"))
}

// touch clicks the middle of an element. It is not found by its role: that would have the
// browser keep a tree of roles, which costs as much as an interaction.
func (tb *tab) touch(selector string) {
	tb.t.Helper()
	at := call[[2]float64](tb, tb.document(), `async function() {
		const el = this.querySelector(`+quote(selector)+`);
		el.scrollIntoView({block: "center", behavior: "instant"});
		await new Promise((done) => setTimeout(done, 700)); // as a person looks for it
		const r = el.getBoundingClientRect();
		return [r.left + r.width / 2, r.top + r.height / 2];
	}`)
	tb.do(chromedp.MouseClickXY(at[0], at[1]))
}

// watchScene keeps the memory of the scene's program where the page can see it.
const watchScene = `
	const instantiate = WebAssembly.instantiateStreaming;
	WebAssembly.instantiateStreaming = async (...given) => {
		const made = await instantiate(...given);
		window.sceneMemory = made.instance.exports.mem;
		return made;
	};`

// TestMeasureMemory plays the swing in the 3D scene, turns the view once a second and
// prints what memory the page and the scene's program have in the course of it. The page's is swept first; the program's never shrinks.
func TestMeasureMemory(t *testing.T) {
	if *measure == 0 {
		t.Skip("make bench measures")
	}
	tb := open(t, withGL, desktop)
	tb.before(watchScene)
	tb.goTo("/")
	tb.prefer("prefers-reduced-motion", "no-preference")
	tb.loadScene()
	taken := func() string {
		if _, err := chromedp.Call(tb.ctx, heapprofiler.CollectGarbage, cdp.Empty{}); err != nil {
			t.Fatal(err)
		}
		use, err := chromedp.Call(tb.ctx, runtime.GetHeapUsage, cdp.Empty{})
		if err != nil {
			t.Fatal(err)
		}
		const mega = 1e6
		return fmt.Sprintf("%.1f MB of the page, %.1f MB of the scene's program", (use.UsedSize+use.BackingStorageSize)/mega, eval[float64](tb, `frames[0].sceneMemory.buffer.byteLength`)/mega)
	}
	tb.until("the swing to play", `document.querySelector("#stage-play").innerText === "Pause"`)
	eval[bool](tb, `(setInterval(() => document.querySelector("[aria-label='Turn left']").click(), 1000), true)`)
	var lines []string
	for _, part := range []float64{0.1, 0.4, 0.5} { // of the time, one after another
		wait := part * measure.Seconds() * 1000
		eval[bool](tb, fmt.Sprintf(`new Promise((done) => setTimeout(() => done(true), %.0f))`, wait))
		lines = append(lines, taken())
	}
	fmt.Printf("memory while the scene plays and is turned for %v, after a tenth of it, at half of it and at its end:\n%s\n", *measure, strings.Join(lines, "\n"))
}
