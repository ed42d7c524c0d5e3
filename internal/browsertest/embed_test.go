//go:build browser

package browsertest

import (
	"bytes"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"wideberth/internal/picture"
	"wideberth/internal/sim/plan"
	"wideberth/internal/site"
	"wideberth/internal/solver/protocol"
)

// blog is a server that counts what it sends, heads of answers left out.
type blog struct {
	*httptest.Server
	sent atomic.Int64 // bytes
}

type counted struct {
	http.ResponseWriter
	sent *atomic.Int64
}

func (c counted) Write(b []byte) (int, error) {
	c.sent.Add(int64(len(b)))
	return c.ResponseWriter.Write(b)
}

// blogServer serves the page with the sample blog beside it, and the poster of the
// blog's garage as the command draws it.
func blogServer(t *testing.T) *blog {
	t.Helper()
	root, err := os.OpenRoot(publicDir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	text, err := os.ReadFile(filepath.Join(plansDir, "narrow.json"))
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	answer, err := picture.Ask(p, protocol.Focus{})
	if err != nil {
		t.Fatal(err)
	}
	mux := http.NewServeMux()
	mux.Handle("/", site.Handler(root.FS()))
	mux.Handle("/bare/", http.StripPrefix("/bare", http.FileServerFS(root.FS()))) // without a header more than needed
	mux.Handle("/blog/", http.StripPrefix("/blog/", http.FileServer(http.Dir("../../testdata/blog"))))
	for name, dark := range map[string]bool{"garage.svg": false, "garage-dark.svg": true} {
		drawn := picture.Draw(answer, picture.Options{View: picture.Elevation, Dark: dark}).SVG()
		mux.HandleFunc("/posters/"+name, func(w http.ResponseWriter, r *http.Request) {
			http.ServeContent(w, r, name, time.Time{}, bytes.NewReader(drawn))
		})
	}
	s := new(blog)
	s.Server = httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) { mux.ServeHTTP(counted{w, &s.sent}, r) }))
	t.Cleanup(s.Close)
	return s
}

// mostBeforeTap is what a visitor transfers for a page with embeds that nobody taps,
// bytes; ours is served as it lies there, without compression of its styles.
const mostBeforeTap = 60_000

// mostToPaste is how long the lines for an iframe may be that carry their poster,
// characters: an address of this length is nothing to a browser.
const mostToPaste = 12_000

