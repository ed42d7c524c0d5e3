//go:build browser

package browsertest

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// sent presses a button that hands an address to somebody and returns the address.
func (tb *tab) sent(button string) string {
	tb.t.Helper()
	eval[bool](tb, `(navigator.clipboard.writeText = async (text) => { window.copied = text; }, window.copied = "", true)`)
	tb.find("button", button).click()
	tb.until("the copied link", `window.copied !== ""`)
	return strings.TrimPrefix(eval[string](tb, `window.copied`), server.URL)
}

// kept is the plan that the browser keeps as the visitor's own, as text.
func (tb *tab) kept() string {
	tb.t.Helper()
	return eval[string](tb, `localStorage.getItem("wide-berth.plan") ?? ""`)
}

// A friend's link on a phone: one window, two fields and a hand, the answer with the
// swinging golfer after two inputs. The friend is added and sent back, and the owner,
// whose plan stays as it is until then, takes them in and may undo it.
func TestFriend(t *testing.T) {
	t.Parallel()
	owner := openPage(t, noGL, desktop, light)
	owner.visitor("150 cm", "42 in") // from now on the plan is the owner's own
	owner.find("button", "Share").click()
	owner.axe("the share dialog", "dialog[open]")
	link := owner.sent("Send to a friend")
	if !strings.HasSuffix(link, "&for=friend") || len(link) > 1500 {
		t.Fatalf("the friend's link is %q (%d characters)", short(link), len(link))
	}

	friend := openPage(t, noGL, phone, link)
	friend.until("the golfer", `document.querySelector("#stage-root").dataset.ready === "yes"`)
	fits := func(when string) {
		t.Helper()
		if over := eval[int](friend, `document.documentElement.scrollHeight - innerHeight`); over > 0 || friend.sideways() > 0 {
			t.Errorf("%s the page is %d px too high and %d too wide", when, over, friend.sideways())
		}
	}
	fits("opened")
	friend.axe("the friend's page")
	friend.shootWindow("friend-phone-light")
	if got := eval[string](friend, `[...document.querySelectorAll("input[type=text], select")].filter((e) => e.checkVisibility()).map((e) => e.id).join()`); got != "strip-height,strip-club" {
		t.Errorf("the fields are %s, want height and driver length", got)
	}
	said := eval[string](friend, `document.body.innerText`)
	for _, private := range []string{"Host", "Tall guest", "Visitor"} {
		if strings.Contains(said, private) || strings.Contains(eval[string](friend, `document.documentElement.outerHTML`), private+`"`) {
			t.Errorf("the friend reads of %s: %q", private, said)
		}
	}
	before := friend.verdict()
	friend.find("textbox", "Height").fill("200 cm")
	friend.press(kb.Tab)
	friend.untilVerdict("Strikes.", "You, driver")
	if friend.verdict() == before {
		t.Errorf("another height changed nothing: %q", before)
	}
	friend.find("radio", "Left").click()
	friend.until("the answer", settled)
	fits("answered")
	if drawn := eval[bool](friend, `[...document.querySelectorAll(".stage-view canvas")].some((c) => c.checkVisibility() && c.height > 150 && c.getContext("2d").getImageData(0, 0, c.width, c.height).data.some((v) => v > 0))`); !drawn {
		t.Error("no golfer swings beside the answer")
	}

	friend.find("button", "Add me to this room").click()
	friend.press("Ann" + kb.Enter)
	friend.until("the answer for Ann", settled+` && document.querySelector("#verdict").innerText.includes("Ann, driver")`)
	fits("with a name")
	eval[bool](friend, `(navigator.canShare = () => true, navigator.share = async ({url}) => { window.copied = url; }, true)`)
	back := friend.sent("Send it back")
	if got := friend.section(".friend-foot .send-said"); got != "Handed to what you chose." {
		t.Errorf("with a share sheet it says %q", got)
	}
	if friend.kept() != "" {
		t.Error("what a friend tries is kept in the browser as their own plan")
	}

	mine, cells := owner.kept(), owner.cells()
	owner.goTo("/?again" + strings.TrimPrefix(back, "/"))
	owner.ready()
	owner.until("the question", `document.querySelector("#received")`)
	if got := owner.section("#received"); !strings.Contains(got, "Ann: 6 ft 6 3/4 in tall, left-handed, driver") {
		t.Errorf("the question is %q", got)
	}
	owner.axe("the question", "#received")
	owner.shootWindow("received-desktop-light")
	if now := owner.kept(); now != mine || len(owner.cells()) != len(cells) {
		t.Errorf("the owner's plan was changed before the question was answered")
	}
	owner.find("button", "Add Ann to…").click()
	owner.until("Ann among the players", settled+` && document.querySelector("#matrix").innerText.includes("Ann")`)
	if got := len(owner.cells()); got != len(cells)+1 {
		t.Errorf("with Ann there are %d checks, want one more than %d", got, len(cells))
	}
	owner.find("button", "Undo").click()
	owner.until("the plan as it was", settled+` && !document.querySelector("#matrix").innerText.includes("Ann")`)
	if owner.kept() != mine {
		t.Error("after Undo the kept plan is another")
	}

	friend.find("button", "See the whole room").click()
	friend.until("the rest of the page", settled+` && document.querySelector(".index").checkVisibility() && !document.querySelector("#my-room").hidden`)
	if got := eval[string](friend, `location.hash`); strings.Contains(got, "friend") {
		t.Errorf("the address is still a friend's: %q", short(got))
	}
}
