//go:build browser

package browsertest

import "testing"

// countWords are the words that are to be read under a root: in the window as it is, or
// on the whole sheet. Units, lettering in drawings and what only screen readers say do
// not count, nor what closed folds and lists hold, nor that there is no 3D here: it is
// there in the browsers people have.
const countWords = `((root, whole) => {
	const words = [];
	const seen = (r) => r.width > 1 && r.height > 1 && (whole || r.bottom > 0 && r.right > 0 && r.top < innerHeight && r.left < innerWidth);
	const text = document.createTreeWalker(document.querySelector(root), NodeFilter.SHOW_TEXT);
	while (text.nextNode()) {
		const node = text.currentNode, parent = node.parentElement, range = document.createRange();
		if (!parent.checkVisibility({visibilityProperty: true}) || parent.closest("option, svg, .visually-hidden, .stage-note")) continue;
		range.selectNodeContents(node);
		if ([...range.getClientRects()].some(seen)) words.push(...node.data.split(/\s+/));
	}
	return words.filter((w) => /\p{L}/u.test(w) && !/^(ft|in|mm|cm|s|mph)\b/.test(w));
})`

// The picture comes first, words after: few on the first screen, few on the sheets
// as they open.
func TestFewWords(t *testing.T) {
	t.Parallel()
	const mostOnSheets = 1200 // of the swing and its room; what is built and bought is tables
	tb := openPage(t, noGL, phone, light)
	for _, tt := range []struct {
		view size
		most int
	}{{phone, 60}, {desktop, 120}} {
		t.Run(tt.view.name, func(t *testing.T) {
			tb.in(t)
			tb.resize(tt.view)
			tb.until("the changes that would do, the last part", `document.querySelector("#changes button")`)
			words := eval[[]string](tb, countWords+`("main", false)`)
			if len(words) > tt.most {
				t.Errorf("%d words on the first screen, want at most %d: %q", len(words), tt.most, words)
			}
			if tt.view == phone {
				return
			}
			total := 0
			for _, sheet := range sheets {
				if sheet == "build" || sheet == "projector" {
					continue
				}
				tb.openSheet(sheet)
				if sheet == "stand" {
					tb.comeToMarks()
				}
				n := len(eval[[]string](tb, countWords+`("main", true)`))
				t.Logf("%s: %d words", sheet, n)
				total += n
			}
			if total < 300 || total > mostOnSheets {
				t.Errorf("%d words on all sheets as they open, want at most %d, and at least those of a page that is there", total, mostOnSheets)
			}
		})
	}
}
