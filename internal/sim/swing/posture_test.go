package swing

import (
	"math"
	"math/rand/v2"
	"testing"

	"wideberth/internal/sim/body"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/r3"
)

// Golfers of all heights, arms and clubs that can stand at all stand as they like best: no
// posture beside theirs that soles the club departs less from what they like.
func TestUsualPostureDepartsLeast(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 1))
	// Their arms are apes', and so they are as far from all wishes as there is: height, span,
	// club (m), and arms beside those (standard deviations).
	children := [][4]float64{{0.9, 1.1, 0.93, 1.5}, {0.9, 1.035, 0.75, 3}, {1.08, 1.32, 0.85, 3}, {1.0, 1.1, 0.8, 3}}
	stood := 0
	for i := range 400 {
		p, club := plan.Demo().WithDefaults().Players[0], plan.Demo().WithDefaults().Clubs[0]
		p.Height = 1.0 + 1.3*rng.Float64()
		p.Span = p.Height * (0.9 + 0.2*rng.Float64())
		club.Length = 0.7 + 0.55*rng.Float64()
		arm := 6*rng.Float64() - 3
		if i < len(children) {
			c := &children[i]
			p.Height, p.Span, club.Length, arm = c[0], c[1], c[2], c[3]
		}
		figure := newFigure(longerArms(body.New(p), 0.02*arm), NewClub(club))
		a := figure.newAddress()
		usual, ok := a.usual()
		if i < len(children) && (!ok || usual.hang < 0) {
			t.Errorf("child %v stands at %v, %v; want arms that hang forward", children[i], usual, ok)
		}
		if !ok {
			continue
		}
		stood++
		trunk, arms, shaft := wishes(figure.club)
		departs := func(p posture) float64 {
			x, y, z := (p.forward-trunk.angle)/trunk.give, (p.hang-arms.angle)/arms.give, (p.shaft-shaft.angle)/shaft.give
			return x*x + y*y + z*z
		}
		least := departs(usual)
		for range 12 {
			beside := posture{hang: usual.hang + 0.02*rng.NormFloat64(), shaft: usual.shaft + 0.02*rng.NormFloat64()}
			beside.forward = crossing(usual.forward-0.2, usual.forward+0.2, 1e-10, func(forward float64) float64 {
				return a.miss(posture{forward, beside.hang, beside.shaft})
			})
			if math.Abs(a.miss(beside)) < 1e-8 && departs(beside) < least-1e-6 {
				t.Errorf("a %.2f m golfer with span %.2f m and a %.2f m club stands at %v, which departs by %g, but %v does by %g", p.Height, p.Span, club.Length, usual, least, beside, departs(beside))
				break
			}
		}
	}
	if stood < 300 {
		t.Errorf("%d of 400 golfers find a stance, want 300", stood)
	}
}

// Every member of a family begins with the head of the club where the central swing
// begins, behind the ball, also one whose grip meets the body however it stands.
func TestMembersSoleTheClub(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 2))
	cramped := Variation{-0.889182408, -0.26509007, 0.652764044, -0.999197411, -0.37528332, -0.116331813, 0.541853024, -0.716138594, -0.594618725, -0.316710376, -1.004864275, 0.45758553}
	const off = 0.02 // m: the head tilts with the shaft
	stood := 0
	for i := range 60 {
		p, club := plan.Demo().WithDefaults().Players[0], plan.DefaultClub("wood", "wood")
		p.Height, club.Length = 1.0+1.2*rng.Float64(), 0.85+0.35*rng.Float64()
		if i == 0 {
			p.Height, p.Sex, p.Turn, p.Plane, club.Length = 1.4095940293441447, "male", "long", "flat", 1.1007440129240311
		}
		f, err := NewFamily(body.New(p), NewClub(club), StyleOf(p))
		if err != nil {
			continue
		}
		want := f.Central.PoseAt(0)[Clubhead]
		for _, v := range append(Variations(40, uint64(i)), cramped) {
			s, err := f.Member(v)
			if err != nil {
				continue
			}
			stood++
			if got := s.PoseAt(0)[Clubhead]; geom.Norm(r3.Sub(got.A, want.A)) > off || geom.Norm(r3.Sub(got.B, want.B)) > off {
				t.Errorf("a %.2f m golfer with a %.2f m club, %v: the head stands at %v, want %v", p.Height, club.Length, v, got, want)
			}
		}
	}
	if stood < 1500 {
		t.Errorf("%d members stand, want 1500", stood)
	}
}

// Between the arms for which it is solved, the usual posture is what solving finds there; and
// for most golfers it is solved in no other way, or nothing would be gained.
func TestWontsBetweenArms(t *testing.T) {
	const off = 1.2e-4 // rad
	rng := rand.New(rand.NewPCG(13, 3))
	between := 0
	for range 100 {
		p, club := plan.Demo().WithDefaults().Players[0], plan.Demo().WithDefaults().Clubs[0]
		p.Height = 1.2 + rng.Float64()
		p.Span = p.Height * (0.9 + 0.2*rng.Float64())
		club.Length = 0.85 + 0.35*rng.Float64()
		f, err := NewFamily(body.New(p), NewClub(club), StyleOf(p))
		if err != nil {
			continue
		}
		f.swinger(1)
		for range 10 {
			arm := 6*rng.Float64() - 3
			got, known := f.usual.of(arm)
			figure := f.figure(arm)
			want := figure.wonted()
			if !known {
				continue
			}
			between++
			if math.Abs(got.forward-want.posture.forward) > off || math.Abs(got.hang-want.posture.hang) > off || math.Abs(got.shaft-want.posture.shaft) > off {
				t.Errorf("a %.2f m golfer with span %.2f m and a %.2f m club, arm %.2f: %v, want %v", p.Height, p.Span, club.Length, arm, got, want.posture)
			}
		}
		if _, known := f.usual.of(3.1); known {
			t.Error("an arm beyond the family's is said to be known")
		}
	}
	if between < 900 {
		t.Errorf("%d of 1000 postures lie between such as are solved, want 900", between)
	}
}
