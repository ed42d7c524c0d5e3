//go:build browser

package browsertest

import (
	"encoding/json"

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

// evalEverywhere runs a script in the page and in every frame of it.
func (tb *tab) evalEverywhere(script string) {
	tb.t.Helper()
	tb.mu.Lock()
	var ids []string
	for id := range tb.frames.contexts {
		ids = append(ids, id)
	}
	tb.mu.Unlock()
	for _, id := range ids {
		if err := chromedp.Do(tb.ctx, chromedp.Evaluate[chromedp.Void](script, func(p *runtime.EvaluateParams) {
			p.UniqueContextID = id
		})); err != nil {
			tb.t.Fatalf("running a script in a frame: %v", err)
		}
	}
}
