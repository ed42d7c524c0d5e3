//go:build browser

package browsertest

import (
	"io/fs"
	"net/http/httptest"
	"os"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"wideberth/internal/site"
	"wideberth/internal/webbuild"
)

// edition is the built page with some files in place of its own, as a host has it
// after an update.
type edition struct {
	fs.FS
	mu  sync.Mutex
	own fstest.MapFS
}

func (e *edition) Open(name string) (fs.File, error) {
	e.mu.Lock()
	defer e.mu.Unlock()
	if f, err := e.own.Open(name); err == nil {
		if info, err := f.Stat(); err == nil && !info.IsDir() {
			return f, nil
		}
	}
	return e.FS.Open(name)
}

// publish puts files in place of the page's and lists them.
func (e *edition) publish(t *testing.T, files map[string]string) {
	t.Helper()
	own := fstest.MapFS{}
	for name, content := range files {
		own[name] = &fstest.MapFile{Data: []byte(content), ModTime: time.Now()}
	}
	e.mu.Lock()
	e.own = own
	e.mu.Unlock()
	list, err := webbuild.FileList(e)
	if err != nil {
		t.Fatal(err)
	}
	e.mu.Lock()
	e.own[webbuild.Files] = &fstest.MapFile{Data: list, ModTime: time.Now()}
	e.mu.Unlock()
}

// After a first visit the page works without a network: loaded anew, with maps,
// marks and scene, and its messages say what can be done. A newer version is told
// of and comes whole when the visitor takes it, and not before. A version that
// arrives torn is not taken.
func TestOffline(t *testing.T) {
	t.Parallel()
	host := &edition{FS: os.DirFS(publicDir)}
	host.publish(t, nil)
	handler := site.Handler(host)
	own := httptest.NewServer(handler)
	defer own.Close()
	tb := open(t, withGL, desktop)
	tb.origin = own.URL
	tb.without(tb.noWorker)
	tb.goTo(alone + "&sheet=room") // where no scene comes by itself
	tb.ready()
	waits := func() bool { // whether a version waits, once none is on its way
		t.Helper()
		return eval[bool](tb, `new Promise((done) => {
			const look = async () => {
				const r = await navigator.serviceWorker.getRegistration();
				if (r?.active?.state === "activated" && !r.installing) done(Boolean(r.waiting));
				else setTimeout(look, 50);
			};
			look();
		})`)
	}
	waits()
	tb.reload()
	tb.ready()
	if !eval[bool](tb, `navigator.serviceWorker.controller !== null`) {
		t.Fatal("the second visit is not answered by what was kept")
	}

	const title = "The page by another name"
	index, err := os.ReadFile(publicDir + "/index.html")
	if err != nil {
		t.Fatal(err)
	}
	strip, err := os.ReadFile(publicDir + "/form/strip.js")
	if err != nil {
		t.Fatal(err)
	}
	next := map[string]string{
		"index.html":    strings.Replace(string(index), "<h1>Wide Berth</h1>", "<h1>"+title+"</h1>", 1),
		"form/strip.js": string(strip) + "\nglobalThis.newer = true;\n",
	}
	if next["index.html"] == string(index) {
		t.Fatal("the title stands elsewhere now")
	}
	host.publish(t, next)
	torn := host.own["form/strip.js"]
	host.own["form/strip.js"] = &fstest.MapFile{Data: []byte("half of it"), ModTime: time.Now()}
	eval[bool](tb, `navigator.serviceWorker.getRegistration().then((r) => r.update()).then(() => true, () => true)`)
	if waits() || eval[bool](tb, `document.querySelector("#update") !== null`) {
		t.Fatal("a version that arrived torn is offered")
	}
	torn.ModTime = time.Now() // or a host would say that nothing changed
	host.own["form/strip.js"] = torn
	eval[bool](tb, `navigator.serviceWorker.getRegistration().then((r) => r.update()).then(() => true)`)
	tb.until("the newer version to be told of", `document.querySelector("#update")`)
	tb.axe("a newer version", "#update")
	old := func(when string) {
		t.Helper()
		if got := eval[string](tb, `document.querySelector("h1").innerText + typeof globalThis.newer`); got != "Wide Berthundefined" {
			t.Errorf("%s the page is %q, want the version from before, whole", when, got)
		}
	}
	tb.reload()
	tb.ready()
	old("loaded anew before it is taken")
	tb.until("it to be told of again", `document.querySelector("#update")`)
	tb.find("button", "Take it").click()
	tb.until("the newer version", `document.querySelector("h1").innerText === `+quote(title)+` && globalThis.newer === true`)
	tb.ready()
	if n := eval[int](tb, `caches.open("wide-berth").then((c) => c.keys()).then((all) => all.filter(({url}) => url.includes("form/strip.js")).length)`); n != 1 {
		t.Errorf("%d versions of a file are kept, want the one", n)
	}

	own.CloseClientConnections()
	own.Close()
	tb.reload()
	tb.ready()
	tb.openSheet("swing")
	tb.loadScene()
	tb.openSheet("stand")
	tb.comeToMarks()
	tb.openSheet("room")
	tb.openSheet("sure")
	tb.openSheet("swing")
	tb.find("button", "Plans").click()
	tb.until("the plans", `document.querySelector("#keep-dialog")?.open`)
	if got := eval[string](tb, `import("/app/again.js").then(({again}) => again())`); !strings.HasPrefix(got, "reload the page") {
		t.Errorf("without a network the page advises %q, and a reload works", got)
	}
}
