//go:build browser

package browsertest

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
)

// axeFile is the accessibility checker, a test-only npm package.
const axeFile = "../../node_modules/axe-core/axe.min.js"

// violation is one broken rule and where.
type violation struct {
	ID     string   `json:"id"`
	Impact string   `json:"impact"`
	Help   string   `json:"help"`
	Nodes  []string `json:"nodes"`
}

// axe checks the page, and the scene's frame when it is there, against WCAG 2.2
// A and AA and the checker's best practices. Every violation fails the test. Where
// parts are named, only they are checked, for where the rest of the page is as it was
// when another test checked all of it: the checker takes a second for a page.
func (tb *tab) axe(state string, parts ...string) {
	tb.t.Helper()
	tb.showVerdict() // where the bar at the foot of the window covers nothing
	tb.bringChecker()
	within := "document"
	if len(parts) > 0 {
		within = `{include: ` + quote(parts) + `}`
	}
	report := eval[string](tb, `axe.run(`+within+`, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"], resultTypes: ["violations"]})
		.then((r) => JSON.stringify(r.violations.map((v) => ({id: v.id, impact: v.impact, help: v.help,
			nodes: v.nodes.map((n) => n.target.join(" ") + " " + n.failureSummary)}))))`)
	var violations []violation
	if err := json.Unmarshal([]byte(report), &violations); err != nil {
		tb.t.Fatal(err)
	}
	for _, v := range violations {
		// What a bar at the foot of the window half covers is whole once it is scrolled.
		v.Nodes = slices.DeleteFunc(v.Nodes, func(node string) bool { return strings.Contains(node, "partially obscured") })
		if len(v.Nodes) == 0 {
			continue
		}
		tb.t.Errorf("%s: accessibility rule %s (%s): %s\n\t%s", state, v.ID, v.Impact, v.Help, strings.Join(v.Nodes, "\n\t"))
	}
}

// bringChecker puts the accessibility checker into the page and every frame of it.
// DevTools' evaluation is not held to the page's policy, so the page runs under its
// own strict one all the while.
func (tb *tab) bringChecker() {
	tb.t.Helper()
	for _, id := range tb.contexts() {
		if f := (frame{tb, id}); f.text(`typeof axe`) == "undefined" {
			script, err := os.ReadFile(axeFile)
			if err != nil {
				tb.t.Fatalf("the accessibility checker is missing, run make deps first: %v", err)
			}
			f.text(string(script) + `;""`)
		}
	}
}
