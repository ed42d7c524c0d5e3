//go:build browser

package browsertest

import (
	"context"
	"fmt"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/storage"
	"github.com/chromedp/chromedp"
)

// browser is one Chromium process, started when the first test wants it.
type browser struct {
	flags []chromedp.ExecAllocatorOption
	// warm names the programs whose machine code every tab after the first finds made.
	// Without any each tab starts as a first visit does, in a profile never used before.
	warm []string

	once    sync.Once
	ctx     context.Context
	cancels []context.CancelFunc
	err     error

	mu   sync.Mutex
	idle []*profile
}

// profile is what a person's browser keeps of a site, which one tab at a time uses.
// Chromium gives the pages of a profile one process, and a process compiles a program
// once for as long as any page holds it: half of what a page load costs. So a profile
// has a page besides that holds the programs, and is handed on from tab to tab, emptied
// of all but its cache of files.
type profile struct {
	ctx   context.Context // of the page that holds the programs
	close context.CancelFunc
}

func (b *browser) start() (context.Context, error) {
	b.once.Do(func() {
		options := append(chromedp.DefaultExecAllocatorOptions[:],
			chromedp.ExecPath(chromium),
			chromedp.NoSandbox, // the tests may run as root
			chromedp.Flag("headless", true),
			chromedp.Flag("disable-quic", true),
			chromedp.Flag("disable-component-update", true),
			chromedp.Flag("process-per-site", true),
			chromedp.WindowSize(1440, 900),
		)
		alloc, cancel := chromedp.NewExecAllocator(context.Background(), append(options, b.flags...)...)
		b.cancels = append(b.cancels, cancel)
		b.ctx, cancel = chromedp.NewContext(alloc)
		b.cancels = append(b.cancels, cancel)
		b.err = chromedp.Do(b.ctx)
	})
	return b.ctx, b.err
}

func (b *browser) stop() {
	for _, p := range b.idle {
		p.close()
	}
	for i := len(b.cancels) - 1; i >= 0; i-- {
		b.cancels[i]()
	}
}

// take hands out a profile that nobody uses.
func (b *browser) take() (*profile, error) {
	parent, err := b.start()
	if err != nil {
		return nil, fmt.Errorf("starting Chromium: %w", err)
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	if n := len(b.idle); n > 0 {
		p := b.idle[n-1]
		b.idle = b.idle[:n-1]
		return p, nil
	}
	p := new(profile)
	p.ctx, p.close = chromedp.NewContext(parent, chromedp.WithNewBrowserContext())
	if err := chromedp.Do(p.ctx, chromedp.Navigate(server.URL+"/build/build.json")); err != nil {
		return nil, err
	}
	for _, program := range b.warm {
		hold := fmt.Sprintf(`WebAssembly.compileStreaming(fetch("/build/%s.wasm")).then((program) => { (globalThis.held ??= []).push(program); return true; })`, program)
		if _, err := chromedp.Run(p.ctx, chromedp.Evaluate[bool](hold, chromedp.EvalAwaitPromise)); err != nil {
			return nil, fmt.Errorf("compiling %s: %w", program, err)
		}
	}
	return p, nil
}

// give takes a profile back whose tab of that origin is closed.
func (b *browser) give(t *testing.T, p *profile, origin string) {
	if len(b.warm) == 0 {
		p.close()
		return
	}
	if _, err := chromedp.Call(p.ctx, storage.ClearDataForOrigin, storage.ClearDataForOriginParams{Origin: origin, StorageTypes: "all"}); err != nil {
		t.Errorf("emptying a profile: %v", err)
		p.close()
		return
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	b.idle = append(b.idle, p)
}
