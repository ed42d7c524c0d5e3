//go:build browser

package browsertest

import (
	"flag"
	"fmt"
	"net/http/httptest"
	"os"
	"path/filepath"
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
	// withGL draws by software; noGL has WebGL switched off, and so has cold, where
	// each tab is a first visit.
	withGL = &browser{warm: []string{"solver", "scene"}, flags: []chromedp.ExecAllocatorOption{
		chromedp.Flag("use-angle", "swiftshader"),
		chromedp.Flag("enable-unsafe-swiftshader", true),
	}}
	noGL = &browser{warm: []string{"solver", "builder"}, flags: without3D}
	cold = &browser{flags: without3D}

	without3D = []chromedp.ExecAllocatorOption{chromedp.Flag("disable-3d-apis", true)}
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
	defer cold.stop()
	return m.Run(), nil
}
