package screen

import (
	"math"
	"math/rand/v2"
	"testing"

	"wideberth/internal/sim/build/figures"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/sim/plan"
	"wideberth/internal/units"
)

// TestSizesFromDiagonal: the sizes of images by their diagonal, to a tenth of an inch.
func TestSizesFromDiagonal(t *testing.T) {
	for _, r := range figures.Read("images.csv") {
		aspect := r.Number("across") / r.Number("down")
		w, h := Largest(r.Number("width"), 1e3, aspect)
		if math.Abs(w-r.Number("width")) > 0.05 || math.Abs(h-r.Number("height")) > 0.07 || math.Abs(math.Hypot(w, h)-r.Number("diagonal")) > 0.1 {
			t.Errorf("%v: %v × %v", r, w, h)
		}
	}
}

func TestLargest(t *testing.T) {
	for _, c := range []struct {
		name                        string
		w, h, aspect, width, height float64
	}{
		{"wide cloth: the height limits", 4, 2, 1.6, 3.2, 2},
		{"high cloth: the width limits", 4, 3, 1.6, 4, 2.5},
		{"just so", 4, 2.5, 1.6, 4, 2.5},
		{"nothing left", -1, 2, 1.6, 0, 0},
	} {
		if w, h := Largest(c.w, c.h, c.aspect); math.Abs(w-c.width) > 1e-12 || math.Abs(h-c.height) > 1e-12 {
			t.Errorf("%s: %v × %v, want %v × %v", c.name, w, h, c.width, c.height)
		}
	}
}

// TestImageInside: whatever is wanted, the image lies in the opening with the aspect
// asked for, borders and image make up the opening, and more padding never makes a
// larger image.
func TestImageInside(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	p := plan.Demo()
	for range 500 {
		e := spec.Enclosure{Padding: 0.3 * rng.Float64(), Sill: 0.3 * rng.Float64(), Border: 0.2 * rng.Float64()}
		aspect := 1 + 1.5*rng.Float64()
		want := spec.Image{Width: 5 * rng.Float64() * float64(rng.IntN(2)), Bottom: 2 * rng.Float64() * float64(rng.IntN(2))}
		o := OpeningOf(p, e)
		i := Place(o, aspect, want)
		if i.Bottom < o.Bottom-1e-9 || i.Bottom+i.Height > o.Top+1e-9 || math.Abs(i.Width/i.Height-aspect) > 1e-9 {
			t.Fatalf("%+v of aspect %v is not in %+v", i, aspect, o)
		}
		b := i.Border
		if math.Abs(b.Left+i.Width+b.Right-(o.Left-o.Right)) > 1e-9 || math.Abs(b.Top+i.Height+b.Bottom-(o.Top-o.Bottom)) > 1e-9 {
			t.Fatalf("borders %+v and image do not make up %+v", b, o)
		}
		if i.Cut != (want.Width > i.Width+1e-3 || want.Bottom > 0 && math.Abs(want.Bottom-i.Bottom) > 1e-3) && math.Abs(want.Width-i.Width) > 2e-4 && math.Abs(want.Bottom-i.Bottom) > 2e-4 {
			t.Fatalf("cut %v: %+v wanted, %+v given", i.Cut, want, i)
		}
		full := Place(o, aspect, spec.Image{})
		e.Padding += 0.1
		if less := Place(OpeningOf(p, e), aspect, spec.Image{}); less.Width > full.Width+1e-12 {
			t.Fatalf("more padding made %v of %v", less.Width, full.Width)
		}
	}
}

// TestViews: a golfer 3.0 m from an image 3.66 m wide sees it 62.8° wide (arithmetic);
// 3.2 heights from a 16:9 image it is 31° wide and a pixel of 1,920 a minute of arc
// (ITU-R BT.1845, from memory).
func TestViews(t *testing.T) {
	p := plan.Plan{Tees: []plan.Tee{{Name: "tee", X: 3, Y: 2}}, Seats: []plan.Seat{{Name: "seat", X: 3, Y: 5}}}
	v := Views(p, Image{Width: 3.66, Height: 2, X: 6, Centre: 2}, 1920)
	if math.Abs(v[0].Wide-62.8) > 0.05 || v[0].Aside != 0 || math.Abs(v[1].Aside-45) > 1e-9 || v[1].Kind != "seat" {
		t.Errorf("%+v", v)
	}
	v = Views(p, Image{Width: 16, Height: 9, X: 3 + 3.2*9, Centre: 2}, 1920)
	if math.Abs(v[0].Wide-31) > 0.2 || math.Abs(v[0].Pixel-1) > 0.04 {
		t.Errorf("from 3.2 heights: %+v", v[0])
	}
}

func TestAround(t *testing.T) {
	const in = units.MetresPerInch
	p := plan.Demo()
	a := AroundOf(p)
	// The screen is 12 ft wide in a room of 18 ft, 16 in from the front wall; the rafters
	// come down left of it.
	for _, c := range []struct {
		what      string
		got, want float64
	}{{"behind", a.Behind, 16 * in}, {"left", a.Left, 36 * in}, {"right", a.Right, 36 * in}} {
		if math.Abs(c.got-c.want) > 1e-3 {
			t.Errorf("%s %v, want %v", c.what, c.got, c.want)
		}
	}
	if flat := p.Room.Height - p.Screen.Bottom - p.Screen.Height; !(a.Ceiling > 0 && a.Ceiling < flat) {
		t.Errorf("%v to the ceiling: under the rafters it is less than %v", a.Ceiling, flat)
	}
}
