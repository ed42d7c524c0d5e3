//go:build browser

package browsertest

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// patience is how long a tab waits for a signal. It is a generous bound for a
// loaded machine, not an expectation.
const patience = 120 * time.Second

// size is a viewport in CSS pixels.
type size struct {
	name          string
	width, height int64
}

var (
	desktop = size{"desktop", 1440, 900}
	tablet  = size{"tablet", 820, 1180}
	phone   = size{"phone", 390, 844}
)

// tab is one page in a profile of its own.
type tab struct {
	t        *testing.T
	ctx      context.Context
	origin   string                // where its pages are served: whom they may ask
	noWorker page.ScriptIdentifier // what keeps pages from being kept
	noSteps  page.ScriptIdentifier // what tells them that their visitor has been there

	mu       sync.Mutex
	frames   frames
	media    map[string]string // media features that are set
	console  []string          // errors, warnings and exceptions, as they came
	requests []string          // addresses asked for
}

// open starts an empty tab. When the test ends, anything on its console and any
// request to somewhere else fails it.
func open(t *testing.T, b *browser, view size) *tab {
	t.Helper()
	own, err := b.take()
	if err != nil {
		t.Fatal(err)
	}
	var tb *tab
	t.Cleanup(func() { b.give(t, own, tb.origin) })
	tb = openIn(t, own.ctx, view)
	return tb
}

// openIn starts an empty tab in the profile of another.
func openIn(t *testing.T, other context.Context, view size) *tab {
	t.Helper()
	tb := &tab{t: t, origin: server.URL, frames: frames{contexts: map[string]bool{}}, media: map[string]string{}}
	ctx, cancel := chromedp.NewContext(other, chromedp.WithListener(tb.listen))
	t.Cleanup(cancel)
	ctx, cancelTimeout := context.WithTimeout(ctx, 12*time.Minute+*measure+time.Duration(*posted)*10*time.Millisecond)
	t.Cleanup(cancelTimeout)
	tb.ctx = ctx
	t.Cleanup(tb.checkManners)
	tb.resize(view)
	// Each tab has a profile of its own, and to keep the page it would fetch all of it:
	// TestOffline alone lets it.
	tb.noWorker = tb.before("delete Navigator.prototype.serviceWorker")
	tb.noSteps = tb.before(`try { localStorage.setItem("wide-berth.steps", "seen"); } catch {}`)
	// A swing that plays costs a core in every tab: tests that want it ask for it.
	tb.prefer("prefers-reduced-motion", "reduce")
	return tb
}

// resize gives the tab's window another size.
func (tb *tab) resize(view size) {
	tb.t.Helper()
	tb.do(chromedp.EmulateViewport(view.width, view.height))
}

// before has every page run a script before its own.
func (tb *tab) before(script string) page.ScriptIdentifier {
	tb.t.Helper()
	added, err := chromedp.Call(tb.ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: script})
	if err != nil {
		tb.t.Fatal(err)
	}
	return added.Identifier
}

// withhold has requests for these files fail from now on, and for no others.
func (tb *tab) withhold(files ...string) {
	tb.t.Helper()
	var blocked []*network.BlockPattern
	for _, file := range files {
		blocked = append(blocked, &network.BlockPattern{URLPattern: tb.origin + "/" + file, Block: true})
	}
	if _, err := chromedp.Call(tb.ctx, network.SetBlockedURLs, network.SetBlockedURLsParams{URLPatterns: blocked}); err != nil {
		tb.t.Fatal(err)
	}
}

// without takes such a script away.
func (tb *tab) without(script page.ScriptIdentifier) {
	tb.t.Helper()
	if _, err := chromedp.Call(tb.ctx, page.RemoveScriptToEvaluateOnNewDocument, page.RemoveScriptToEvaluateOnNewDocumentParams{Identifier: script}); err != nil {
		tb.t.Fatal(err)
	}
}

func (tb *tab) listen(ev any) {
	tb.mu.Lock()
	defer tb.mu.Unlock()
	tb.frames.listen(ev)
	switch ev := ev.(type) {
	case *runtime.EventConsoleAPICalled:
		if ev.Type == "error" || ev.Type == "warning" || ev.Type == "assert" {
			var words []string
			for _, arg := range ev.Args {
				words = append(words, strings.Trim(string(arg.Value), `"`)+arg.Description)
			}
			tb.console = append(tb.console, fmt.Sprintf("console.%s: %s", ev.Type, strings.Join(words, " ")))
		}
	case *runtime.EventExceptionThrown:
		text := ev.ExceptionDetails.Text
		if ev.ExceptionDetails.Exception != nil {
			text += " " + ev.ExceptionDetails.Exception.Description
		}
		tb.console = append(tb.console, "exception: "+text)
	case *log.EventEntryAdded:
		if ev.Entry.Level == "error" || ev.Entry.Level == "warning" {
			tb.console = append(tb.console, fmt.Sprintf("browser %s: %s %s", ev.Entry.Level, ev.Entry.Text, ev.Entry.URL))
		}
	case *network.EventRequestWillBeSent:
		tb.requests = append(tb.requests, ev.Request.URL)
	}
}

