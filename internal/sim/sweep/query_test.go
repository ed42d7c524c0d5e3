package sweep

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/swing"
)

// turning is a club of one length that turns about a fixed hub in an upright
// plane across the room (y–z), with every other part still at the hub.
type turning struct {
	hub    geom.Vec
	length float64 // m
	rate   float64 // rad/s
	turns  float64
}

func (m turning) Duration() float64 { return 2 * math.Pi * m.turns / m.rate }

func (m turning) PoseAt(t float64) swing.Pose {
	var out swing.Pose
	for p := range out {
		out[p] = geom.Capsule{A: m.hub, B: m.hub, R: 0.01}
	}
	s, c := math.Sincos(m.rate * t)
	tip := geom.Vec{X: m.hub.X, Y: m.hub.Y + m.length*s, Z: m.hub.Z - m.length*c}
	out[swing.Shaft] = geom.Capsule{A: m.hub, B: tip, R: 0.01}
	out[swing.Clubhead] = geom.Capsule{A: tip, B: tip, R: 0.05}
	return out
}

// A club of 1.2 m that turns about a hub 1.3 m above the ball reaches 2.55 m
// with its head: 0.08 m short of a beam 2.63 m up.
func ExampleTrack_Clearance() {
	track := Sample(turning{hub: geom.Vec{Z: 1.3}, length: 1.2, rate: 20, turns: 1}, FineTolerance)
	beam := Surface{Name: "beam", Kind: Solid, Box: geom.Box{
		Min: geom.Vec{X: -0.1, Y: -2, Z: 2.63}, Max: geom.Vec{X: 0.1, Y: 2, Z: 2.87},
	}}
	c := track.Clearance(beam)
	fmt.Printf("the %v passes the %s by %.2f m after %.2f s\n", c.Part, beam.Name, c.Clearance, c.Time)
	// Output: the clubhead passes the beam by 0.08 m after 0.16 s
}

// TestTurningClub holds the queries against what a circle gives on paper.
func TestTurningClub(t *testing.T) {
	m := turning{hub: geom.Vec{Z: 1.3}, length: 1.2, rate: 40, turns: 1}
	track := Sample(m, FineTolerance)
	at := func(angle float64) float64 { return angle / m.rate }
	ceiling := Surface{Name: "ceiling", Kind: Ceiling, Plane: geom.Halfspace{N: geom.Vec{Z: -1}, D: -2.45}}
	thin := Surface{Name: "cloth", Kind: Return, Box: geom.Box{
		Min: geom.Vec{X: -1, Y: 1, Z: 1.3}, Max: geom.Vec{X: 1, Y: 1.005, Z: 3},
	}}
	for _, c := range []struct {
		name         string
		surface      Surface
		want         float64
		deepest      float64 // s, 0: many moments are equally deep
		struck       bool
		firstContact float64 // s
	}{
		// 1.3 − 1.2 cos φ + 0.05 = 2.45 at the first contact.
		{"ceiling", ceiling, -0.10, at(math.Pi), true, at(math.Acos(-1.1 / 1.2))},
		{"far wall", Surface{Kind: Wall, Plane: geom.Halfspace{N: geom.Vec{Y: 1}, D: -2}}, 0.75, at(1.5 * math.Pi), false, 0},
		// The cloth begins at the hub's height; the head, at y = 1.2 sin φ, is
		// first within 0.05 m of its edge (1, 1.3) a little below it, and later
		// the shaft cuts through by 0.2 m.
		{"cloth", thin, -0.2, 0, true, at(firstAtEdge(1.2, 1, 0.05))},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := track.Clearance(c.surface)
			if c.name != "cloth" {
				if math.Abs(got.Clearance-c.want) > Tolerance || math.Abs(got.Time-c.deepest) > 0.003 || got.Part != swing.Clubhead {
					t.Errorf("Clearance = %+v, want clubhead at %.4f after %.4f s", got, c.want, c.deepest)
				}
			} else if got.Clearance >= 0 || got.Clearance < c.want {
				t.Errorf("Clearance = %+v, want in [%.2f, 0)", got, c.want)
			}
			first, ok := track.FirstContact(c.surface)
			// A head at 48 m/s takes 42 µs for Tolerance; grazing takes longer.
			if ok != c.struck || ok && math.Abs(first.Time-c.firstContact) > 0.0005 {
				t.Errorf("FirstContact = %+v, %v, want %v at %.5f s", first, ok, c.struck, c.firstContact)
			}
			// The same from a stretch of the motion, and nothing before it.
			const around = 0.01 // s
			part := Between(m, c.firstContact-around, c.firstContact+around, 0.001)
			if again, ok := part.FirstContactBefore(c.surface, math.Inf(1)); ok != c.struck || ok && math.Abs(again.Time-c.firstContact) > 0.0005 {
				t.Errorf("FirstContactBefore in a stretch = %+v, %v, want %v at %.5f s", again, ok, c.struck, c.firstContact)
			}
			if early, ok := track.FirstContactBefore(c.surface, first.Time); ok {
				t.Errorf("FirstContactBefore(%.5f s) = %+v, want none", first.Time, early)
			}
		})
	}
}

