//go:build browser

package browsertest

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

const (
	measuredSection = "The model beside measured swings"
	speedsGroup     = "Time and speed…"
	clubheadRow     = "Clubhead at impact driver"
)

// openMeasured opens the table of figures and one group of it, by keyboard, where they are
// not open.
func (tb *tab) openMeasured() {
	tb.t.Helper()
	for _, name := range []string{measuredSection, speedsGroup} {
		if summary := tb.find("DisclosureTriangle", name); !call[bool](tb, summary.object, `function() { return this.closest("details").open; }`) {
			tb.openSummary(name)
		}
		tb.until("the figures", `document.querySelectorAll(".sure-group").length > 0`)
	}
}

// openSummary goes to a summary and presses Enter.
func (tb *tab) openSummary(name string) {
	tb.t.Helper()
	call[bool](tb, tb.find("DisclosureTriangle", name).object, `function() { this.focus(); return true; }`)
	tb.press(kb.Enter)
}

// How sure this is, from the first who asks on.
func TestSureness(t *testing.T) {
	onePage(t, noGL, desktop, alone+"&sheet=sure",
		fact{"not fetched", surenessNotFetched},
		fact{"figures and sources", sureness},
		fact{"on a phone", surenessOnAPhone})
}

// Somebody who asks how sure this is reads what the model is and leaves out, and
// finds every measured figure with its source, the model's own and whether the
// two agree.
func sureness(t *testing.T, tb *tab) {
	told := tb.section("#sureness")
	for _, part := range []string{"256 swings", "Give or take", "A stumble", "bending of the shaft"} {
		if !strings.Contains(told, part) {
			t.Errorf("the section does not say %q", part)
		}
	}
	if strings.Contains(strings.ToLower(told), "safe") {
		t.Error("the section calls something safe")
	}

	tb.openMeasured()
	if summary := tb.section("#measured-wait"); !strings.Contains(summary, "comparisons") {
		t.Errorf("above the table stands %q, want how many figures are met", summary)
	}
	row := call[string](tb, tb.find("rowheader", clubheadRow).object, `function() { return this.closest("tr").innerText; }`)
	for _, part := range []string{"89.5\u00a0to 100.7\u00a0mph", "common practice", "100.6\u00a0mph", "Within"} {
		if !strings.Contains(row, part) {
			t.Errorf("the clubhead's row reads %q, want %q in it", row, part)
		}
	}
	if bare := eval[int](tb, `[...document.querySelectorAll(".sure-table tbody tr")].filter((tr) => !tr.querySelector(".sure-cite a")?.textContent || !tr.querySelector(".sure-says")?.textContent).length`); bare != 0 {
		t.Errorf("%d rows name no source or no agreement", bare)
	}

	for _, view := range []string{"from above", "along the target line", "facing the golfer"} {
		picture := call[string](tb, tb.find("image", "Seen "+view+": two recorded drivers over the band of the modelled family").object,
			`function() { return [...this.querySelectorAll("text")].map((t) => t.textContent).join(" "); }`)
		for _, part := range []string{"golfer 1", "golfer 2", "0.10 s", "ft "} {
			if !strings.Contains(picture, part) {
				t.Errorf("the picture seen %s says %q, want %q in it", view, picture, part)
			}
		}
	}

	address := eval[string](tb, "location.href")
	eval[bool](tb, `(document.querySelector(".sure-group[open] .sure-cite a").click(), true)`)
	if at := eval[string](tb, `document.activeElement.id`); !strings.HasPrefix(at, "source-") {
		t.Errorf("a citation leads to %q, want its source", at)
	}
	if now := eval[string](tb, "location.href"); now != address {
		t.Errorf("a citation changed the address to %q, which holds the plan", short(now))
	}

	tb.openSheet("room")
	tb.find("radio", "metres").click()
	tb.openSheet("sure")
	tb.until("metres a second", `document.querySelector(".sure-group[open]")?.innerText.includes("40\u00a0to 45\u00a0m/s")`)
	tb.axe("with the measured figures open", "#sureness")
}

// On a phone the table scrolls within the page.
func surenessOnAPhone(t *testing.T, tb *tab) {
	tb.resize(phone)
	tb.openMeasured()
	tb.find("rowheader", clubheadRow)
	if over := tb.sideways(); over > 0 {
		t.Errorf("the page is %d px too wide; the widest: %s", over, tb.widest())
	}
	tb.axe("with the measured figures open on a phone", "#sureness")
	tb.resize(desktop)
}

// The figures are fetched once somebody asks for them. Such as do not arrive leave a
// sentence that says what to do, and it works.
func surenessNotFetched(t *testing.T, tb *tab) {
	tb.openSheet("sure")
	if fetched := eval[bool](tb, `performance.getEntriesByType("resource").some((r) => /\/sure\.json|\/model\//.test(r.name))`); fetched {
		t.Error("the figures are fetched before anybody asks for them")
	}
	eval[bool](tb, `(window.kept = window.fetch, window.fetch = () => Promise.reject(new TypeError("no network")), true)`)
	tb.openSummary(measuredSection)
	tb.until("a sentence about it", `document.querySelector("#measured-wait").innerText.startsWith("The figures could not be fetched")`)
	eval[bool](tb, `(window.fetch = window.kept, true)`)
	tb.openSummary(measuredSection) // closes it
	tb.openMeasured()
	tb.find("rowheader", clubheadRow)
}
