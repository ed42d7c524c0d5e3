package paint

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// TestThemes holds the colours of both themes.
func TestThemes(t *testing.T) {
	var b strings.Builder
	for _, dark := range []bool{false, true} {
		theme := reflect.ValueOf(*ThemeOf(dark))
		for i := range theme.NumField() {
			switch c := theme.Field(i).Interface().(type) {
			case Colour:
				fmt.Fprintf(&b, "dark %-5v %-9s #%02X%02X%02X at %.2f\n", dark, theme.Type().Field(i).Name, level(c.R), level(c.G), level(c.B), c.A)
			default:
				fmt.Fprintf(&b, "dark %-5v %-9s %v\n", dark, theme.Type().Field(i).Name, c)
			}
		}
	}
	file := filepath.Join("testdata", "themes.txt")
	if *update {
		if err := os.WriteFile(file, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got := b.String(); got != string(want) {
		t.Errorf("the colours are now\n%s\nand were in %s\n%s", got, file, want)
	}
	if !strings.Contains(b.String(), fmt.Sprintf("#%06X", StrikeRGB)) || !strings.Contains(b.String(), fmt.Sprintf("#%06X", TapeRGB)) {
		t.Error("a theme has another strike or tape than the colours that tests look for")
	}
}

func level(v float32) int { return int(math.Round(float64(v) * 255)) }

// What is read, and the lines of the room, stand out from what they stand on by
// 4.5 to 1 (WCAG 2.2, 1.4.3).
func TestContrast(t *testing.T) {
	const turnedAway = 0.85 // how much of a thing's paper its side away from the light shows
	for _, dark := range []bool{false, true} {
		c := ThemeOf(dark)
		for _, tt := range []struct {
			name     string
			ink, own Colour
		}{{"plate", c.PlateInk, c.Plate}, {"tape", c.TapeInk, c.Tape}, {"edges", c.Ink, c.Wall},
			{"names on walls", c.Lettering, c.Wall}, {"names on ceiling and slopes", c.Lettering, c.Ceiling}, {"names on the floor", c.Lettering, c.Floor},
			{"names on beams", c.Lettering, c.Solid.Warm(turnedAway)}, {"names on what hangs", c.Lettering, c.Hung.Warm(turnedAway)}, {"names on the cloth", c.Lettering, c.Cloth.Warm(turnedAway)}} {
			a, b := luminance(tt.ink), luminance(tt.own)
			if got := (max(a, b) + 0.05) / (min(a, b) + 0.05); got < 4.5 {
				t.Errorf("dark %v, %s: contrast %.2f, want 4.5", dark, tt.name, got)
			}
		}
	}
}

// luminance is the relative luminance of WCAG 2.
func luminance(c Colour) float64 {
	part := func(v float32) float64 {
		if v <= 0.04045 {
			return float64(v) / 12.92
		}
		return math.Pow((float64(v)+0.055)/1.055, 2.4)
	}
	return 0.2126*part(c.R) + 0.7152*part(c.G) + 0.0722*part(c.B)
}

func TestShades(t *testing.T) {
	c := Colour{0.4, 0.5, 0.8, 0.3}
	tests := []struct {
		name      string
		got, want Colour
	}{
		{"alpha", c.Alpha(0.9), Colour{0.4, 0.5, 0.8, 0.9}},
		{"brighter", c.Lit(1.5), Colour{0.6, 0.75, 1, 0.3}},
		{"as warm paper unlit", c.Warm(1), c},
		{"in the shade", c.Warm(0.5), Colour{0.2, 0.5 * 0.5 * 0.94, 0.8 * 0.5 * 0.81, 0.3}},
		{"in bright light", Colour{0.9, 0.9, 0.9, 1}.Warm(1.5), Colour{1, 1, 1, 1}},
		{"hex", hex(0x336699), Colour{0.2, 0.4, 0.6, 1}},
		{"beyond white", Colour{0.9, 0.9, 0.9, 1}.Lit(2), Colour{1, 1, 1, 1}},
	}
	for _, tt := range tests {
		const tol = 1e-6 // float32
		a, b := tt.got, tt.want
		if d := math.Abs(float64(a.R-b.R)) + math.Abs(float64(a.G-b.G)) + math.Abs(float64(a.B-b.B)) + math.Abs(float64(a.A-b.A)); d > tol {
			t.Errorf("%s: %v, want %v", tt.name, a, b)
		}
	}
}