// firstAtEdge returns the angle at which a head of radius r on a circle first
// touches an edge at the height of the hub, d beside it: the distance of the
// head's middle from the edge is r, by the law of cosines.
func firstAtEdge(length, d, r float64) float64 {
	cos := (length*length + d*d - r*r) / (2 * length * d)
	if cos >= 1 {
		// The head passes outside; the shaft, of radius 0.01 m, meets the edge.
		return math.Pi/2 - math.Asin(0.01/d)
	}
	return math.Pi/2 - math.Acos(cos)
}

// TestStrikes checks that no frame rate loses a strike and that every frame's
// marks lie within its half frames.
func TestStrikes(t *testing.T) {
	m := turning{hub: geom.Vec{Z: 1.3}, length: 1.2, rate: 40, turns: 1}
	track := Sample(m, FineTolerance)
	post := Surface{Kind: Solid, Box: geom.Box{Min: geom.Vec{X: -1, Y: 1.1, Z: 1.299}, Max: geom.Vec{X: 1, Y: 3, Z: 1.301}}}
	deepest := track.Clearance(post)
	for _, rate := range []float64{30, 60, 240, 10000} {
		marks := track.Strikes(post, rate)
		if len(marks) == 0 {
			t.Errorf("at %v frames/s: no strike, want one", rate)
			continue
		}
		low := math.Inf(1)
		for _, c := range marks {
			if c.Clearance >= 0 {
				t.Errorf("at %v frames/s: a strike at %v m", rate, c.Clearance)
			}
			low = min(low, c.Clearance)
		}
		if math.Abs(low-deepest.Clearance) > 2*searchTolerance {
			t.Errorf("at %v frames/s: deepest strike %.5f, want %.5f (%g)", rate, low, deepest.Clearance, 2*searchTolerance)
		}
	}
	far := Surface{Kind: Wall, Plane: geom.Halfspace{N: geom.Vec{Y: 1}, D: -2}}
	if got := track.Strikes(far, 240); got != nil {
		t.Errorf("Strikes of a wall out of reach = %v, want none", got)
	}
}

// TestBetween: a stretch keeps to the motion, and its steps to theirs.
func TestBetween(t *testing.T) {
	m := turning{hub: geom.Vec{Z: 1.3}, length: 1.2, rate: 40, turns: 1}
	end := m.Duration()
	for _, c := range []struct {
		name                  string
		from, to, first, last float64
		samples               int
	}{
		{"inside", 0.05, 0.06, 0.05, 0.06, 5},
		{"before the start", -1, 0.01, 0, 0.01, 5},
		{"past the end", end - 0.003, 9, end - 0.003, end, 3},
		{"nothing of it", 5, 9, end, end, 2},
		{"turned round", 0.06, 0.05, 0.06, 0.06, 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			times, _ := Between(m, c.from, c.to, 0.0025).Samples()
			if len(times) != c.samples || math.Abs(times[0]-c.first) > rounding || math.Abs(times[len(times)-1]-c.last) > rounding {
				t.Errorf("Between(%v, %v) samples %v, want %d from %v to %v", c.from, c.to, times, c.samples, c.first, c.last)
			}
		})
	}
}

// TestWindow: windows that follow each other come to the clearance of the whole,
// and one whose limit is nearer finds nothing.
func TestWindow(t *testing.T) {
	m := turning{hub: geom.Vec{Z: 1.3}, length: 1.2, rate: 20, turns: 1}
	track := Sample(m, FineTolerance)
	for _, s := range []Surface{
		{Name: "ceiling", Kind: Ceiling, Plane: geom.Halfspace{N: geom.Vec{Z: -1}, D: -2.6}},
		{Name: "beam", Kind: Solid, Box: geom.Box{Min: geom.Vec{X: -0.1, Y: 1, Z: 1.5}, Max: geom.Vec{X: 0.1, Y: 2, Z: 1.6}}},
	} {
		whole := track.Clearance(s)
		const rate = 50
		least := Contact{Clearance: math.Inf(1)}
		for k := range int(m.Duration()*rate) + 2 {
			w := track.Window((float64(k)-0.5)/rate, (float64(k)+0.5)/rate)
			c, ok := w.Clearance(s, math.Inf(1))
			if !ok || c.Time < (float64(k)-0.5)/rate-1e-9 || c.Time > (float64(k)+0.5)/rate+1e-9 {
				t.Fatalf("%s: window %d has %+v, %t", s.Name, k, c, ok)
			}
			if c, ok := w.Clearance(s, c.Clearance-0.001); ok {
				t.Errorf("%s: window %d has %+v under a limit that is nearer", s.Name, k, c)
			}
			if c.Clearance < least.Clearance {
				least = c
			}
		}
		if math.Abs(least.Clearance-whole.Clearance) > 2*searchTolerance || least.Part != whole.Part {
			t.Errorf("%s: the windows come to %+v, the whole to %+v", s.Name, least, whole)
		}
	}
}

