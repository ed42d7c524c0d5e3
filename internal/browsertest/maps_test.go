//go:build browser

package browsertest

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// untilMap waits until the map that is open is that of the plan shown.
func (tb *tab) untilMap() {
	tb.t.Helper()
	tb.until("the map", settled+` && document.querySelector("#view-plan").dataset.busy === "no"`)
}

// comeToMarks scrolls to where everyone stands and waits until it is worked out.
func (tb *tab) comeToMarks() {
	tb.t.Helper()
	tb.openSheet("stand")
	eval[bool](tb, `(document.querySelector("#marks").scrollIntoView({behavior: "instant"}), true)`)
	tb.until("the standing marks", `document.querySelector("#marks").dataset.busy === "no" && document.querySelector("#marks-list button")`)
}

// shown is the text on the paper of the plan.
func (tb *tab) shown() string {
	tb.t.Helper()
	return eval[string](tb, `[...document.querySelectorAll("#view-plan .map-label")].map((e) => e.textContent).join("; ")`)
}

// What the three maps say, and how tees, things and seats are put on them.
func TestMaps(t *testing.T) {
	onePage(t, noGL, desktop, light+"&sheet=stand",
		fact{"by name", mapsAreNamed},
		fact{"drag the tee", dragTee},
		fact{"the golfer follows the tee", golferFollowsTee},
		fact{"hang a thing", hangAThing},
		fact{"what may hang", hangMap},
		fact{"where to watch", watchMap},
		fact{"seats", seatsBesideTheMap},
		fact{"where to stand", standMap})
}

// What is offered to make a room fit, and rooms that somebody may start from.
func TestChanges(t *testing.T) {
	onePage(t, noGL, desktop, light+"&sheet=room",
		fact{"rooms to start from", startingRooms},
		fact{"remedies of a check", remedyButtons})
}

// The map of where to stand says in words and lines what it draws. Moved by keys
// the tee reads another clearance at once; let go, it is in the address.
func standMap(t *testing.T, tb *tab) {
	tb.openPlan(filepath.Join(plansDir, "clear-room.json"))
	tb.openSheet("stand")
	if got := tb.section(".map-summary"); !strings.HasPrefix(got, "Most room for everybody: the tee ") {
		t.Errorf("the summary = %q, want the best place", got)
	}
	if got := tb.shown(); !strings.Contains(got, "clear by ") || !strings.Contains(got, "best") {
		t.Errorf("the map says %q, want its lines and the best place named", got)
	}
	if got := eval[string](tb, `document.querySelector("#view-plan svg.view").getAttribute("aria-label")`); !strings.Contains(got, "Most room for everybody") {
		t.Errorf("the drawing's text alternative = %q, want what the map says", got)
	}
	tb.axe("where to stand", "#map-panel", "#view-plan")

	address := eval[string](tb, "location.hash")
	before := tb.section(".map-reading")
	field := tb.find("spinbutton", "Tee, from the right wall")
	was := field.value()
	field.click()
	for range 5 {
		tb.do(chromedp.KeyEvent(kb.ArrowDown, chromedp.KeyModifiers(chromedp.ModifierShift)))
	}
	tb.until("another reading", `document.querySelector(".map-reading").innerText !== `+quote(before))
	tb.until("another address", `location.hash !== `+quote(address))
	tb.untilMap()
	if now := tb.find("spinbutton", "Tee, from the right wall").value(); now == was {
		t.Errorf("the field still reads %q", now)
	}

	tb.find("button", "Undo").click()
	tb.until("the old address", `location.hash === `+quote(address))
	tb.untilMap()
	tb.find("button", "Put the tee here for everybody…").click()
	tb.until("another address", `location.hash !== `+quote(address))
}

