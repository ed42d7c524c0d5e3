//go:build browser

package browsertest

import (
	"fmt"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp/kb"
)

const roomAnswered = `document.documentElement.dataset.busy === "no" && document.documentElement.dataset.stale === "no"`

// fieldText is what a field of the cards shows, by its path.
func (tb *tab) fieldText(path string) string {
	tb.t.Helper()
	return eval[string](tb, `document.querySelector("#cards [data-path='`+path+`']").value`)
}

// untilField waits until a field of the cards shows a text and the answer is there.
func (tb *tab) untilField(path, want string) {
	tb.t.Helper()
	tb.until(path+" "+want, `document.querySelector("#cards [data-path='`+path+`']").value === `+quote(want)+` && `+roomAnswered)
}

// drag takes hold of the end of a measure and lets it go dx, dy px farther; the
// label that it showed before is returned.
func (tb *tab) drag(wall string, dx, dy float64) string {
	tb.t.Helper()
	tb.until("the handle", `document.querySelector("[data-wall=`+wall+`] .wall-knob") !== null`)
	at := tb.middle("[data-wall=" + wall + "] .wall-knob")
	tb.mouse(input.DispatchMouseEventTypeMousePressed, at[0], at[1])
	tb.mouse(input.DispatchMouseEventTypeMouseMoved, at[0]+dx, at[1]+dy)
	const label = `document.querySelector("[data-wall=%s] .wall-label").textContent`
	tb.until("its label", fmt.Sprintf(label, wall)+` !== ""`)
	if over := tb.sideways(); over > 0 {
		tb.t.Errorf("while %s is dragged, the page is %d px too wide", wall, over)
	}
	shown := eval[string](tb, fmt.Sprintf(label, wall))
	tb.mouse(input.DispatchMouseEventTypeMouseReleased, at[0]+dx, at[1]+dy)
	return shown
}

// The sheet of numbers.
func TestRoom(t *testing.T) {
	onePage(t, noGL, desktop, light+"&sheet=room",
		fact{"walls are dragged", dragWalls},
		fact{"a club renamed", formFollows},
		fact{"rows", formRows},
		fact{"bad plan files", badPlanFiles},
		fact{"bad numbers", badNumbers},
		fact{"keys", keys})
}

// The sheet of numbers on a phone.
func TestRoomOnAPhone(t *testing.T) {
	onePage(t, noGL, phone, light+"&sheet=room",
		fact{"words explain", wordsExplain},
		fact{"a finger drags", fingerDrags},
		fact{"my room", myRoom},
		fact{"a huge paste", hugePaste})
}

// Somebody on a phone makes a room of three numbers and a height; the screen
// follows the walls until it is touched; Undo goes back to the room before.
func myRoom(t *testing.T, tb *tab) {
	tb.openSheet("room") // whole: what comes late moves what is pressed
	before := tb.fieldText("room.length")
	tb.find("button", "Start with my room").click()
	dialog := tb.find("dialog", "My room")
	if n := eval[int](tb, `document.querySelectorAll("dialog[open] input").length`); n != 5 {
		t.Errorf("the dialog asks for %d things, want three sizes, a name and a height", n)
	}
	dialog.find("textbox", "Room length").fill("21")
	dialog.find("textbox", "Room width").fill("wide")
	dialog.find("textbox", "Ceiling height").fill("9'")
	dialog.find("textbox", "Height").fill("6'1\"")
	dialog.find("button", "Draw my room").click()
	tb.until("the sentence beside the width", `document.activeElement.dataset.path === "room.width" && document.activeElement.getAttribute("aria-invalid") === "true" && document.activeElement.closest(".field").innerText.includes("wide")`)
	tb.axe("the dialog with a mistake", "dialog[open]")
	tb.shootSheet("my-room-phone")
	dialog.find("textbox", "Room width").fill("12")
	tb.press(kb.Enter)
	tb.untilNotice("Your room is drawn")
	tb.untilField("room.length", "21 ft 0 in")
	tb.untilField("room.width", "12 ft 0 in")
	if got := tb.fieldText("players[0].height"); got != "6 ft 1 in" {
		t.Errorf("the player is %q tall, want 6 ft 1 in", got)
	}
	tb.untilField("screen.x", "19 ft 8 in")
	if over := tb.sideways(); over > 0 {
		t.Errorf("the page is %d px too wide; the widest: %s", over, tb.widest())
	}

	tb.find("textbox", "Room length").fill("24 ft")
	tb.press(kb.Tab)
	tb.untilField("screen.x", "22 ft 8 in")
	set := func(path, value string) {
		t.Helper()
		eval[bool](tb, `(() => {
			const field = document.querySelector("#cards [data-path='`+path+`']");
			field.value = `+quote(value)+`;
			field.dispatchEvent(new Event("change"));
			return true;
		})()`)
	}
	set("screen.x", "22 ft")
	tb.untilField("screen.x", "22 ft 0 in")
	set("room.length", "26 ft")
	tb.untilField("room.length", "26 ft 0 in")
	if got := tb.fieldText("screen.x"); got != "22 ft 0 in" {
		t.Errorf("a screen that was touched moved to %s", got)
	}

	for range 4 {
		tb.find("button", "Undo").click()
		tb.until("the answer", roomAnswered)
	}
	tb.untilField("room.length", before)
}

