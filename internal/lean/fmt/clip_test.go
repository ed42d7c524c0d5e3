package fmt

import (
	"strings"
	"testing"
)

func TestClip(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"short", "tall", "tall"},
		{"as long as may be", strings.Repeat("ä", longest), strings.Repeat("ä", longest)},
		{"longer", strings.Repeat("ä", longest+1), strings.Repeat("ä", longest) + "…"},
		{"lines", "a\nb\u2028c\x00", "a b c "},
	} {
		if got := Clip(c.text); got != c.want {
			t.Errorf("%s: Clip = %q, want %q", c.name, got, c.want)
		}
	}
}
