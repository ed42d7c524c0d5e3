package picture

import (
	"bytes"
	"flag"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wideberth/internal/sim/plan"
	"wideberth/internal/solver/protocol"
)

var update = flag.Bool("update", false, "write the pictures of testdata anew")

func planOf(t *testing.T, name string) plan.Checked {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "plans", name))
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// answers keeps what the solver said: several tests look at one plan.
var answers = map[string]Answer{}

func answerOf(t *testing.T, name string, focus protocol.Focus) Answer {
	t.Helper()
	key := name + focus.Player + focus.Club
	if _, asked := answers[key]; !asked {
		a, err := Ask(planOf(t, name), focus)
		if err != nil {
			t.Fatal(err)
		}
		answers[key] = a
	}
	return answers[key]
}

// The pictures are those of testdata: as SVG to the byte, as PNG but for what another
// processor rounds otherwise. After a change of the swing look at them, and -update.
func TestGolden(t *testing.T) {
	cases := []struct {
		name, plan string
		focus      protocol.Focus
		options    Options
	}{
		{"strikes-elevation", "low-ceiling.json", protocol.Focus{}, Options{View: Elevation}},
		{"strikes-dark-plan", "narrow.json", protocol.Focus{}, Options{View: Plan, Dark: true, Ratio: 630.0 / 1200}},
		{"tight-frames", "left-hander.json", protocol.Focus{Player: "Left-handed friend"}, Options{View: Frames}},
		{"clear-all", "clear-room.json", protocol.Focus{Club: "7-iron"}, Options{View: All}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			answer := answerOf(t, c.plan, c.focus)
			sheet := Draw(answer, c.options)
			if !strings.Contains(sheet.About, answer.sentence) || answer.sentence == "" {
				t.Errorf("the picture is about %q, want the sentence %q in it", sheet.About, answer.sentence)
			}
			golden(t, c.name+".svg", sheet.SVG(), bytes.Equal)
			var painted bytes.Buffer
			if err := sheet.PNG(&painted, 300/sheet.Width); err != nil {
				t.Fatal(err)
			}
			golden(t, c.name+".png", painted.Bytes(), alike)
		})
	}
}

func golden(t *testing.T, name string, got []byte, same func(a, b []byte) bool) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !same(got, want) {
		t.Errorf("the picture differs from %s; look at it, then run with -update", file)
	}
}

// alike tells whether no square of 8 by 8 pixels differs by more than a twentieth
// of the way from black to white.
func alike(a, b []byte) bool {
	p, err1 := png.Decode(bytes.NewReader(a))
	q, err2 := png.Decode(bytes.NewReader(b))
	if err1 != nil || err2 != nil || p.Bounds() != q.Bounds() {
		return false
	}
	const square = 8
	box := p.Bounds()
	for y := box.Min.Y; y < box.Max.Y; y += square {
		for x := box.Min.X; x < box.Max.X; x += square {
			one := image.Rect(x, y, x+square, y+square).Intersect(box)
			differ := 0.0
			for j := one.Min.Y; j < one.Max.Y; j++ {
				for i := one.Min.X; i < one.Max.X; i++ {
					r1, g1, b1, _ := p.At(i, j).RGBA()
					r2, g2, b2, _ := q.At(i, j).RGBA()
					differ += abs(r1, r2) + abs(g1, g2) + abs(b1, b2)
				}
			}
			if differ/float64(3*one.Dx()*one.Dy()) > 0xffff/20 {
				return false
			}
		}
	}
	return true
}

func abs(a, b uint32) float64 { return float64(max(a, b) - min(a, b)) }

// A sheet of any ratio holds all its words: nothing is written below its edge or in
// a view that is no view.
func TestWordsFit(t *testing.T) {
	answer := answerOf(t, "low-ceiling.json", protocol.Focus{})
	for _, ratio := range []float64{0.25, 0.5, 0.74, 0.76, 1, 2, 4} {
		s := Draw(answer, Options{View: Elevation, Ratio: ratio})
		if got := s.Height / s.Width; got < 0.999*ratio || got > 1.001*ratio {
			t.Errorf("ratio %v, want %v", got, ratio)
		}
		k, width := byDay, s.Width-2*pad
		if ratio < low {
			width = s.Width*(1-beside) - 4 - pad
		}
		if told := k.tall(answer, width); told > s.Height-pad {
			t.Errorf("ratio %v: the words take %.0f px of %.0f", ratio, told, s.Height)
		}
	}
}

// The key frames are golfer and club of the drawing itself at the tightest moment.
func TestKeyFrames(t *testing.T) {
	for name, focus := range map[string]protocol.Focus{"narrow.json": {}, "left-hander.json": {Player: "Left-handed friend"}} {
		answer := answerOf(t, name, focus)
		view := answer.flat.Side
		if answer.reel.Face {
			view = answer.flat.Face
		}
		at := map[string][2]float64{}
		for _, l := range view.Figure {
			at[l.Part] = l.A
		}
		const step = 1.0 / 240 // s: a frame may be half of that beside the moment
		for _, l := range answer.reel.figure(answer.reel.Tightest) {
			d := max(l.A[0]-at[l.Part][0], at[l.Part][0]-l.A[0], l.A[1]-at[l.Part][1], at[l.Part][1]-l.A[1])
			if d > 60*step/2+0.002 { // nothing of a swing is faster than 60 m/s
				t.Errorf("%s: the %s is %.3f m from where the drawing has it", name, l.Part, d)
			}
		}
		if n := len(answer.reel.moments()); n != 5 {
			t.Errorf("%s: %d key frames, want 5", name, n)
		}
	}
}

// Whoever the plan has not got is named.
func TestAskForNobody(t *testing.T) {
	for _, focus := range []protocol.Focus{{Player: "Nobody"}, {Tee: "Nobody"}} {
		if _, err := Ask(planOf(t, "low-ceiling.json"), focus); err == nil || !strings.Contains(err.Error(), "“Nobody”") {
			t.Errorf("asked for %+v: %v, want a sentence with the name", focus, err)
		}
	}
}
