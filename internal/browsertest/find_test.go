//go:build browser

package browsertest

import (
	"encoding/json"
	"fmt"
	"strings"
	"time"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// element is something on the page as the accessibility tree has it: what a
// screen reader announces is what a test finds.
type element struct {
	tb          *tab
	role, name  string
	description string
	object      runtime.RemoteObjectID
}

// list returns the elements of a role inside root, in the order of the page.
func (tb *tab) list(root runtime.RemoteObjectID, role string) []element {
	tb.t.Helper()
	tree, err := chromedp.Call(tb.ctx, accessibility.QueryAXTree, accessibility.QueryAXTreeParams{ObjectID: root, Role: role})
	if err != nil {
		tb.t.Fatalf("asking for every %s: %v", role, err)
	}
	var found []element
	for _, node := range tree.Nodes {
		if node.Ignored {
			continue
		}
		found = append(found, element{tb: tb, role: role, name: text(node.Name), description: text(node.Description),
			object: tb.resolve(node.BackendDOMNodeID)})
	}
	return found
}

func (tb *tab) resolve(id cdp.BackendNodeID) runtime.RemoteObjectID {
	node, err := chromedp.Call(tb.ctx, dom.ResolveNode, dom.ResolveNodeParams{BackendNodeID: id})
	if err != nil || node.Object == nil {
		return "" // it went away since the tree was read; find asks again
	}
	return node.Object.ObjectID
}

// text reads a value of the accessibility tree that is a string.
func text(v *accessibility.Value) string {
	if v == nil {
		return ""
	}
	var s string
	if err := json.Unmarshal([]byte(v.Value), &s); err != nil {
		return ""
	}
	return strings.TrimSpace(s)
}

// find waits for the one element of a role with this accessible name, upper and
// lower case alike. A name that ends in "…" stands for any that starts so.
func (tb *tab) find(role, name string) element {
	tb.t.Helper()
	return tb.findIn(tb.document, role, name)
}

// find is the tab's find inside an element, such as a group or a form.
func (e element) find(role, name string) element {
	e.tb.t.Helper()
	return e.tb.findIn(func() runtime.RemoteObjectID { return e.object }, role, name)
}

// document is the page's root.
func (tb *tab) document() runtime.RemoteObjectID {
	tb.t.Helper()
	doc, err := chromedp.Run(tb.ctx, chromedp.Evaluate[*runtime.RemoteObject]("document"))
	if err != nil {
		tb.t.Fatal(err)
	}
	return doc.ObjectID
}

func (tb *tab) findIn(root func() runtime.RemoteObjectID, role, name string) element {
	tb.t.Helper()
	deadline := time.Now().Add(patience)
	for {
		var names []string
		var matches []element
		for _, e := range tb.list(root(), role) {
			names = append(names, e.name)
			if e.object != "" && matchName(e.name, name) {
				matches = append(matches, e)
			}
		}
		switch {
		case len(matches) == 1:
			return matches[0]
		case len(matches) > 1:
			tb.t.Fatalf("%d elements are a %s named %q: a person could not tell them apart", len(matches), role, name)
		case time.Now().After(deadline):
			tb.t.Fatalf("no %s named %q in %v; there are %q", role, name, patience, names)
		}
	}
}

func matchName(got, want string) bool {
	if start, open := strings.CutSuffix(want, "…"); open {
		return len(got) >= len(start) && strings.EqualFold(got[:len(start)], start)
	}
	return strings.EqualFold(got, want)
}

func (e element) String() string { return fmt.Sprintf("%s %q", e.role, e.name) }

// middle brings an element into the middle of the window and returns where its own is.
func (tb *tab) middle(selector string) [2]float64 {
	tb.t.Helper()
	return eval[[2]float64](tb, `(() => {
		const el = document.querySelector(`+quote(selector)+`);
		el.scrollIntoView({block: "center", behavior: "instant"});
		const r = el.getBoundingClientRect();
		return [r.left + r.width / 2, r.top + r.height / 2];
	})()`)
}

// click scrolls the element into view and presses the mouse on its middle.
// Something that lies over it gets the click, as it would from a person.
func (e element) click() {
	e.tb.t.Helper()
	// A person aims at what stands still: while late parts of the page come in and
	// push it about, the element is followed.
	at := call[[2]float64](e.tb, e.object, `async function() {
		const frame = () => new Promise(requestAnimationFrame);
		const patience = 120, enough = 4; // frames
		let last = null, still = 0;
		for (let i = 0; i < patience && still < enough; i++) {
			this.scrollIntoView({block: "center", behavior: "instant"});
			const r = this.getBoundingClientRect();
			still = last && last.left === r.left && last.top === r.top ? still + 1 : 0;
			last = r;
			await frame();
		}
		return [last.left + last.width / 2, last.top + last.height / 2];
	}`)
	e.tb.do(chromedp.MouseClickXY(at[0], at[1]))
}

// fill replaces the text of a field, at once, as a paste does: keys would have the page
// answer what is half typed.
func (e element) fill(value string) {
	e.tb.t.Helper()
	e.click()
	e.tb.do(chromedp.KeyEvent("a", chromedp.KeyModifiers(chromedp.ModifierCtrl)))
	if value == "" {
		e.tb.press(kb.Delete)
	} else if _, err := chromedp.Call(e.tb.ctx, input.InsertText, input.InsertTextParams{Text: value}); err != nil {
		e.tb.t.Fatal(err)
	}
}

// choose picks a choice of a list by what it says.
func (e element) choose(words string) {
	e.tb.t.Helper()
	if !call[bool](e.tb, e.object, `function() {
		const choice = [...this.options].find((o) => o.innerText === `+quote(words)+`);
		if (!choice) return false;
		this.value = choice.value;
		this.dispatchEvent(new Event("change", {bubbles: true}));
		return true;
	}`) {
		e.tb.t.Fatalf("%s has no choice %q", e, words)
	}
}

// press sends keys to whatever has the focus.
func (tb *tab) press(keys string) {
	tb.t.Helper()
	tb.do(chromedp.KeyEvent(keys))
}

// value is what a field holds.
func (e element) value() string {
	e.tb.t.Helper()
	return call[string](e.tb, e.object, `function() { return this.value; }`)
}

// text is what the element shows.
func (e element) text() string {
	e.tb.t.Helper()
	return call[string](e.tb, e.object, `function() { return this.innerText; }`)
}

// attribute is an attribute of the element, "" without it.
func (e element) attribute(name string) string {
	e.tb.t.Helper()
	return call[string](e.tb, e.object, `function() { return this.getAttribute(`+quote(name)+`) ?? ""; }`)
}