// TestStill: somebody who does not move has the clearance of the pose.
func TestStill(t *testing.T) {
	m := turning{hub: geom.Vec{Z: 1.3}, length: 1.2, rate: 1, turns: 0}
	track := Sample(m, FineTolerance)
	floor := Surface{Kind: Wall, Plane: geom.Halfspace{N: geom.Vec{Z: 1}, D: -1}}
	if got := track.Clearance(floor).Clearance; math.Abs(got-1.05) > rounding {
		t.Errorf("Clearance = %v, want 1.05", got)
	}
	box := Surface{Kind: Solid, Box: geom.Box{Min: geom.Vec{X: 1, Y: -1}, Max: geom.Vec{X: 2, Y: 1, Z: 3}}}
	if got := track.Clearance(box).Clearance; math.Abs(got-0.95) > searchTolerance {
		t.Errorf("Clearance = %v, want 0.95", got)
	}
	if _, ok := track.FirstContact(box); ok {
		t.Error("FirstContact with a box out of reach")
	}
}

func TestTreeOfFamily(t *testing.T) {
	var family []*Track
	for i := range uint64(6) {
		family = append(family, Sample(newWobble(i), FineTolerance))
	}
	tree := NewTree(family...)
	for seed := range uint64(20) {
		s := randomSurface(seed)
		if s.Kind.Flat() {
			continue
		}
		want := math.Inf(1)
		for _, m := range family {
			want = min(want, m.Clearance(s).Clearance)
		}
		got := tree.Clearance(s.Box)
		if math.Abs(got.Clearance-want) > 2*searchTolerance {
			t.Errorf("box %d: Clearance = %.5f, want %.5f (%g)", seed, got.Clearance, want, 2*searchTolerance)
		}
		if own := family[got.Track].Clearance(s).Clearance; math.Abs(own-got.Clearance) > 2*searchTolerance {
			t.Errorf("box %d: track %d has %.5f of its own, the tree says %.5f", seed, got.Track, own, got.Clearance)
		}
		if c, ok := tree.ClearanceWithin(s.Box, want-0.01); ok || c.Clearance != want-0.01 {
			t.Errorf("box %d: ClearanceWithin(%.4f) = %+v, %v, want none", seed, want-0.01, c, ok)
		}
	}
}

// TestReset checks that a used track forgets, and that it allocates nothing.
func TestReset(t *testing.T) {
	a, b := Sample(newWobble(1), FineTolerance), Sample(newWobble(2), FineTolerance)
	box := Surface{Kind: Solid, Box: geom.Box{Min: geom.Vec{X: 1, Y: -1, Z: 1}, Max: geom.Vec{X: 2, Y: 1, Z: 2}}}
	want := b.Clearance(box)
	used := NewTrack(a.Samples())
	used.Clearance(box)
	times, poses := b.Samples()
	used.Reset(times, poses)
	if got := used.Clearance(box); got != want {
		t.Errorf("Clearance after Reset = %+v, want %+v", got, want)
	}
	out := make([]Extreme, len(roomDirs))
	if n := testing.AllocsPerRun(10, func() {
		used.Reset(times, poses)
		used.Support(roomDirs, out)
		used.Clearance(box)
	}); n != 0 {
		t.Errorf("Reset, Support and Clearance allocate %v times, want 0", n)
	}
}

func TestNewTrackPanics(t *testing.T) {
	for _, c := range []struct {
		name  string
		times []float64
		want  string
	}{
		{"lengths differ", []float64{0, 1, 2}, "3 times for 2 poses"},
		{"time stands still", []float64{1, 1}, "time 1 after time 1"},
		{"not a number", []float64{0, math.NaN()}, "time NaN after time 0"},
	} {
		t.Run(c.name, func(t *testing.T) {
			defer func() {
				if got := fmt.Sprint(recover()); !strings.Contains(got, c.want) {
					t.Errorf("panic %q, want %q in it", got, c.want)
				}
			}()
			NewTrack(c.times, make([]swing.Pose, 2))
		})
	}
}

// TestLoftLeftHander runs a whole plan through: every surface of the loft, both
// players, contacts in the room's frame on the surface they name.
func TestLoftLeftHander(t *testing.T) {
	p := loft()
	track := Sample(turning{hub: geom.Vec{Y: 0.6, Z: 1.3}, length: 1.5, rate: 30, turns: 1}, FineTolerance)
	for _, pl := range p.Players {
		at := Place(p, plan.Tee{X: 2.90, Y: 2.21}, pl)
		room := Surfaces(p)
		for i, s := range at.Surfaces(room) {
			c := at.ContactToRoom(track.Clearance(s))
			var off float64
			if s.Kind.Flat() {
				off = room[i].Plane.PointDistance(c.OnSurface)
			} else {
				off = max(room[i].Box.PointDistance(c.OnSurface), 0)
			}
			if math.Abs(off) > 1e-9 {
				t.Errorf("%s: the contact with the %s lies %g off it", pl.Name, s.Name, off)
			}
		}
	}
}
