package ball

import (
	"fmt"
	"math"
	"testing"

	"wideberth/internal/fuzzed"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

// bay is the demo room with a deeper choice of things to meet.
func bay() plan.Plan {
	p := plantest.Loft().WithDefaults()
	p.Room.Solids = append(p.Room.Solids, plan.Solid{Name: "column", Min: [3]float64{4, 0, 0}, Max: [3]float64{4.3, 0.25, 2.87}})
	p.Hung = append(p.Hung, plan.Hung{Name: "heater", Min: [3]float64{4.2, 2.0, 2.2}, Max: [3]float64{4.6, 2.4, 2.5}})
	return p
}

func TestFirst(t *testing.T) {
	aim := func(launch, azimuth float64) Launch {
		l := degrees(45, launch, 4000)
		l.From.Z, l.Azimuth = Radius, azimuth*degree
		return l
	}
	high := bay()
	high.Screen.TopReturn, high.Screen.SideReturn = 0, 0
	bare := bay()
	bare.Screen = nil
	narrow := bay()
	narrow.Screen.Width, narrow.Screen.Bottom = 2, 0.30
	narrow.Screen.SideReturn = 0
	for _, c := range []struct {
		name            string
		plan            plan.Plan
		launch          Launch
		surface, beside string
		kind            Kind
		caught          bool
	}{
		{"straight", bay(), aim(15, 0), "screen", "", KindScreen, true},
		{"over the screen, cloth above", bay(), aim(35, 3), "top return", "", KindTopReturn, true},
		{"under the roof but before the return", bay(), aim(48, 12), "ceiling", "", KindCeiling, false},
		{"into the beam overhead", bay(), aim(84, 0), "boxed beam", "", KindSolid, false},
		{"into a hung box", bay(), aim(56, 0), "heater", "", KindHung, false},
		{"into the rafters", bay(), aim(42, 45), "rafters, left", "", KindSlope, false},
		{"to the right, cloth there", bay(), aim(10, -31), "right return", "", KindSideReturn, true},
		{"to the left, cloth there", bay(), aim(10, 31), "left return", "", KindSideReturn, true},
		{"wide of the cloth on the left", bay(), aim(10, 50), "left wall", "", KindWall, false},
		{"into the column", bay(), aim(10, -59), "column", "", KindSolid, false},
		{"onto the tube at the front of the return", bay(), aim(10, -40.7), "front frame", "", KindFrame, false},
		{"into the mat", bay(), aim(-5, 0), "floor", "", KindFloor, false},
		{"over the screen, no return", high, aim(35.0, 0), "front wall", "over", KindGap, false},
		{"past a narrow screen on the left", narrow, aim(10, 22), "front wall", "left of", KindGap, false},
		{"past a narrow screen on the right", narrow, aim(10, -22), "front wall", "right of", KindGap, false},
		{"under a screen that hangs high", narrow, aim(2, 0), "front wall", "under", KindGap, false},
		{"no screen at all", bare, aim(15, 0), "front wall", "", KindWall, false},
		{"backwards", bay(), aim(5, 180), "back wall", "", KindWall, false},
	} {
		got := First(c.plan, c.plan.Tees[0], c.launch)
		if got.Surface != c.surface || got.Kind != c.kind || got.Beside != c.beside || got.Caught != c.caught {
			t.Errorf("%s: First = %s (%s, %q, caught %v) at %.3v, want %s (%s, %q, caught %v)", c.name,
				got.Surface, got.Kind, got.Beside, got.Caught, got.Point, c.surface, c.kind, c.beside, c.caught)
		}
	}
}

// Contacts of straight flights can be worked out: no air, no weight to speak of
// in a millisecond-scale flight at 90 m/s is still 10 mm over 4 m, so the drop is
// put in.
func TestContactPointWithoutAir(t *testing.T) {
	const tol = 1e-4 // 0.1 mm, what the contact promises
	from := geom.Vec{X: 1, Y: 2, Z: 1}
	l := Launch{From: from, Speed: 90, Elevation: 20 * degree, Azimuth: 10 * degree}
	sin, cos := math.Sincos(20 * degree)
	sa, ca := math.Sincos(10 * degree)
	time := (5 - Radius - from.X) / (90 * cos * ca)
	c := Fly(l, Vacuum, []Target{{Name: "sheet", Kind: KindScreen,
		Box: &geom.Box{Min: geom.Vec{X: 5}, Max: geom.Vec{X: 5, Y: 5, Z: 5}}}}, Options{}).End
	want := [3]float64{5, from.Y + 90*cos*sa*time, from.Z + 90*sin*time - Gravity*time*time/2}
	for j := range 3 {
		if math.Abs(c.Point[j]-want[j]) > tol {
			t.Errorf("contact at %.6f, want %.6f (tol %g)", c.Point, want, tol)
			break
		}
	}
	if n := math.Acos(cos * ca); math.Abs(c.Angle-n) > 0.01 {
		t.Errorf("angle of arrival = %.4f, want about %.4f", c.Angle, n)
	}
	// An edge is met by the side of the ball: 10 mm beyond its end, 18.8 mm short.
	edge := geom.Box{Min: geom.Vec{X: 3, Y: -1, Z: -1}, Max: geom.Vec{X: 4, Y: 1, Z: 0}}
	straight := Launch{From: geom.Vec{Z: 0.010}, Speed: 1e4}
	c = Fly(straight, Vacuum, []Target{{Name: "edge", Kind: KindSolid, Box: &edge}}, Options{}).End
	if short := math.Sqrt(Radius*Radius - 1e-4); math.Abs(c.Arrival.P.X-(3-short)) > tol {
		t.Errorf("ball stops %.6f m before the edge, want %.6f", 3-c.Arrival.P.X, short)
	}
}

func TestStandingSurface(t *testing.T) {
	p := bay()
	low := First(p, p.Tees[0], FromClub(p.Clubs[0], 0)).Point[2]
	p.Floor.Mat.Inset = false
	high := First(p, p.Tees[0], FromClub(p.Clubs[0], 0)).Point[2]
	if math.Abs(high-low-p.Floor.Mat.Thickness) > 1e-6 {
		t.Errorf("a mat laid on top raises the touch by %.4f m, want its thickness %.4f", high-low, p.Floor.Mat.Thickness)
	}
}

// FuzzFirst: from any tee with any launch there is a contact, in the room, of
// finite figures, and nothing else was passed through on the way.
func FuzzFirst(engine *testing.F) {
	f := fuzzed.New(engine)
	f.Add(0.45, 0.5, 62.0, 12.5, 0.0, 2700.0, 0.0, uint8(0))
	f.Add(0.45, 0.5, 40.0, 55.0, 20.0, 9000.0, 15.0, uint8(7))
	f.Add(0.9, 0.05, 95.0, 89.9, -179.0, 15000.0, -90.0, uint8(15))
	f.Add(0.1, 0.9, 0.1, -3.0, 45.0, 0.0, 0.0, uint8(3))
	f.Add(0.45, 0.5, 75.0, 0.0, 90.0, 12000.0, 90.0, uint8(4))
	f.Fuzz(func(t *testing.T, x, y, speed, launch, azimuth, spin, tilt float64, shape uint8) {
		for _, v := range []float64{x, y, speed, launch, azimuth, spin, tilt} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				return
			}
		}
		part := func(v float64) float64 { _, frac := math.Modf(math.Abs(v)); return frac }
		p := bay()
		if shape&1 != 0 {
			p.Screen.SideReturn, p.Screen.TopReturn = 0, 0
		}
		if shape&2 != 0 {
			p.Screen.Width, p.Screen.Height, p.Screen.Bottom = 1.5, 1.2, 0.4
		}
		if shape&4 != 0 {
			p.Screen = nil
		}
		if shape&8 != 0 {
			p.Floor.Mat.Inset = false
		}
		tee := plan.Tee{X: 0.3 + 5*part(x), Y: 0.5 + 3.2*part(y)}
		l := degrees(0.05+math.Mod(math.Abs(speed), 95), math.Mod(launch, 90), math.Mod(math.Abs(spin), 15000))
		l.Azimuth, l.Tilt = math.Mod(azimuth, 180)*degree, math.Mod(tilt, 90)*degree
		l.From.Z = Radius
		p.Tees = []plan.Tee{tee}
		s := NewScene(p)
		start := l.At(p, tee).From
		for i := range s.Targets {
			if gap, _ := s.Targets[i].gap(start); gap < -1e-9 {
				return // the ball would start inside something
			}
		}
		c := s.First(tee, l)
		if c.Kind == KindNone || c.Surface == "" {
			t.Fatalf("no contact: %+v", c)
		}
		for j, size := range [3]float64{p.Room.Length, p.Room.Width, p.Room.Height} {
			if !(c.Point[j] > -1e-6 && c.Point[j] < size+1e-6) {
				t.Errorf("contact at %v is outside the room", c.Point)
			}
		}
		if !(c.Time >= 0 && c.Time < 5) || !(c.Angle >= 0 && c.Angle <= math.Pi/2) || !(c.Speed >= 0 && c.Speed <= l.Speed+Gravity*c.Time+1e-6) {
			t.Errorf("time %v, angle %v or speed %v makes no sense for a launch at %v m/s", c.Time, c.Angle, c.Speed, l.Speed)
		}
		for i := range s.Targets {
			if gap, _ := s.Targets[i].gap(c.Arrival.P); gap < -1e-6 {
				t.Errorf("ball overlaps %s by %g m at its contact with %s", s.Targets[i].Name, -gap, c.Surface)
			}
		}
	})
}

