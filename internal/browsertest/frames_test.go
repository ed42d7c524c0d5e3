//go:build browser

package browsertest

import (
	"encoding/json"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"time"

	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// frames keeps the scripts' contexts of a tab: one for the page, one for each
// frame in it.
type frames struct {
	contexts map[string]bool // by their unique names
}

// listen follows the contexts as pages and frames come and go.
func (f *frames) listen(ev any) {
	switch ev := ev.(type) {
	case *runtime.EventExecutionContextCreated:
		var aux struct {
			IsDefault bool `json:"isDefault"`
		}
		if err := json.Unmarshal([]byte(ev.Context.AuxData), &aux); err == nil && aux.IsDefault {
			f.contexts[ev.Context.UniqueID] = true
		}
	case *runtime.EventExecutionContextDestroyed:
		delete(f.contexts, ev.ExecutionContextUniqueID)
	case *runtime.EventExecutionContextsCleared:
		clear(f.contexts)
	}
}

// frame is one frame of a tab's page: the context of its scripts.
type frame struct {
	tb *tab
	id string
}

// frame is the frame whose address matches a pattern, once it is there.
func (tb *tab) frame(pattern string) frame {
	tb.t.Helper()
	matches := regexp.MustCompile(pattern)
	for deadline := time.Now().Add(patience); time.Now().Before(deadline); {
		for _, id := range tb.contexts() {
			f := frame{tb, id}
			if address, err := f.run("location.href"); err == nil && matches.MatchString(address) {
				return f
			}
		}
	}
	tb.t.Fatalf("waited %v for a frame at %s", patience, pattern)
	return frame{}
}

// contexts are those of the page and its frames as they are now.
func (tb *tab) contexts() []string {
	tb.mu.Lock()
	defer tb.mu.Unlock()
	return slices.Collect(maps.Keys(tb.frames.contexts))
}

func (f frame) run(expression string) (string, error) {
	return chromedp.Run(f.tb.ctx, chromedp.Evaluate[string](expression, func(p *runtime.EvaluateParams) {
		p.UniqueContextID, p.AwaitPromise = f.id, new(true)
	}))
}

// text is the value of an expression in the frame, a text.
func (f frame) text(expression string) string {
	f.tb.t.Helper()
	v, err := f.run(expression)
	if err != nil {
		f.tb.t.Fatalf("evaluating %s in a frame: %v", short(expression), err)
	}
	return v
}

// until waits until an expression is true in the frame.
func (f frame) until(what, expression string) {
	f.tb.t.Helper()
	got := f.text(fmt.Sprintf(`new Promise((done) => {
		const end = Date.now() + %d;
		const look = () => { let v = false; try { v = %s; } catch {} if (v) done("yes"); else if (Date.now() > end) done(document.body.innerText); else setTimeout(look, 20); };
		look();
	})`, patience.Milliseconds(), expression))
	if got != "yes" {
		f.tb.t.Fatalf("waited %v for %s; the frame says %q", patience, what, short(got))
	}
}

// click presses what a selector finds in the frame.
func (f frame) click(selector string) {
	f.tb.t.Helper()
	f.text(`(document.querySelector(` + quote(selector) + `).click(), "")`)
}
