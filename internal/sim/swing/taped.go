package swing

import (
	"math"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/body"
	"wideberth/internal/sim/plan"
)

// How far golfers of one build differ in how they stand to the ball, one
// standard deviation. The hands of the recorded golfers (two drivers) are within
// 0.01 m of each other, those of a recorded golfer without a club 0.1 m nearer
// (package published), and common practice for the toes spans 0.15 m; so these
// are a judgement.
const (
	standSD = 0.033        // m, the hands' distance from the ball
	hangSD  = 3.0 * degree // how far the arms are held out
	// stanceTapeSD is the error of a distance on the floor from ball to toes or
	// hands, m: assumption (golfers do not stand twice alike either).
	stanceTapeSD = 0.010
	// strangeStance is how many standard deviations a measured distance may be
	// from the usual one before a note asks for the tape again.
	strangeStance = 3.5
)

// standing is what is known of how a golfer stands to the ball: the most likely
// deviation from what build and club make usual, and its spread. The deviation of
// a member is mean + spread·z with the members' two traits as z.
type standing struct {
	mean   Deviation
	spread [2][2]float64 // lower triangle: rows Off and Hang, columns TraitStand and TraitHang
	note   string        // what is strange about the measured distances
}

// of returns the deviation of a member.
func (s *standing) of(v Variation) Deviation {
	return Deviation{
		Off:  s.mean.Off + s.spread[0][0]*v[TraitStand],
		Hang: s.mean.Hang + s.spread[1][0]*v[TraitStand] + s.spread[1][1]*v[TraitHang],
	}
}

// newStanding weighs what a tape says of the address with the driver against what
// is usual, by the linear filter of R. E. Kalman 1960, J. Basic Eng. 82:35–45, one
// measurement after the other. Other clubs follow from the driver by their
// length: the same turn of shaft and arms.
func newStanding(b body.Body, c Club, style Style) (standing, error) {
	s := standing{spread: [2][2]float64{{standSD, 0}, {0, hangSD}}}
	if style.BallToToes > 0 || style.BallToHands > 0 {
		driver := c
		if c.Kind != plan.KindDriver {
			driver = NewClub(plan.DefaultClub(plan.KindDriver, ""))
		}
		if err := s.measure(b, driver, style); err != nil {
			return s, err
		}
	}
	if c.Kind != plan.KindDriver {
		share := c.Length / plan.DefaultClub(plan.KindDriver, "").Length
		s.mean.Off *= share
		s.spread[0][0] *= share
	}
	return s, nil
}

// measure narrows the standing by the distances that are known.
func (s *standing) measure(b body.Body, driver Club, style Style) error {
	g := newSwinger(b, driver)
	at := func(dev Deviation) (toes, hands float64, err error) {
		s := g.stand(dev)
		return s.stance.BallToToes, s.stance.BallToHands, s.err
	}
	const dOff, dHang = 0.01, 0.01
	v := [2][2]float64{{standSD * standSD, 0}, {0, hangSD * hangSD}} // covariance
	for _, taped := range []struct {
		what     string
		distance float64
		toes     bool
	}{{"hands", style.BallToHands, false}, {"toes", style.BallToToes, true}} {
		if taped.distance == 0 {
			continue
		}
		read := func(dev Deviation) (float64, error) {
			toes, hands, err := at(dev)
			if taped.toes {
				return toes, err
			}
			return hands, err
		}
		prior, before := s.mean, v
		for range 3 { // it is not quite linear
			now, err := read(s.mean)
			if err != nil {
				return err
			}
			far, err := read(Deviation{s.mean.Off + dOff, s.mean.Hang})
			if err != nil {
				return err
			}
			out, err := read(Deviation{s.mean.Off, s.mean.Hang + dHang})
			if err != nil {
				return err
			}
			h := [2]float64{(far - now) / dOff, (out - now) / dHang}
			vh := [2]float64{before[0][0]*h[0] + before[0][1]*h[1], before[1][0]*h[0] + before[1][1]*h[1]}
			within := h[0]*vh[0] + h[1]*vh[1] + stanceTapeSD*stanceTapeSD
			// What the tape reads beyond what was expected before it was read.
			miss := taped.distance - now + h[0]*(s.mean.Off-prior.Off) + h[1]*(s.mean.Hang-prior.Hang)
			s.mean = Deviation{prior.Off + vh[0]*miss/within, prior.Hang + vh[1]*miss/within}
			for i := range v {
				for k := range v[i] {
					v[i][k] = before[i][k] - vh[i]*vh[k]/within
				}
			}
			if math.Abs(miss) > strangeStance*math.Sqrt(within) {
				s.note = fmt.Sprintf("The measured distance from the ball to the %s with the driver is far from usual for this height and club (%.2f m, usual %.2f m): measure it again.",
					taped.what, taped.distance, taped.distance-miss)
			}
		}
	}
	// The lower triangle whose product with its transpose is v.
	s.spread[0][0] = root(v[0][0])
	s.spread[1][0] = v[0][1] / s.spread[0][0]
	s.spread[1][1] = root(v[1][1] - s.spread[1][0]*s.spread[1][0])
	return nil
}
