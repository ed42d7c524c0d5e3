package swing

import (
	"math"
	"slices"

	"wideberth/internal/lean/halton"
	"wideberth/internal/sim/body"
)

// Family is all the swings that one golfer may make with one club: a central
// swing and a spread of traits about it. Its members share the central swing's
// timing, so that they can be compared instant by instant; where a swing goes
// does not depend on how fast it goes there.
type Family struct {
	Central *Swing

	body    body.Body
	club    Club
	style   Style
	stands  standing
	spread  [NumTraits]float64
	usual   *wonts     // nil until somebody's arm is another
	own     swinger    // the golfer with the arms that were guessed
	golfers [2]swinger // with others: those asked for last, the last one first
	stances [2]stood   // the same
	times   []float64
	moments []moment
	shares  [][2]float64 // of the arm's and the club's arc to go, during the downswing
}

// NewFamily models the central swing and its spread.
func NewFamily(b body.Body, c Club, style Style) (*Family, error) {
	stands, err := newStanding(b, c, style)
	if err != nil {
		return nil, err
	}
	f := &Family{body: b, club: c, style: style, stands: stands, spread: style.spread(b.ArmSD)}
	f.own = newSwinger(b, c)
	f.stances[0] = f.own.stand(stands.of(Variation{}))
	f.stances[1] = f.stances[0]
	f.Central = &Swing{}
	if err := f.Central.build(&f.stances[0], style, [NumTraits]float64{}, nil); err != nil {
		return nil, err
	}
	return f, nil
}

// Note returns a sentence about what is strange in the distances that were
// measured at address, or "".
func (f *Family) Note() string { return f.stands.note }

// Member models the member of the family that v places.
func (f *Family) Member(v Variation) (*Swing, error) {
	s := &Swing{}
	if err := f.Fill(v, s); err != nil {
		return nil, err
	}
	return s, nil
}

// Fill is Member over a swing of the caller's, which saves the memory when one
// member after the other is looked at and left. After an error s is of no use.
func (f *Family) Fill(v Variation, s *Swing) error {
	var trait [NumTraits]float64
	for t := range trait {
		trait[t] = v[t] * f.spread[t]
	}
	return s.build(f.stood(v), f.style, trait, f.Central.Downswing)
}

// stood returns the golfer at the ball whom v places. Two are kept, because how one
// trait after the other changes a swing is often asked, and few change the address.
func (f *Family) stood(v Variation) *stood {
	arm, dev := v[TraitArm], f.stands.of(v)
	fits := func(s *stood) bool { return s.arm == arm && s.dev == dev }
	if !fits(&f.stances[0]) {
		f.stances[0], f.stances[1] = f.stances[1], f.stances[0]
		if !fits(&f.stances[0]) {
			f.stances[0] = f.swinger(arm).stand(dev)
		}
	}
	return &f.stances[0]
}

// swinger returns the golfer with an arm of the family, standard deviations.
func (f *Family) swinger(arm float64) *swinger {
	if arm == 0 {
		return &f.own
	}
	if f.golfers[0].arm != arm {
		f.golfers[0], f.golfers[1] = f.golfers[1], f.golfers[0]
		if f.golfers[0].arm != arm {
			f.arm(&f.golfers[0], arm)
		}
	}
	return &f.golfers[0]
}

// arm makes g the golfer with an arm of the family.
func (f *Family) arm(g *swinger, arm float64) {
	if f.usual == nil {
		f.usual = wontsOf(func(arm float64) wont { g := f.figure(arm); return g.wonted() })
	}
	g.arm, g.figure = arm, f.figure(arm)
	usual, known := f.usual.of(arm)
	if !known {
		g.usual = g.figure.wonted()
		return
	}
	g.usual = wont{g.figure.newAddress(), usual, true}
}

// figure returns the golfer's figure with an arm of the family, standard deviations.
func (f *Family) figure(arm float64) figure {
	b := f.body
	// Long arms tend to go with high shoulders (ANSUR II residuals), so an arm
	// longer than guessed also hangs from a shoulder a little higher.
	b.ShoulderHeight += arm * b.ArmShoulderCorr * b.ShoulderHeightSD
	return newFigure(longerArms(b, arm*f.spread[TraitArm]), f.club)
}