// With the mouse the tee is dragged on the drawing itself.
func dragTee(t *testing.T, tb *tab) {
	tb.openSheet("stand")
	address := eval[string](tb, "location.hash")
	before := tb.section(".map-reading")
	at := tb.middle(".handle-tee .handle-ring")
	tb.do(
		chromedp.MouseEvent("mouseMoved", at[0], at[1]),
		chromedp.MouseEvent("mousePressed", at[0], at[1], chromedp.ButtonLeft),
		chromedp.MouseEvent("mouseMoved", at[0]-30, at[1]+40, chromedp.ButtonLeft),
		chromedp.MouseEvent("mouseMoved", at[0]-60, at[1]+80, chromedp.ButtonLeft),
	)
	tb.until("another reading", `document.querySelector(".map-reading").innerText !== `+quote(before))
	if now := eval[string](tb, "location.hash"); now != address {
		t.Error("the plan changed before the tee was let go")
	}
	tb.do(chromedp.MouseEvent("mouseReleased", at[0]-60, at[1]+80, chromedp.ButtonLeft))
	tb.until("another address", `location.hash !== `+quote(address))
}

// Any spot under the ceiling can be asked about, by mouse and by keys.
func hangMap(t *testing.T, tb *tab) {
	tb.openSheet("overhead")
	spot := `[...document.querySelectorAll(".map-reading")].find((e) => e.offsetParent !== null)`
	tb.until("the first spot", spot+`.innerText.startsWith("Down to ")`)
	if got := eval[string](tb, spot+`.innerText`); !strings.Contains(got, " ft ") || !strings.Contains(got, " here") || !strings.Contains(got, "passes beneath") {
		t.Errorf("over the middle of the room = %q", got)
	}
	if got := tb.shown(); !strings.Contains(got, " ft") {
		t.Errorf("the map says %q, want its levels", got)
	}
	tb.axe("what may hang", "#map-panel", "#view-plan")
	field := tb.find("spinbutton", "Spot, from the back wall")
	field.fill("6 in")
	tb.press(kb.Tab)
	tb.until("the spot by the back wall", spot+`.innerText.startsWith("Down to the floor here")`)
}

// Seats have their verdicts, and one that is added has one too.
func watchMap(t *testing.T, tb *tab) {
	tb.openSheet("others")
	if n := eval[int](tb, `[...document.querySelectorAll("#map-panel .map-things > li")].filter((e) => e.offsetParent !== null).length`); n != 2 {
		t.Errorf("%d seats have a verdict, want the demonstration room's 2", n)
	}
	if got := tb.shown(); !strings.Contains(got, "others may be here") {
		t.Errorf("the map says %q", got)
	}
	tb.axe("where to watch", "#map-panel", "#view-plan")
	tb.find("button", "Add a seat").click()
	tb.until("the third seat", `[...document.querySelectorAll("#map-panel .map-things > li")].filter((e) => e.offsetParent !== null).length === 3`)
}

// A guest is shown where to stand, large, with one sentence; Escape goes back.
func guestShown(t *testing.T, tb *tab) {
	tb.openPlan(filepath.Join(plansDir, "clear-room.json"))
	tb.comeToMarks()
	address := eval[string](tb, "location.href")
	button := eval[string](tb, `document.querySelector("#marks-list button").innerText`)
	tb.find("button", button).click()
	tb.until("the guest's view", `document.querySelector("#guest")?.open`)
	if got := strings.TrimSpace(tb.section("#guest-sentence")); !strings.HasPrefix(got, "Clear for you: the nearest thing is ") || !strings.Contains(got, "on your loosest swing") {
		t.Errorf("the guest reads %q", got)
	}
	if n := eval[int](tb, `document.querySelectorAll("#guest .guest-foot").length`); n != 2 {
		t.Errorf("%d feet are drawn, want 2", n)
	}
	if n := tb.sideways(); n > 0 {
		t.Errorf("the guest's view is %d px wider than the phone", n)
	}
	tb.axe("the guest's view", "#guest")
	tb.press(kb.Escape)
	tb.until("the page again", `document.querySelector("#guest") === null`)
	if now := eval[string](tb, "location.href"); now != address {
		t.Errorf("the address became %q", short(now))
	}
	tb.find("button", button).click()
	tb.until("the guest's view again", `document.querySelector("#guest")?.open`)
	eval[bool](tb, `(history.back(), true)`)
	tb.until("the page again, by Back", `document.querySelector("#guest") === null`)
}