// A build blog with three embeds in sandboxes, as its readers use it: posters at once
// and for little, the swing on a tap, the reader's own answer, one playing at a time.
func TestEmbed(t *testing.T) {
	t.Parallel()
	s := blogServer(t)
	tb := open(t, noGL, phone)
	tb.origin = s.URL
	tb.prefer("prefers-reduced-motion", "no-preference")
	tb.goTo("/blog/")
	tb.until("the heights that the embeds ask for", `[...document.querySelectorAll("iframe")].every((one) => one.style.height)`)
	loft, garage, shed := tb.frame(`/embed.html$`), tb.frame(`poster=garage`), tb.frame(`/embed.html#`)
	loft.until("its poster", `document.querySelector("#poster img").naturalWidth > 0`)
	garage.until("its poster", `document.querySelector("#poster img").currentSrc.endsWith("/posters/garage.svg") && document.querySelector("#poster img").naturalWidth > 0`)
	if said := shed.text(`document.querySelector("#poster").textContent`); said != "Nobody has swung here yet." {
		t.Errorf("an embed without a poster says %q", said)
	}
	before := s.sent.Load()
	t.Logf("%d bytes before a tap", before)
	if before > mostBeforeTap || before == 0 {
		t.Errorf("%d bytes are transferred before a tap, want at most %d", before, mostBeforeTap)
	}
	tb.shootFrames("embed-poster")

	garage.click("#swing")
	garage.until("the swing", `document.documentElement.dataset.state === "ready"`)
	if said := garage.text(`document.querySelector("#verdict").textContent`); !strings.Contains(said, "Strikes: 5 of 6.") || !strings.Contains(said, "left wall") {
		t.Errorf("the garage's embed says %q, want what its poster says", said)
	}
	garage.until("it to play", `document.querySelector("#swing").textContent === "Pause"`)
	first := s.sent.Load() - before

	shed.click("#swing")
	shed.until("the swing", `document.querySelector("#swing").textContent === "Pause"`)
	garage.until("its rest while another plays", `document.querySelector("#swing").textContent === "Swing"`)
	second := s.sent.Load() - before - first
	if t.Logf("%d bytes for the first tap, %d for the second", first, second); second > first/20 || first < 500_000 {
		t.Errorf("the second embed transfers %d bytes after %d for the first, want those to be shared", second, first)
	}

	shed.text(`(() => { const field = document.querySelector("#height"); field.focus(); field.value = "1.2 km"; field.dispatchEvent(new Event("input")); return ""; })()`)
	shed.until("a sentence about the height", `document.querySelector("#height").getAttribute("aria-invalid") === "true" && document.querySelector("#told").textContent.includes("1.2 km")`)
	shed.text(`(() => { const field = document.querySelector("#height"); field.value = "1.60 m"; field.dispatchEvent(new Event("input")); return ""; })()`)
	shed.until("the visitor's answer", `document.querySelector("#verdict").textContent.includes("Visitor")`)
	if said := shed.text(`document.querySelector("#verdict").textContent`); strings.Contains(said, "Left-handed friend") {
		t.Errorf("the visitor's answer is %q, want it to be of the visitor alone", said)
	}
	tb.shootFrames("embed-swing")
}

// shootFrames writes the whole page, when asked to.
func (tb *tab) shootFrames(name string) {
	tb.t.Helper()
	if *shots == "" {
		return
	}
	whole, err := chromedp.Run(tb.ctx, chromedp.FullScreenshot(100))
	if err == nil {
		err = os.MkdirAll(*shots, 0o755)
	}
	if err == nil {
		err = os.WriteFile(filepath.Join(*shots, name+".png"), whole, 0o644)
	}
	if err != nil {
		tb.t.Fatal(err)
	}
}

// The embed by itself at the widths that pages give it, by day and by lamplight: it
// fits, before and after the tap, and the accessibility checker finds nothing.
func TestEmbedFits(t *testing.T) {
	t.Parallel()
	t.Run("without scripts", func(t *testing.T) {
		tb := open(t, noGL, phone)
		if _, err := chromedp.Call(tb.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true}); err != nil {
			t.Fatal(err)
		}
		tb.goTo("/embed.html")
		tb.until("the demonstration's poster", `document.querySelector("noscript img").naturalWidth > 0`)
		if words := tb.glance(); !strings.Contains(words, "another one needs JavaScript") || strings.Contains(words, "Swing it") {
			t.Errorf("without scripts the embed says %q", words)
		}
	})
	for _, look := range []struct {
		width  int64
		scheme string
	}{{280, "light"}, {480, "dark"}, {760, "light"}} {
		if look.scheme == "dark" || look.width == 280 || *shots != "" {
			name := fmt.Sprintf("%d-%s", look.width, look.scheme)
			t.Run(name, func(t *testing.T) {
				tb := open(t, noGL, size{name, look.width, 900})
				tb.prefer("prefers-color-scheme", look.scheme)
				tb.goTo("/embed.html")
				tb.until("the poster", `document.querySelector("#poster img").naturalWidth > 0`)
				if dark := strings.HasSuffix(eval[string](tb, `document.querySelector("#poster img").currentSrc`), "-dark.svg"); dark != (look.scheme == "dark") {
					t.Errorf("the poster by lamplight: %v", dark)
				}
				for _, state := range []string{"poster", "swing"} {
					if state == "swing" {
						eval[bool](tb, `(document.querySelector("#swing").click(), true)`)
						tb.until("the swing", `document.documentElement.dataset.state === "ready"`)
						if playing := eval[string](tb, `document.querySelector("#swing").textContent`); playing != "Swing" {
							t.Errorf("with reduced motion the button says %q, want the swing to rest", playing)
						}
					}
					if over := tb.sideways(); over > 0 {
						t.Errorf("%s: the embed is %d px too wide; the widest: %s", state, over, tb.widest())
					}
					tb.axe(state)
					tb.top()
					tb.shootFrames("embed-" + state + "-" + name)
				}
			})
		}
	}
}