// longerArms returns the body with arms that are longer, m.
func longerArms(b body.Body, longer float64) body.Body {
	scale := 1 + longer/b.Arm()
	b.UpperArm, b.Forearm, b.Hand = b.UpperArm*scale, b.Forearm*scale, b.Hand*scale
	return b
}

// SetTimes fixes the instants at which Poses evaluates a member. They are not to be
// changed after that.
func (f *Family) SetTimes(times []float64) {
	if len(times) == len(f.times) && len(times) > 0 && &times[0] == &f.times[0] {
		return
	}
	f.times = times
	f.moments = slices.Grow(f.moments[:0], len(times))[:len(times)]
	f.shares = slices.Grow(f.shares[:0], len(times))[:len(times)]
	c := f.Central
	for i, t := range times {
		f.moments[i] = momentAt(&c.times, t)
		if t > c.times[kTop] && t < c.times[kImpact] {
			since := t - c.times[kTop]
			f.shares[i] = [2]float64{c.Downswing.share(&c.Downswing.arm, since), c.Downswing.share(&c.Downswing.club, since)}
		}
	}
}

// Poses fills out, one pose per instant of SetTimes, with the wanted parts of a
// member's poses. The others keep what they held.
func (f *Family) Poses(member *Swing, want Parts, out []Pose) {
	for i := range f.moments {
		f.pose(member, i, want, &out[i])
	}
}

// PosesOf is Poses with the parts that are wanted at each instant.
func (f *Family) PosesOf(member *Swing, want []Parts, out []Pose) {
	for i := range f.moments {
		f.pose(member, i, want[i], &out[i])
	}
}

// pose fills parts of a member's pose at the i-th instant of SetTimes.
func (f *Family) pose(member *Swing, i int, want Parts, out *Pose) {
	var j joints
	member.curves.at(&f.moments[i], &j)
	if t := f.times[i]; t > member.times[kTop] && t < member.times[kImpact] {
		member.curves.comeDown(f.shares[i][0], f.shares[i][1], &j)
	}
	member.figure.pose(&j, want, out)
}

// Reach bounds the family, in standard deviations of all traits together: no
// variation is longer than this, so that there is a loosest swing in every
// direction. Of a normal distribution without bounds about 1 in 1,000 (0.13 %)
// goes farther than this in any one direction.
const Reach = 3.0

// Variations returns n members of the standard family by a scrambled Halton
// sequence (A. B. Owen 2017, A randomized Halton algorithm in R) through the
// normal distribution; what is longer than Reach is pulled in to it. Pulled in,
// not drawn again: with a dozen traits most draws are about as long as Reach, and
// to leave the longer ones out would take a quarter of each trait's spread away.
// The same seed gives the same members, and a longer list begins with the shorter.
func Variations(n int, seed uint64) []Variation {
	points := halton.Points(n, int(NumTraits), seed)
	out := make([]Variation, n)
	for i := range out {
		for t := range out[i] {
			// Kept off 0, whose normal is infinite. Rounded far below any meaning,
			// because the logarithm inside differs in its last bit between machines.
			u := max(points[i][t], 1e-9)
			out[i][t] = math.Round(1e9*math.Sqrt2*math.Erfinv(2*u-1)) / 1e9
		}
		out[i] = out[i].Within(Reach)
	}
	return out
}

// Within returns the variation, shortened to a length of most if it is longer.
func (v Variation) Within(most float64) Variation {
	if v.length() <= most {
		return v
	}
	return v.Onto(most)
}

// Onto returns the variation made as long as length; the zero value stays.
func (v Variation) Onto(length float64) Variation {
	if l := v.length(); l > 0 {
		return v.Times(length / l)
	}
	return v
}

func (v Variation) length() float64 {
	square := 0.0
	for _, x := range v {
		square += x * x
	}
	return math.Sqrt(square)
}

// Times returns k times the variation.
func (v Variation) Times(k float64) Variation {
	for t := range v {
		v[t] *= k
	}
	return v
}

// Single returns the variation with one trait alone at z standard deviations.
func Single(t Trait, z float64) Variation {
	var v Variation
	v[t] = z
	return v
}

// Corner returns the member at Reach in the direction along which a clearance
// falls fastest, given how much it changes per standard deviation of each
// trait: the farthest-reaching member were the response linear.
func Corner(slope [NumTraits]float64) Variation {
	v := Variation(slope).Onto(Reach)
	for t := range v {
		v[t] = 0 - v[t] // no negative zeros in reports
	}
	return v
}
