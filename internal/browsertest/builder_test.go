//go:build browser

package browsertest

import (
	"testing"
)

func TestShotBuild(t *testing.T) {
	for _, view := range []size{desktop, tablet, phone} {
		t.Run(view.name, func(t *testing.T) {
			tb := openPage(t, noGL, view, "/#sheet=build")
			for _, sheet := range []string{"build", "projector"} {
				tb.openSheet(sheet)
				if over := tb.sideways(); over > 0 {
					t.Errorf("%s is %d px too wide; the widest: %s", sheet, over, tb.widest())
				}
				tb.axe(sheet)
				tb.shootSheet(sheet + "-" + view.name)
			}
		})
	}
}