// The sheet is at most two screens on a desk and four on a phone.
func TestRoomSheetFits(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, "/#sheet=room")
	tb.openSheet("room")
	for _, tt := range []struct {
		size
		screens int64
	}{{desktop, 2}, {tablet, 2}, {phone, 4}} {
		t.Run(tt.name, func(t *testing.T) {
			tb.in(t)
			tb.resize(tt.size)
			tb.until("the drawing", `document.querySelectorAll("[data-wall]").length === 3`)
			if high := eval[int64](tb, `document.documentElement.scrollHeight`); high > tt.screens*tt.height {
				t.Errorf("the sheet is %d px high, more than %d screens of %d", high, tt.screens, tt.height)
			}
		})
	}
}

// Walls are dragged by the ends of their measures; one that cannot stand there
// says so and stays, and Undo puts a dragged one back.
func dragWalls(t *testing.T, tb *tab) {
	tb.openSheet("room") // whole: what comes late moves what is pressed
	for _, tt := range []struct {
		wall   string
		dx, dy float64
	}{{"length", 60, 0}, {"width", 0, -40}, {"height", 0, -30}} {
		t.Run(tt.wall, func(t *testing.T) {
			tb.in(t)
			path := "room." + tt.wall
			was := tb.fieldText(path)
			label := tb.drag(tt.wall, tt.dx, tt.dy)
			if label == was {
				t.Errorf("while dragged it reads %q, as before", label)
			}
			tb.untilField(path, label)
			tb.find("button", "Undo").click()
			tb.untilField(path, was)
		})
	}
	was := tb.fieldText("room.length")
	tb.drag("length", -200, 0)
	tb.until("a refusal", `document.documentElement.dataset.stale === "yes" && document.documentElement.dataset.busy === "no"`)
	if drawn := eval[string](tb, `document.querySelector("#walls-plan .dimension-text").textContent`); drawn != was {
		t.Errorf("the drawing shows %s, want the last good %s", drawn, was)
	}
	tb.find("button", "Undo").click()
	tb.untilField("room.length", was)
}

// A word explains itself by press and by key, and gives way to Escape.
func wordsExplain(t *testing.T, tb *tab) {
	tb.openSheet("room") // whole: what comes late moves what is pressed
	eval[bool](tb, `(document.querySelector("#card-clubs").open = true, document.querySelector("#card-clubs .more").open = true)`)
	about := tb.find("group", "Club 1").find("button", "About Lie")
	const open = `[...document.querySelectorAll(".note:popover-open")].map((n) => n.innerText).join("|")`
	about.click()
	tb.until("the meaning", open+`.includes("angle between shaft and ground")`)
	tb.until("the note inside the window", `(() => { const r = document.querySelector(".note:popover-open").getBoundingClientRect(); return r.left >= 0 && r.right <= innerWidth && r.top >= 0 && r.bottom <= innerHeight; })()`)
	tb.shootSheet("word-phone")
	tb.press(kb.Escape)
	tb.until("nothing open", open+` === ""`)
	tb.press(kb.Enter)
	tb.until("the meaning again", open+`.includes("usual for the kind")`)
}

// "?" lists the keys, but not while somebody types, nor once it is switched off.
func keys(t *testing.T, tb *tab) {
	tb.openSheet("room") // whole: what comes late moves what is pressed
	const open = `document.querySelectorAll("dialog[open]").length`
	tb.find("textbox", "Name of this plan").click()
	tb.press("?")
	tb.until("the mark in the field", `document.activeElement.value.includes("?")`)
	if n := eval[int](tb, open); n != 0 {
		t.Fatal("typing a ? into a field opens the keys")
	}
	tb.press(kb.Escape)
	eval[bool](tb, `(document.activeElement.blur(), true)`)
	tb.until("the answer", roomAnswered)
	tb.press("?")
	tb.until("the keys", open+` === 1`)
	tb.axe("the keys", "dialog[open]")
	tb.shootSheet("keys-desktop")
	tb.find("checkbox", "The key ? opens this list").click()
	tb.press(kb.Escape)
	tb.until("no dialog", open+` === 0`)
	tb.reload()
	tb.ready()
	tb.press("?")
	if n := eval[int](tb, open); n != 0 {
		t.Error("the key opens the list though it was switched off")
	}
	tb.find("button", "Keys").click()
	tb.until("the keys again", open+` === 1`)
}
