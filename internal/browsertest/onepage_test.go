//go:build browser

package browsertest

import (
	"strings"
	"testing"
)

// fact is something that is to hold on a page that others were tested on before.
type fact struct {
	name  string
	holds func(t *testing.T, tb *tab)
}

// onePage tests facts one after another on one page, which costs a tenth of a page for
// each: the programs are there, and everybody's swings are modelled. Each fact finds the
// plan of the address; what was unfolded or chosen before may still be, so a fact looks
// at what it opens itself. After one that failed the next gets the page anew.
func onePage(t *testing.T, b *browser, view size, path string, facts ...fact) {
	t.Helper()
	t.Parallel()
	tb := open(t, b, view)
	fresh := true
	for _, fact := range facts {
		t.Run(fact.name, func(t *testing.T) {
			tb.in(t)
			if fresh {
				tb.goTo(path)
				tb.ready()
			} else {
				tb.again(path)
			}
			fresh = true // unless all went well
			fact.holds(t, tb)
			tb.checkManners()
			fresh = t.Failed()
		})
	}
}

// again has the page open the plan and the sheet of an address, as when its link is
// pasted.
func (tb *tab) again(path string) {
	tb.t.Helper()
	link, sheet, named := strings.Cut(strings.TrimPrefix(path, "/"), "&sheet=")
	if !named {
		sheet = "swing"
	}
	eval[bool](tb, `(() => {
		for (const dialog of document.querySelectorAll("dialog[open]")) dialog.close();
		document.activeElement.blur();
		document.querySelector("#notice").textContent = "";
		location.hash = `+quote(link)+`;
		return true;
	})()`)
	tb.untilNotice("The plan of that link is open")
	tb.until("the answer", settled)
	tb.openSheet(sheet)
	tb.top()
}
