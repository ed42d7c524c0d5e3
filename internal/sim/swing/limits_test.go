package swing

import (
	"errors"
	"math"
	"testing"

	"wideberth/internal/fuzzed"
	"wideberth/internal/sim/body"
	"wideberth/internal/sim/plan"
)

// sane fails unless every part of the swing is a number, within reach of a
// golfer and a club of that size, over the floor, and at a speed of this world.
func sane(t *testing.T, s *Swing) {
	t.Helper()
	const fastest = 80.0 // m/s
	const dig = 0.01     // m under the mat
	reach := 2*s.figure.body.Stature + 2*s.figure.club.Length
	for at := 0.0; at <= s.Duration(); at += 0.02 {
		for part, c := range s.PoseAt(at) {
			for _, v := range []float64{c.A.X, c.A.Y, c.A.Z, c.B.X, c.B.Y, c.B.Z} {
				if !(math.Abs(v) < reach) {
					t.Fatalf("%v at %.2f s is at %v, %v; want it within %.1f m", Part(part), at, c.A, c.B, reach)
				}
			}
			if low := c.Bounds().Min.Z; low < -dig {
				t.Fatalf("%v at %.2f s is %.3f m under the mat, want at most %g", Part(part), at, -low, dig)
			}
		}
	}
	if v := s.ClubheadSpeed(s.ImpactTime()); !(v > 3 && v < fastest) {
		t.Fatalf("clubhead speed = %.1f m/s, want 3 to %g", v, fastest)
	}
	if d := s.Duration(); !(d > 1 && d < 5) {
		t.Fatalf("duration = %.2f s, want 1 to 5", d)
	}
}

// TestSizes asks for a sane swing of everybody with a club of about their size,
// from small children to giants, and of their whole family.
func TestSizes(t *testing.T) {
	for _, c := range []struct{ height, length, lie float64 }{
		{0.90, 0.50, 62}, {0.90, 0.60, 60}, {1.10, 0.70, 60}, {1.30, 0.80, 60}, {1.40, 1.00, 58},
		{1.50, 1.10, 58}, {1.75, 1.219, 58}, {1.75, 1.60, 58}, {2.00, 1.00, 62}, {2.20, 1.219, 58}, {2.40, 1.30, 60},
	} {
		f, err := NewFamily(golfer(c.height), NewClub(plan.Club{Kind: plan.KindIron, Length: c.length, Lie: c.lie}), Style{})
		if err != nil {
			t.Errorf("%.2f m with %.2f m: %v", c.height, c.length, err)
			continue
		}
		sane(t, f.Central)
		for _, v := range Variations(64, 20) {
			s, err := f.Member(v)
			if err != nil {
				t.Fatalf("%.2f m with %.2f m: %v", c.height, c.length, err)
			}
			sane(t, s)
		}
	}
}

// TestImpossibleClub asks for the sentence that names golfer and club.
func TestImpossibleClub(t *testing.T) {
	_, err := New(golfer(2), NewClub(plan.Club{Kind: plan.KindIron, Length: 0.45, Lie: 62}), Style{})
	const want = "a 2.00 m golfer with a 0.45 m club: no stance lets the hands reach the grip with the club on the mat"
	if !errors.Is(err, ErrNoStance) || err.Error() != want {
		t.Errorf("New = %v, want %q", err, want)
	}
}

// FuzzNew asks, over everything that a plan may hold, for a sane swing or an
// error.
func FuzzNew(engine *testing.F) {
	f := fuzzed.New(engine)
	f.Add(1.75, 1.156, 58.0, 0.0, uint8(0), uint8(0), 0.0, 0.0, 0.0)
	f.Add(0.9, 0.45, 80.0, 0.25, uint8(1), uint8(13), 2.5, -2.5, 2.5)
	f.Add(2.4, 1.6, 40.0, 1.1, uint8(4), uint8(26), -2.5, 2.5, -2.5)
	f.Add(0.9, 1.6, 80.0, 1.1, uint8(0), uint8(20), 2.5, 2.5, 2.5)
	kinds := []string{plan.KindDriver, plan.KindWood, plan.KindHybrid, plan.KindIron, plan.KindWedge}
	turns := []string{plan.TurnFull, plan.TurnCompact, plan.TurnLong}
	planes := []string{plan.PlaneNeutral, plan.PlaneUpright, plan.PlaneFlat}
	follows := []string{plan.FollowFull, plan.FollowHeld, plan.FollowLoose}
	within := func(v, lo, hi float64) bool { return v >= lo && v <= hi }
	f.Fuzz(func(t *testing.T, height, length, lie, arm float64, kind, style uint8, x, y, z float64) {
		if !within(height, 0.9, 2.4) || !within(length, 0.45, 1.6) || !within(lie, 40, 80) ||
			(arm != 0 && !within(arm, 0.30*height, 0.48*height)) || // what a person's arm may be; the survey's is 0.37 of stature
			!within(x, -Reach, Reach) || !within(y, -Reach, Reach) || !within(z, -Reach, Reach) {
			return
		}
		b := body.New(plan.Player{Height: height, Arm: arm, Shoe: plan.DefaultShoe})
		c := NewClub(plan.Club{Kind: kinds[int(kind)%len(kinds)], Length: length, Lie: lie})
		words := Style{Turn: turns[style%3], Plane: planes[style/3%3], Follow: follows[style/9%3]}
		family, err := NewFamily(b, c, words)
		if err != nil {
			return
		}
		sane(t, family.Central)
		var v Variation
		for i := range v {
			v[i] = [3]float64{x, y, z}[i%3]
		}
		s, err := family.Member(v)
		if err != nil {
			return
		}
		sane(t, s)
	})
}
