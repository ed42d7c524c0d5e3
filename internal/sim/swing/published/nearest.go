package published

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/swing"
)

// Likeness is how near a member of the modelled family comes to a recorded swing.
type Likeness struct {
	Path      ClubPath
	Variation swing.Variation // of the member; within swing.Reach
	Swing     *swing.Swing
	// Hands and Face are the mean distances (m) of the recorded points, evenly
	// along their way from the takeaway to 0.30 s after impact, from the way of the
	// member in the same part of its swing; the greatest distances likewise.
	Hands, Face         float64
	HandsMost, FaceMost float64
}

// until is how long after impact a recorded swing is followed, s; what comes
// later is slow and far from any wall.
const until = 0.30

// Nearest finds the member of the default family of a golfer of RecordedHeight
// that comes nearest to a recorded swing: by the method of D. W. Marquardt 1963, J.
// Soc. Ind. Appl. Math. 11:431–441, over the traits, which are kept within
// swing.Reach.
func Nearest(path ClubPath) (Likeness, error) {
	family, err := swing.NewFamily(golfer(RecordedHeight), clubNamed("driver"), swing.Style{})
	if err != nil {
		return Likeness{}, err
	}
	marks := landmarksOf(path.Samples)
	if marks.away >= marks.top || marks.top >= marks.strike {
		return Likeness{}, fmt.Errorf("the recording %q has no takeaway, top and impact in this order", path.Name)
	}
	// First moment by moment, which finds the valley; then wherever the member
	// comes past, for the way alone counts.
	best, err := search(family, marks, swing.Variation{}, marks.matched)
	if err == nil {
		best, err = search(family, marks, best, marks.passing)
	}
	if err != nil {
		return Likeness{}, fmt.Errorf("the recording %q: %w", path.Name, err)
	}
	s, err := family.Member(best)
	if err != nil {
		return Likeness{}, err
	}
	l := Likeness{Path: path, Variation: best, Swing: s}
	l.compare(marks)
	return l, nil
}

// landmarks divides a path into going back, coming down and going through.
type landmarks struct {
	path                      []swing.PathSample
	away, top, strike, follow int // samples: the last at rest, the top, the first after impact, the last followed
}

// landmarksOf finds where the face has left its place by 5 cm, where the face is
// slowest between there and impact, where impact is and where to stop.
func landmarksOf(path []swing.PathSample) landmarks {
	m := landmarks{path: path, follow: len(path) - 1}
	for m.strike < len(path)-1 && path[m.strike].Time < 0 {
		m.strike++
	}
	for m.away < m.strike && geom.Norm(r3.Sub(path[m.away].Face, path[0].Face)) < 0.05 {
		m.away++
	}
	// The top is looked for after the club has got up to speed going back.
	fast := m.away
	for fast < m.strike && path[fast].Speed < 5 {
		fast++
	}
	m.top = fast
	for i := fast; i < m.strike && path[i].Time < -0.1; i++ {
		if path[i].Speed < path[m.top].Speed {
			m.top = i
		}
	}
	for m.follow > m.strike && path[m.follow].Time > until {
		m.follow--
	}
	return m
}

// stage returns the first and the last sample of going back (0), coming down (1)
// and going through (2).
func (m *landmarks) stage(k int) (from, to int) {
	switch k {
	case 0:
		return m.away, m.top
	case 1:
		return m.top, m.strike
	}
	return m.strike, m.follow
}

// matched returns where a member's hands and face are at the moment that matches
// a sample of the recording: as far through going back and coming down, and as
// long after impact, longer as the member is slower.
func (m *landmarks) matched(member *landmarks, i int) (hands, face geom.Vec) {
	span := func(l *landmarks, from, to int) float64 { return l.path[to].Time - l.path[from].Time }
	var t float64 // from the member's impact
	switch at := m.path[i].Time; {
	case i < m.top:
		share := (at - m.path[m.away].Time) / span(m, m.away, m.top)
		t = member.path[member.away].Time + share*span(member, member.away, member.top)
	case at < 0:
		t = at / m.path[m.top].Time * member.path[member.top].Time
	default:
		t = at * m.path[m.strike].Speed / member.path[member.strike].Speed
	}
	n := 1
	for n < len(member.path)-1 && member.path[n].Time < t {
		n++
	}
	a, b := &member.path[n-1], &member.path[n]
	share := (t - a.Time) / (b.Time - a.Time)
	return geom.Lerp(a.Hands, b.Hands, share), geom.Lerp(a.Face, b.Face, share)
}