// The dialog that makes an embed: the lines to paste open the room as it is, the
// poster says what the page says, and the previews show it.
func TestShareEmbed(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, light)
	tb.find("button", "Share").click()
	tb.find("button", "Embed this room").click()
	tb.until("the previews", `document.querySelectorAll("dialog[open] iframe").length === 3`)
	narrow := tb.frame(`/embed.html`)
	narrow.until("its poster", `document.querySelector("#poster img").src.startsWith("blob:") && document.querySelector("#poster img").naturalWidth === 480`)
	lines := eval[string](tb, `document.querySelector("#embed-text").value`)
	link := "#p=" + eval[string](tb, `new URLSearchParams(location.hash.slice(1)).get("p")`)
	if want := tb.origin + "/embed.html" + link + "&amp;poster="; !strings.Contains(lines, want) {
		t.Errorf("the lines to paste are %q, want %q in them", lines, want)
	}
	if t.Logf("%d characters to paste", len(lines)); len(lines) > mostToPaste {
		t.Errorf("%d characters to paste, want at most %d", len(lines), mostToPaste)
	}
	eval[bool](tb, `(document.querySelector("#embed-beside").click(), true)`)
	if lines = eval[string](tb, `document.querySelector("#embed-text").value`); !strings.Contains(lines, tb.origin+"/embed.html?poster=carriage-house-loft"+link+`"`) {
		t.Errorf("with a poster beside the page the lines are %q", lines)
	}
	verdict := eval[string](tb, `document.querySelector(".verdict-sentence").textContent.trim()`)
	if poster := eval[string](tb, `[...document.querySelectorAll(".poster > text")].map((one) => one.textContent).join(" ")`); !strings.Contains(poster, verdict) {
		t.Errorf("the poster says %q, want %q in it", poster, verdict)
	}
	tb.axe("the dialog of the embed", "dialog[open]")
	tb.shootFrames("share-embed")
}

// A page in a sandbox has no origin. Where the host lets anybody fetch, it answers all
// the same; where it does not, page and embed say in a sentence what to do.
func TestSandbox(t *testing.T) {
	t.Parallel()
	s := blogServer(t)
	tb := open(t, noGL, phone)
	tb.origin = s.URL
	tb.goTo("/blog/sandbox.html")
	page, bare, embed := tb.frame(`\d/\?page`), tb.frame(`/bare/\?page`), tb.frame(`/bare/embed`)
	bare.until("a sentence", `document.querySelector("#verdict-wait").textContent.includes("Open the page by itself.")`)
	embed.until("the poster", `document.querySelector("#poster img").naturalWidth > 0`)
	embed.click("#swing")
	embed.until("a sentence", `document.querySelector("main [role=alert]").textContent.includes("The whole page has it.")`)
	page.until("the answer", `document.querySelector("#verdict").textContent.includes("Strikes")`)
	page.until("the drawings and the maps' solver", `document.querySelector("#changes button")`)
	tb.mu.Lock()
	defer tb.mu.Unlock()
	tb.console = slices.DeleteFunc(tb.console, func(line string) bool {
		return strings.Contains(line, "/bare/") && (strings.Contains(line, "blocked by CORS policy") || strings.Contains(line, "net::ERR_FAILED"))
	})
}
