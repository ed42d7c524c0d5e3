//go:build browser

package browsertest

import (
	"context"
	"flag"
	"fmt"
	"net/http/httptest"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"github.com/chromedp/chromedp"

	"wideberth/internal/site"
)

const (
	publicDir = "../../public"
	chromium  = "/usr/lib/chromium/chromium-headless-shell" // Debian's package puts it there; make deps installs it
)

var (
	shots = flag.String("shots", "", "folder to write the screenshots of TestStates to")

	// server serves the built page as make run does.
	server *httptest.Server
	// withGL draws by software; noGL has WebGL switched off.
	withGL = &browser{flags: []chromedp.ExecAllocatorOption{
		chromedp.Flag("use-angle", "swiftshader"),
		chromedp.Flag("enable-unsafe-swiftshader", true),
	}}
	noGL = &browser{flags: []chromedp.ExecAllocatorOption{chromedp.Flag("disable-3d-apis", true)}}
)

func TestMain(m *testing.M) {
	flag.Parse()
	code, err := runAll(m)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		code = 1
	}
	os.Exit(code)
}

func runAll(m *testing.M) (int, error) {
	for _, file := range []string{"index.html", "build/solver.wasm", "build/scene.wasm"} {
		if _, err := os.Stat(filepath.Join(publicDir, file)); err != nil {
			return 0, fmt.Errorf("the page is not built, run make build first: %w", err)
		}
	}
	if _, err := os.Stat(chromium); err != nil {
		return 0, fmt.Errorf("no Chromium, run make deps first: %w", err)
	}
	root, err := os.OpenRoot(publicDir)
	if err != nil {
		return 0, err
	}
	defer root.Close()
	server = httptest.NewServer(site.Handler(root.FS()))
	defer server.Close()
	defer withGL.stop()
	defer noGL.stop()
	return m.Run(), nil
}

// browser is one Chromium process, started when the first test wants it.
type browser struct {
	flags []chromedp.ExecAllocatorOption

	once    sync.Once
	ctx     context.Context
	cancels []context.CancelFunc
	err     error
}

func (b *browser) start() (context.Context, error) {
	b.once.Do(func() {
		options := append(chromedp.DefaultExecAllocatorOptions[:],
			chromedp.ExecPath(chromium),
			chromedp.NoSandbox, // the tests may run as root
			chromedp.Flag("headless", true),
			chromedp.Flag("disable-quic", true),
			chromedp.Flag("disable-component-update", true),
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
	for i := len(b.cancels) - 1; i >= 0; i-- {
		b.cancels[i]()
	}
}