func ExampleFirst() {
	p := plantest.Loft().WithDefaults()
	wedge := FromClub(p.Clubs[2], 0)
	c := First(p, p.Tees[0], wedge)
	fmt.Printf("%s, %.2f m up\n", c.Surface, c.Point[2])
	wedge.Elevation = 50 * degree
	c = First(p, p.Tees[0], wedge)
	fmt.Printf("%s, %.2f m before the screen\n", c.Surface, c.Short)
	// Output:
	// screen, 1.56 m up
	// ceiling, 0.78 m before the screen
}

// A solid with a cover is met as its cover and no longer as bare and hard, in the
// same place; a golfer must clear it all the same (package sweep knows no cover).
func TestCoveredSolid(t *testing.T) {
	p := bay()
	column := &p.Room.Solids[len(p.Room.Solids)-1]
	at := plan.Tee{X: 2.9, Y: 0.1}
	l := degrees(45, 15, 4000)
	l.From.Z = Radius
	bare := First(p, at, l)
	if bare.Surface != "column" || bare.Material != Hard {
		t.Fatalf("bare: %s, %s, want the column, hard", bare.Surface, bare.Material)
	}
	for cover, want := range map[string]Material{plan.CoverFoam: Foam, plan.CoverCloth: Cloth} {
		column.Cover = cover
		if got := First(p, at, l); got.Material != want || got.Point != bare.Point {
			t.Errorf("%s: %s at %v, want %s at %v", cover, got.Material, got.Point, want, bare.Point)
		}
	}
}
