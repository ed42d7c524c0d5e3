package main

import (
	"bytes"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The command writes the kind of picture that its name asks for, of the size asked for.
func TestPicture(t *testing.T) {
	dir, plan := t.TempDir(), planText(t, "low-ceiling.json")
	file := filepath.Join(dir, "room.png")
	if code, out, errOut := invoke(t, plan, "picture", "-o", file, "-view", "plan", "-size", "600x315", "-"); code != exitClear || out+errOut != "" {
		t.Fatalf("picture = %d with %q and %q", code, out, errOut)
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if c, err := png.DecodeConfig(bytes.NewReader(data)); err != nil || c.Width != 600 || c.Height != 315 {
		t.Errorf("the PNG is %d by %d (%v), want 600 by 315", c.Width, c.Height, err)
	}
	file = filepath.Join(dir, "room.svg")
	if code, _, errOut := invoke(t, plan, "picture", "-o", file, "-"); code != exitClear {
		t.Fatalf("picture = %d with %q", code, errOut)
	}
	if data, err = os.ReadFile(file); err != nil || !bytes.HasPrefix(data, []byte("<svg ")) {
		t.Errorf("%s begins with %.20q (%v), want an SVG", file, data, err)
	}
}

// What cannot be drawn is told in one sentence, and nothing is written.
func TestBadPictures(t *testing.T) {
	plan := planText(t, "low-ceiling.json")
	file := filepath.Join(t.TempDir(), "room.png")
	tests := []struct {
		name, stdin string
		args        []string
		want        string
	}{
		{"no file named", plan, []string{"-"}, "-o FILE.png or -o FILE.svg"},
		{"another kind", plan, []string{"-o", "room.gif", "-"}, "room.gif"},
		{"no such view", plan, []string{"-o", file, "-view", "roof", "-"}, `"roof" is not a view`},
		{"too small", plan, []string{"-o", file, "-size", "12", "-"}, `the size "12"`},
		{"no size", plan, []string{"-o", file, "-size", "600x", "-"}, `the size "600x"`},
		{"a ribbon", plan, []string{"-o", file, "-size", "1000x100", "-"}, "4 times as long"},
		{"a height for several", plan, []string{"-o", file, "-view", "all", "-size", "600x600", "-"}, "a width alone"},
		{"a plan that is wrong", planText(t, "bad-height.json"), []string{"-o", file, "-"}, "height"},
		{"nobody", plan, []string{"-o", file, "-player", "Nobody", "-"}, "“Nobody”"},
		{"no such folder", plan, []string{"-o", filepath.Join(file, "deeper.svg"), "-"}, "deeper.svg"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			code, out, errOut := invoke(t, tt.stdin, append([]string{"picture"}, tt.args...)...)
			if code != exitBad || out != "" || !strings.Contains(errOut, tt.want) || strings.Count(errOut, "\n") != 1 {
				t.Errorf("picture %q = %d with %q and %q; want %d and a sentence with %q", tt.args, code, out, errOut, exitBad, tt.want)
			}
			if _, err := os.Stat(file); err == nil {
				t.Errorf("picture %q wrote a file all the same", tt.args)
			}
		})
	}
}