// A guest who is clear where others strike reads that it is theirs alone, and
// never a bare "Clear".
func guestAmongOthers(t *testing.T, tb *tab) {
	tb.openPlan(filepath.Join(plansDir, "low-ceiling.json"))
	tb.find("button", "Change").click() // the strip is folded
	tb.visitor("112 cm", "30 in")
	tb.untilVerdict("Visitor", ": clear;")
	tb.comeToMarks()
	tb.find("button", "Show Visitor").click()
	tb.until("the guest's view", `document.querySelector("#guest")?.open`)
	got := tb.section("#guest")
	for _, part := range []string{"Clear for you: the nearest thing is ", "This is yours alone: of everybody's "} {
		if !strings.Contains(got, part) {
			t.Errorf("the guest reads %q, want %q in it", got, part)
		}
	}
	tb.axe("the guest's view among others", "#guest")
}

// A change that would do is a button: it makes the change, and Undo takes it back.
func remedyButtons(t *testing.T, tb *tab) {
	tb.openSheet("swing")
	tb.openPlan(filepath.Join(plansDir, "low-ceiling.json"))
	verdict, address := tb.verdict(), eval[string](tb, "location.hash")
	tb.openSummary("More about this check")
	tb.find("button", "Work them out").click()
	tb.until("the changes", `!document.querySelector("#check-remedies button").disabled && document.querySelector("#check-remedies .place")`)
	tb.axe("the changes that would do", "#check-remedies")
	eval[bool](tb, `(document.querySelector("#check-remedies .place").click(), true)`)
	tb.until("another address", `location.hash !== `+quote(address))
	tb.until("the answer", settled)
	if now := tb.verdict(); now == verdict {
		t.Errorf("the verdict is still %q", now)
	}
	tb.find("button", "Undo").click()
	tb.until("the old address", `location.hash === `+quote(address))
	tb.until("the answer", settled)
	if now := tb.verdict(); now != verdict {
		t.Errorf("undone, the verdict = %q, want %q", now, verdict)
	}
}

// The best changes for everybody come by themselves after the verdict: in the room
// of a first visit one press puts everybody right, and Undo takes it back.
func TestChangesByThemselves(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, "/")
	tb.untilVerdict("Strikes: 1 of 8.")
	tb.until("the changes", `document.querySelector("#changes button")`)
	tb.axe("the changes for everybody", "#changes")
	if got := eval[string](tb, `document.querySelector("#changes button").textContent`); !strings.Contains(got, "Move the tee ") || !strings.HasSuffix(got, "all 8 clear.") {
		t.Errorf("the first change = %q, want the tee moved and everybody clear", got)
	}
	eval[bool](tb, `(document.querySelector("#changes button").click(), true)`)
	tb.untilVerdict("Clear: all 8.")
	tb.until("no more changes", `!document.querySelector("#changes button") && document.querySelector("#changes").dataset.busy === "no"`)
	tb.find("button", "Undo").click()
	tb.untilVerdict("Strikes: 1 of 8.")
}

// A room to start from keeps the people; Undo returns to the old one.
func startingRooms(t *testing.T, tb *tab) {
	tb.openSheet("room")
	tb.until("the rooms", `!document.querySelector("#rooms").hidden`)
	address := eval[string](tb, "location.hash")
	eval[bool](tb, `(() => { const s = document.querySelector("#rooms-select"); s.value = "1"; s.dispatchEvent(new Event("change")); return true; })()`)
	tb.untilNotice("with your players and clubs")
	tb.until("the answer", settled)
	if got := tb.section("#matrix"); !strings.Contains(got, "Tall guest") {
		t.Errorf("everyone = %q, want the players kept", got)
	}
	tb.find("button", "Undo").click()
	tb.until("the old address", `location.hash === `+quote(address))
}
