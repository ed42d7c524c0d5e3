//go:build browser

package browsertest

import (
	"path/filepath"
	"strings"
	"testing"
)

// Somebody walks in, types height and driver length and reads the verdict. The
// room has an 8 ft ceiling. Common practice, no source: a 6 ft golfer with a
// 45 1/2 in driver strikes it; a child of 3 ft 8 with a 30 in club does not.
func visitorTyped(t *testing.T, tb *tab) {
	tb.openPlan(filepath.Join(plansDir, "low-ceiling.json"))
	tb.visitor(`6'0"`, "45 1/2 in")
	tall := tb.untilVerdict("Strikes", "Visitor")
	if !strings.Contains(tall, "ceiling") {
		t.Errorf("6'0\" with 45 1/2 in under 8 ft = %q, want the ceiling named", tall)
	}

	tb.typeInStrip("Height", "112 cm")
	tb.typeInStrip("Driver length", "30 in")
	child := tb.untilVerdict("Visitor", ": clear;")
	if !strings.HasPrefix(child, "Strikes: ") {
		t.Errorf("112 cm with 30 in under 8 ft = %q, want clear below a headline of those who strike", child)
	}

	tb.strip().find("button", "Remove").click()
	tb.until("the visitor to be gone", `!document.querySelector("#matrix").innerText.includes("Visitor") && !document.querySelector("#verdict").innerText.includes("Visitor")`)
}

// Whatever is chosen, the headline and the bar at the foot tell of everybody: here
// of the demonstration room, into which a child has come who is clear.
func headlineStays(t *testing.T, tb *tab) {
	tb.visitor("112 cm", "30 in")
	tb.untilVerdict("Visitor, Visitor's driver, middle tee: clear;")
	tb.until("the answer", `document.documentElement.dataset.busy === "no"`)
	worst := tb.headline()
	if !strings.HasPrefix(worst, "Strikes: ") || !strings.Contains(worst, " of 3. Worst: Tall guest with the driver.") {
		t.Errorf("with a clear check looked at, the headline = %q, want how many strike and who is worst", worst)
	}
	if got := eval[string](tb, `document.querySelector("#verdict-box").dataset.verdict + document.title`); !strings.HasPrefix(got, "strikesStrikes") {
		t.Errorf("sign and title say %q, want strikes", got)
	}
	bar := eval[string](tb, `document.querySelector("#peek").textContent`)
	if !strings.HasPrefix(bar, "Strikes: ") || !strings.HasSuffix(bar, "Visitor, Visitor's driver: clear.") {
		t.Errorf("the bar says %q, want the worst of everybody, then the visitor", bar)
	}

	eval[bool](tb, `([...document.querySelectorAll("#matrix button")].find((b) => b.dataset.verdict === "strikes").click(), true)`)
	tb.until("another check", `document.querySelector("#matrix button[data-verdict=strikes]").getAttribute("aria-pressed") === "true" && document.documentElement.dataset.busy === "no"`)
	if now := tb.headline(); now != worst {
		t.Errorf("with a strike looked at, the headline = %q, want %q", now, worst)
	}
}

// Without WebGL the answer and the drawings are complete, and the page says
// what is missing for the 3D view.
func withoutWebGL(t *testing.T, tb *tab) {
	if got := tb.verdict(); !strings.Contains(got, "Tall guest") {
		t.Errorf("the verdict = %q, want the worst check, the tall guest's", got)
	}
	for view, sheet := range map[string]string{"plan": "stand", "side": "ball"} {
		tb.openSheet(sheet)
		if parts := eval[int](tb, `document.querySelectorAll("#view-`+view+` .layer-figure .capsule").length`); parts < 10 {
			t.Errorf("the %s view has %d parts of the golfer, want a drawing", view, parts)
		}
	}
	tb.openSheet("swing")
	tb.showStage()
	blank := eval[[]string](tb, `[...document.querySelectorAll(".stage-view")].filter((view) => {
		const {data} = ((c) => c.getContext("2d").getImageData(0, 0, c.width, c.height))(view.querySelector("canvas:not(.stage-swept)"));
		return !data.some((v) => v > 0);
	}).map((view) => view.dataset.view)`)
	if len(blank) > 0 {
		t.Errorf("no golfer stands in %v", blank)
	}
	tb.until("the reason", `document.querySelector(".stage-note").innerText.includes("lacks WebGL 2")`)
	tb.find("button", "Show the 3D model").click()
	tb.until("the reason again", `document.querySelector(".stage-note").innerText.includes("lacks WebGL 2")`)
}