// passing returns where a member's hands and face come nearest to a sample of the
// recording in the same part of the swing.
func (m *landmarks) passing(member *landmarks, i int) (hands, face geom.Vec) {
	k := 0
	switch {
	case i > m.strike:
		k = 2
	case i > m.top:
		k = 1
	}
	// A little over both ends: samples do not fall on the top and on impact.
	const over = 4
	from, to := member.stage(k)
	from, to = max(0, from-over), min(len(member.path)-1, to+over)
	return closest(member.path[from:to+1], handsOf, m.path[i].Hands), closest(member.path[from:to+1], faceOf, m.path[i].Face)
}

// closest returns the point nearest to want on the chords of a path.
func closest(path []swing.PathSample, point func(*swing.PathSample) geom.Vec, want geom.Vec) geom.Vec {
	best, least := point(&path[0]), math.Inf(1)
	for n := 1; n < len(path); n++ {
		a, b := point(&path[n-1]), point(&path[n])
		along := r3.Sub(b, a)
		share := 0.0
		if long := geom.Dot(along, along); long > 0 {
			share = max(0, min(1, geom.Dot(r3.Sub(want, a), along)/long))
		}
		p := geom.Lerp(a, b, share)
		if d := geom.Norm(r3.Sub(p, want)); d < least {
			best, least = p, d
		}
	}
	return best
}

// pathStep is how finely the way of a member is looked at, s.
const pathStep = 0.004

// search returns the variation whose swing is nearest to the path, point by point
// as where pairs them, from v on.
func search(family *swing.Family, m landmarks, v swing.Variation, where func(*landmarks, int) (hands, face geom.Vec)) (swing.Variation, error) {
	misses := func(v swing.Variation) ([]float64, error) {
		s, err := family.Member(v)
		if err != nil {
			return nil, err
		}
		own := landmarksOf(s.Path(pathStep))
		var r []float64
		for i := m.away; i <= m.follow; i++ {
			hands, face := where(&own, i)
			hands, face = r3.Sub(hands, m.path[i].Hands), r3.Sub(face, m.path[i].Face)
			r = append(r, hands.X, hands.Y, hands.Z, face.X, face.Y, face.Z)
		}
		const shy = 0.03 // m per standard deviation: rather an ordinary member than an odd one
		for _, z := range v {
			r = append(r, shy*z)
		}
		return r, nil
	}
	size := func(r []float64) float64 { return mat.Norm(mat.NewVecDense(len(r), r), 2) }
	r, err := misses(v)
	if err != nil {
		return v, err
	}
	damping := 0.01
	for range 30 {
		const step = 1e-3
		slopes := mat.NewDense(len(r), len(v), nil)
		for k := range v {
			w := v
			w[k] += step
			q, err := misses(w)
			if err != nil {
				return v, err
			}
			for i := range q {
				slopes.Set(i, k, (q[i]-r[i])/step)
			}
		}
		var normal mat.Dense
		normal.Mul(slopes.T(), slopes)
		for k := range v {
			normal.Set(k, k, normal.At(k, k)*(1+damping))
		}
		var right, move mat.VecDense
		right.MulVec(slopes.T(), mat.NewVecDense(len(r), r))
		if err := move.SolveVec(&normal, &right); err != nil {
			return v, err
		}
		w := v
		for k := range w {
			w[k] -= move.AtVec(k)
		}
		w = w.Within(swing.Reach)
		q, err := misses(w)
		if err != nil || size(q) >= size(r) {
			damping *= 5
			continue
		}
		v, r, damping = w, q, damping/3
	}
	return v, nil
}

// compare fills the distances between the ways.
func (l *Likeness) compare(m landmarks) {
	own := landmarksOf(l.Swing.Path(pathStep))
	var hands, face mean
	for i := m.away + 1; i <= m.follow; i++ {
		a, b := &m.path[i-1], &m.path[i]
		h, f := m.passing(&own, i)
		hands.add(geom.Norm(r3.Sub(h, b.Hands)), geom.Norm(r3.Sub(a.Hands, b.Hands)))
		face.add(geom.Norm(r3.Sub(f, b.Face)), geom.Norm(r3.Sub(a.Face, b.Face)))
	}
	l.Hands, l.HandsMost, l.Face, l.FaceMost = hands.value(), hands.most, face.value(), face.most
}

func handsOf(s *swing.PathSample) geom.Vec { return s.Hands }
func faceOf(s *swing.PathSample) geom.Vec  { return s.Face }

// mean is a weighted mean and the greatest value that went into it.
type mean struct{ sum, weight, most float64 }

func (m *mean) add(value, weight float64) {
	m.sum, m.weight, m.most = m.sum+value*weight, m.weight+weight, max(m.most, value)
}

func (m *mean) value() float64 { return m.sum / m.weight }
