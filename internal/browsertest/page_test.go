//go:build browser

package browsertest

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"wideberth/internal/link"
	"wideberth/internal/sim/plan"
)

// plansDir holds the plans that all tests share.
const plansDir = "../../testdata/plans"

// light opens the demonstration room with two of its players and their drivers only: a
// quarter of its swings, for tests that do not look at the others. Every page that is
// opened and every edit costs what its swings do.
var light = withDrivers(2, func(*plan.Plan) {})

// everybody opens it with the drivers of all players, the left-hander's too.
var everybody = withDrivers(len(plan.Demo().Players), func(*plan.Plan) {})

// alone opens it with one player, who is clear, for tests that load the page again and again.
var alone = withDrivers(1, func(*plan.Plan) {})

// hostile is the room with everybody's drivers, the longest names that nothing breaks, and with such as would
// be more than text if they could.
var hostile = withDrivers(len(plan.Demo().Players), func(p *plan.Plan) {
	long := func(letter string, name *string) { *name = strings.Repeat(letter, 40) }
	p.Title = strings.Repeat("W", 80)
	long("W", &p.Players[0].Name)
	p.Players[1].Name = markup
	p.Players[2].Name = "&amp;\"'`${1}]]></script>"
	long("M", &p.Clubs[0].Name)
	long("W", &p.Tees[0].Name)
	for i := range p.Room.Slopes {
		long(string(rune('M'+i)), &p.Room.Slopes[i].Name)
	}
	long("W", &p.Room.Solids[0].Name)
	long("G", &p.Hung[0].Name)
	long("W", &p.Seats[0].Name)
	long("W", &p.Floor.Layers[0].Name)
})

// markup is a name that would be a picture, and run a script.
const markup = `<img src=x onerror="alert(1)">`

// withDrivers is the address of the demonstration room with its first players and
// their drivers only, changed.
func withDrivers(players int, change func(p *plan.Plan)) string {
	p := plan.Demo()
	p.Clubs = p.Clubs[:1]
	p.Players = p.Players[:players]
	for i := range p.Players {
		p.Players[i].Clubs = nil
	}
	change(&p)
	checked, err := plan.Parse(p.JSON())
	if err != nil {
		panic(err) // the demonstration's own clubs are checked by its package
	}
	address, err := link.Encode(checked)
	if err != nil {
		panic(err)
	}
	return "/" + address
}

// openPage opens the page at a path and waits for its first answer.
func openPage(t *testing.T, b *browser, view size, path string) *tab {
	t.Helper()
	tb := open(t, b, view)
	tb.goTo(path)
	tb.ready()
	return tb
}

// ready waits for the first answer after a load.
func (tb *tab) ready() {
	tb.t.Helper()
	tb.until("the first answer", `document.documentElement.dataset.state === "ready" && document.documentElement.dataset.busy === "no"`)
	tb.until("the cards", `document.documentElement.dataset.audience === "friend" || document.querySelector("#cards").childElementCount > 0`)
}

// openPlan gives the page a plan file, as its "Open plan file" button does, and
// waits until the page says that it is open.
func (tb *tab) openPlan(file string) {
	tb.t.Helper()
	path, err := filepath.Abs(file)
	if err != nil {
		tb.t.Fatal(err)
	}
	tb.do(chromedp.SetUploadFiles(chromedp.CSS("#open-file"), []string{path}))
	tb.untilNotice(filepath.Base(file) + " is open")
	tb.until("the answer", `document.documentElement.dataset.busy === "no"`)
}

// openText is openPlan for a plan given as text.
func (tb *tab) openText(name, json string) {
	tb.t.Helper()
	file := filepath.Join(tb.t.TempDir(), name)
	if err := os.WriteFile(file, []byte(json), 0o644); err != nil {
		tb.t.Fatal(err)
	}
	tb.do(chromedp.SetUploadFiles(chromedp.CSS("#open-file"), []string{file}))
}

// verdict is the sentence at the top.
func (tb *tab) verdict() string {
	tb.t.Helper()
	return eval[string](tb, `document.querySelector("#verdict").textContent.trim()`)
}

// notice is what the page says about the last thing done.
func (tb *tab) notice() string {
	tb.t.Helper()
	return eval[string](tb, `document.querySelector("#notice").innerText.trim()`)
}

func (tb *tab) untilNotice(part string) {
	tb.t.Helper()
	tb.until(fmt.Sprintf("the notice %q", part), `document.querySelector("#notice").innerText.includes(`+quote(part)+`)`)
}

// untilVerdict waits until the sentence holds each of the parts.
func (tb *tab) untilVerdict(parts ...string) string {
	tb.t.Helper()
	var tests []string
	for _, part := range parts {
		tests = append(tests, `document.querySelector("#verdict").textContent.includes(`+quote(part)+`)`)
	}
	tb.until(fmt.Sprintf("a verdict with %q", parts), strings.Join(tests, " && "))
	return tb.verdict()
}

// answer is everything that the page says about the plan, as text: sentence,
// details, surfaces and the table of everyone.
func (tb *tab) answer() string {
	tb.t.Helper()
	return eval[string](tb, `["#verdict", "#matrix", "#surfaces", "#verdict-detail"].map((s) => document.querySelector(s).textContent).join("\n")`)
}

// cell is one check as the table of everyone shows it.
type cell struct {
	Player, Club, Tee, Verdict string
}

func (tb *tab) cells() []cell {
	tb.t.Helper()
	return eval[[]cell](tb, `[...document.querySelectorAll("#matrix button")].map((b) => {
		const [Player, Club, Tee] = JSON.parse(b.dataset.key);
		return {Player, Club, Tee, Verdict: b.dataset.verdict};
	})`)
}

// sideways is how many CSS pixels the page is wider than its window.
func (tb *tab) sideways() int {
	tb.t.Helper()
	return eval[int](tb, `document.documentElement.scrollWidth - document.documentElement.clientWidth`)
}

// top scrolls to the top of the page, at once.
func (tb *tab) top() {
	tb.t.Helper()
	eval[bool](tb, `(scrollTo({top: 0, behavior: "instant"}), true)`)
	tb.until("the top of the page", `scrollY === 0`)
}

// showVerdict scrolls to the verdict, where the short answer at the foot of the
// window goes away; on other sheets to the end, where it lies below everything.
func (tb *tab) showVerdict() {
	tb.t.Helper()
	if eval[string](tb, `document.documentElement.dataset.sheet ?? ""`) != "swing" {
		eval[bool](tb, `(scrollTo({top: document.documentElement.scrollHeight, behavior: "instant"}), true)`)
		return
	}
	eval[bool](tb, `(document.querySelector("#verdict-box").scrollIntoView({block: "center", behavior: "instant"}), true)`)
	tb.until("the bar at the foot to go", `document.querySelector("#peek").hidden`)
}
