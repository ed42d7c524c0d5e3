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
	"github.com/chromedp/chromedp/kb"
)

var measure = flag.Duration("measure", 0, "how long TestMeasure plays the swing for its look at memory; without it nothing is measured")

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
	new PerformanceObserver((list) => { for (const e of list.getEntries()) window.longest = Math.max(window.longest, e.duration); }).observe({type: "event", durationThreshold: 16, buffered: true});
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
	columns := []string{"profile", "largest paint", "first verdict", "again, warm", "typed value", "moved tee", "map", "longest interaction"}
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
		typed := took(`const field = document.querySelector("#strip-height"), was = location.hash; field.value = "6 ft 2 in"; field.dispatchEvent(new Event("input", {bubbles: true}))`,
			`document.documentElement.dataset.busy === "no" && location.hash !== was`)
		moved := took(`const said = document.querySelector("#verdict-moving"), slider = document.querySelector("#strip-slide"); said.textContent = ""; slider.value = String(Number(slider.value) + 0.1); slider.dispatchEvent(new Event("input", {bubbles: true}))`,
			`said.textContent !== ""`)
		mapped := took(`document.querySelector("[data-sheet=stand]").click()`, `document.documentElement.dataset.sheet === "stand" && document.querySelector("#view-plan").dataset.busy === "no"`)
		eval[bool](tb, `(window.longest = 0, true)`)
		for _, sheet := range []string{"Overhead", "Ball", "Stand", "Swing"} {
			tb.find("tab", sheet).click()
		}
		tb.press(kb.Tab)
		tb.find("button", "Change").click()
		tb.find("button", "Play").click()
		tb.find("button", "Pause").click()
		longest := eval[float64](tb, `new Promise((done) => setTimeout(() => done(window.longest), 500))`)
		row := []string{profile.name}
		for _, ms := range []float64{largest, cold, warm, typed, moved, mapped, longest} {
			row = append(row, fmt.Sprintf("%.2f s", ms/1000))
		}
		lines = append(lines, strings.Join(row, " | "))
	}
	fmt.Println(strings.Join(lines, "\n"))
	fmt.Println(measureMemory(t))
}

// measureMemory plays the swing in the 3D scene and compares the page's heap, swept,
// after a tenth of the time and at its end.
func measureMemory(t *testing.T) string {
	tb := openPage(t, withGL, desktop, light)
	tb.prefer("prefers-reduced-motion", "no-preference")
	tb.loadScene()
	heap := func() float64 {
		if _, err := chromedp.Call(tb.ctx, heapprofiler.CollectGarbage, cdp.Empty{}); err != nil {
			t.Fatal(err)
		}
		use, err := chromedp.Call(tb.ctx, runtime.GetHeapUsage, cdp.Empty{})
		if err != nil {
			t.Fatal(err)
		}
		return (use.UsedSize + use.BackingStorageSize) / 1e6
	}
	tb.until("the swing to play", `document.querySelector("#stage-play").innerText === "Pause"`)
	wait := func(d time.Duration) {
		eval[bool](tb, fmt.Sprintf(`new Promise((done) => setTimeout(() => done(true), %d))`, d.Milliseconds()))
	}
	wait(*measure / 10)
	early := heap()
	wait(*measure * 9 / 10)
	return fmt.Sprintf("memory of the page while the scene plays for %v: %.1f MB after a tenth of it, %.1f MB at its end", *measure, early, heap())
}
