//go:build browser

package browsertest

import (
	"bytes"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A newcomer sees the whole first screen before the solver is there: the verdict, the
// swing, the changes that would do. What was known may be of another version: the solver
// has the last word.
func TestKnownFirst(t *testing.T) {
	t.Parallel()
	known, err := os.ReadFile(filepath.Join(publicDir, "build", "known.json"))
	if err != nil {
		t.Fatal(err)
	}
	other := bytes.ReplaceAll(known, []byte("Strikes"), []byte("Misses"))
	if bytes.Equal(known, other) {
		t.Fatal("the known verdict does not say Strikes")
	}
	arrives := make(chan struct{})
	host := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		switch filepath.Base(r.URL.Path) {
		case "solver.wasm":
			select {
			case <-arrives:
			case <-r.Context().Done():
			}
		case "known.json":
			w.Header().Set("Content-Type", "application/json")
			w.Write(other)
			return
		}
		server.Config.Handler.ServeHTTP(w, r)
	}))
	t.Cleanup(host.Close) // after the tab
	tb := open(t, noGL, desktop)
	tb.origin = host.URL
	tb.goTo("/")
	tb.ready()
	tb.until("the swing", `document.querySelector("#stage-root").dataset.ready === "yes"`)
	tb.until("the changes that would do", `document.querySelector("#changes button")`)
	headline := `document.querySelector("#verdict").innerText`
	if said := eval[string](tb, headline); !strings.HasPrefix(said, "Misses") {
		t.Errorf("without the solver the headline is %q, want the known one", said)
	}
	close(arrives)
	tb.until("the solver's own words", headline+`.startsWith("Strikes")`)
}

// untilKept waits until the last answers are kept in the browser, with a part in them.
func (tb *tab) untilKept(part string) {
	tb.t.Helper()
	eval[bool](tb, `(async () => {
		for (let kept = ""; !kept?.includes(`+quote(part)+`); await new Promise(requestAnimationFrame)) kept = await (await caches.match(new URL("last.json", location)))?.text();
		return true;
	})()`)
}

// Whoever comes again, to the link in the address or to nothing, sees the plan last worked
// on and its answer before the solver is there.
func TestKnownAgain(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, light)
	tb.typeInStrip("Height", "6 ft 1 in")
	tb.untilKept("1.8542")
	before := tb.answer()
	tb.before(`self.Worker = class extends EventTarget { postMessage() {} terminate() {} }`)
	for _, address := range []string{eval[string](tb, `location.pathname + location.hash`), "/"} {
		tb.goTo("/sw.js") // away from the page
		tb.goTo(address)
		tb.ready()
		if after := tb.answer(); after != before {
			t.Errorf("without the solver %.20q shows\n%s\nwant\n%s", address, after, before)
		}
	}
}