// harmless are console lines that say something about the machine the tests run
// on and nothing about the page.
var harmless = []string{
	"GPU stall due to ReadPixels",                           // software rendering, when a screenshot is taken
	"Automatic fallback to software WebGL",                  // the flags say so
	"GL Driver Message (OpenGL, Performance, GL_CLOSE",      // the same stall by its other name
	"does not match the recipient window's origin ('null')", // the accessibility checker asks after a frame in a sandbox
	"net::ERR_BLOCKED_BY_CLIENT",                            // withheld by the test
	"/favicon.ico",                                          // of a file that is opened as if it were a page
}

// checkManners fails the test for what the page did that no page should since it was
// last looked at.
func (tb *tab) checkManners() {
	tb.mu.Lock()
	defer tb.mu.Unlock()
	defer func() { tb.requests, tb.console = nil, nil }()
	for _, address := range tb.requests {
		// A frame in a sandbox has no origin: what it makes itself comes from nobody.
		if !strings.HasPrefix(address, tb.origin) && !strings.HasPrefix(address, "blob:"+tb.origin) && !strings.HasPrefix(address, "blob:null/") {
			tb.t.Errorf("the page asked somebody else: %s", short(address))
		}
	}
lines:
	for _, line := range tb.console {
		for _, h := range harmless {
			if strings.Contains(line, h) {
				continue lines
			}
		}
		tb.t.Errorf("on the console: %s", line)
	}
}

// do runs actions; an error ends the test.
func (tb *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	tb.t.Helper()
	if err := chromedp.Do(tb.ctx, steps...); err != nil {
		tb.t.Fatal(err)
	}
}

// goTo opens an address of the site, path with its leading slash.
func (tb *tab) goTo(path string) {
	tb.t.Helper()
	tb.do(chromedp.Navigate(tb.origin + path))
}

// reload loads the page anew, as a person's F5.
func (tb *tab) reload() {
	tb.t.Helper()
	tb.do(chromedp.Reload())
}

// prefer sets a media feature such as prefers-color-scheme; others stay as they are.
func (tb *tab) prefer(feature, value string) {
	tb.t.Helper()
	tb.media[feature] = value
	var all []*emulation.MediaFeature
	for name, value := range tb.media {
		all = append(all, &emulation.MediaFeature{Name: name, Value: value})
	}
	if _, err := chromedp.Call(tb.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: all}); err != nil {
		tb.t.Fatal(err)
	}
}

// eval returns the value of a JavaScript expression; promises are awaited.
func eval[T any](tb *tab, expression string) T {
	tb.t.Helper()
	v, err := chromedp.Run(tb.ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	if err != nil {
		tb.t.Fatalf("evaluating %s: %v", short(expression), err)
	}
	return v
}

// until waits until the JavaScript expression is true. what says what it waits
// for. The page is asked in each of its frames, and no time is ever slept away.
func (tb *tab) until(what, expression string) {
	tb.t.Helper()
	ctx, cancel := context.WithTimeout(tb.ctx, patience)
	defer cancel()
	script := fmt.Sprintf(`new Promise((done) => {
		const look = () => { let v = false; try { v = %s; } catch {} if (v) done(true); else setTimeout(look, 20); };
		look();
	})`, expression)
	for {
		_, err := chromedp.Run(ctx, chromedp.Evaluate[bool](script, chromedp.EvalAwaitPromise))
		if err == nil {
			return
		}
		// A navigation throws the promise away; ask the new page.
		if ctx.Err() != nil {
			tb.t.Fatalf("waited %v for %s; the page says %q", patience, what, tb.glance())
		}
	}
}

// glance is what the page shows first, for messages about what went wrong.
func (tb *tab) glance() string {
	text, err := chromedp.Run(tb.ctx, chromedp.Evaluate[string](`(document.querySelector("main")?.innerText ?? document.body.innerText).slice(0, 400)`))
	if err != nil {
		return err.Error()
	}
	return text
}

// quote makes a JavaScript string of a text, or a list of several.
func quote[T string | []string](s T) string {
	b, err := json.Marshal(s)
	if err != nil {
		panic(err) // texts always have a JSON form
	}
	return string(b)
}

func short(s string) string {
	if len(s) > 120 {
		return s[:120] + "…"
	}
	return s
}

// call runs a JavaScript function with the element as this.
func call[T any](tb *tab, object runtime.RemoteObjectID, function string) T {
	tb.t.Helper()
	v, err := chromedp.Run(tb.ctx, chromedp.CallFunctionOn[T](function, func(p *runtime.CallFunctionOnParams) {
		p.ObjectID, p.AwaitPromise = object, new(true)
	}))
	if err != nil {
		tb.t.Fatalf("calling %s: %v", short(function), err)
	}
	return v
}

// in makes a subtest the one that the tab reports to, until it ends.
func (tb *tab) in(t *testing.T) {
	parent := tb.t
	tb.t = t
	t.Cleanup(func() { tb.t = parent })
}
