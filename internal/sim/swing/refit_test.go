package swing

import (
	"encoding/csv"
	"flag"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/rules"
)

var refit = flag.Bool("refit", false, "print the tables of score.go as fitted anew to the recorded clubs")

// recordedGolfer is one recorded swing as the tables were fitted to it: published
// holds where the figures come from (clubpath.csv).
type recordedGolfer struct {
	name      string
	round     float64 // 1 for the rounder golfer, −1 for the other
	away, top float64 // when the club leaves and turns, s from impact (read off the face's speed)
	samples   []PathSample
}

// recordedGolfers reads the recordings, in the frame of Pose.
func recordedGolfers(t *testing.T) []recordedGolfer {
	t.Helper()
	file, err := os.Open("published/clubpath.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	golfers := []recordedGolfer{{name: "G1a", round: 1, away: -1.14, top: -0.305}, {name: "G2b", round: -1, away: -0.89, top: -0.245}}
	const teedHeight = 0.08 // published.TeedHeight
	for _, row := range rows[1:] {
		var v [8]float64
		for i := range v {
			if v[i], err = strconv.ParseFloat(row[i+1], 64); err != nil {
				t.Fatal(err)
			}
		}
		for i := range golfers {
			if g := &golfers[i]; g.name == row[0] && v[0] >= g.away && v[0] <= 0.62 {
				at := func(k int) geom.Vec {
					return geom.Vec{X: v[k] - rules.BallRadius, Y: v[k+1], Z: v[k+2] + teedHeight}
				}
				g.samples = append(g.samples, PathSample{Time: v[0], Hands: at(1), Face: at(4), Speed: v[7]})
			}
		}
	}
	return golfers
}

// moment returns when a swing is where the golfer was at time t from impact.
func (g *recordedGolfer) moment(s *Swing, t float64) float64 {
	switch {
	case t < g.top:
		return s.times[kAddress] + (s.times[kTop]-s.times[kAddress])*(t-g.away)/(g.top-g.away)
	case t < 0:
		return s.times[kImpact] - t/g.top*(s.times[kImpact]-s.times[kTop])
	}
	return s.times[kImpact] + t*recordedSpeed/s.Downswing.HeadSpeed
}

// knob is one key value that is fitted, and how dear it is to leave where it
// began, metres a radian (or the whole arm).
type knob struct {
	ch   channel
	key  int
	dear float64
}

// knobs are all key values of hands and club but those that address and impact
// fix. The lead arm is held all but straight to 0.05 s after impact.
func knobs() (out []knob) {
	add := func(ch channel, dear float64, keys ...int) {
		for _, k := range keys {
			out = append(out, knob{ch, k, dear})
		}
	}
	free := []int{kShaftBack, kArmBack, kTop, kThrough, kHigh, kOver, kAround, kWrap, kFinish}
	planes := append([]int{kArmDown}, free...)
	add(chTheta, 0.06, free...)
	add(chPhi, 0.06, free...)
	add(chHandSlope, 0.15, planes...)
	add(chClubSlope, 0.15, planes...)
	add(chHandTrace, 0.45, planes...)
	add(chClubTrace, 0.45, planes...)
	add(chExtend, 24, kShaftBack, kArmBack, kTop, kThrough)
	add(chExtend, 2.1, kHigh)
	add(chExtend, 0.9, kOver, kAround, kWrap, kFinish)
	return out
}

// with returns the swing with other key values.
func with(s *Swing, ks []knob, x []float64) *Swing {
	out := *s
	for i, k := range ks {
		out.curves.value[k.key][k.ch] = x[i]
	}
	out.curves.bend(&out.times)
	out.joinDownswing()
	return &out
}

// misses returns how far a swing is from the golfer, moment by moment (m).
func (g *recordedGolfer) misses(s *Swing) (out []float64) {
	for _, want := range g.samples {
		at := g.moment(s, want.Time)
		pose := s.PoseAt(at)
		got := s.sample(at, &pose)
		hands, face := r3.Sub(got.Hands, want.Hands), r3.Scale(0.7, r3.Sub(got.Face, want.Face))
		out = append(out, hands.X, hands.Y, hands.Z, face.X, face.Y, face.Z)
	}
	return out
}

// fit moves the key values of a swing to where it is nearest to the golfer, by
// damped Gauss–Newton steps.
func (g *recordedGolfer) fit(s *Swing, steps int) *Swing {
	ks := knobs()
	start := make([]float64, len(ks))
	for i, k := range ks {
		start[i] = s.curves.value[k.key][k.ch]
	}
	residual := func(x []float64) []float64 {
		r := g.misses(with(s, ks, x))
		for i, k := range ks {
			r = append(r, k.dear*(x[i]-start[i]))
			if k.ch == chExtend {
				r = append(r, 20*max(0, x[i]-0.994))
			}
		}
		return r
	}
	size := func(r []float64) float64 { return mat.Norm(mat.NewVecDense(len(r), r), 2) }
	x, damping := start, 0.01
	r := residual(x)
	for range steps {
		const step = 1e-5
		slopes := mat.NewDense(len(r), len(x), nil)
		for k := range x {
			y := append([]float64{}, x...)
			y[k] += step
			for i, v := range residual(y) {
				slopes.Set(i, k, (v-r[i])/step)
			}
		}
		var normal mat.Dense
		normal.Mul(slopes.T(), slopes)
		for k := range x {
			normal.Set(k, k, normal.At(k, k)*(1+damping)+1e-9)
		}
		var right, move mat.VecDense
		right.MulVec(slopes.T(), mat.NewVecDense(len(r), r))
		if move.SolveVec(&normal, &right) != nil {
			break
		}
		y := append([]float64{}, x...)
		for k := range y {
			y[k] -= move.AtVec(k)
		}
		if q := residual(y); size(q) < size(r) {
			x, r, damping = y, q, damping/3
		} else {
			damping *= 4
		}
	}
	return with(s, ks, x)
}

// TestTablesFitTheRecordings asks that the tables of score.go are where a fit to
// the recorded clubs leaves them: with the trait of roundness at either golfer,
// the tables' swing is nearly as near to the recording, moment by moment, as one
// whose key values are fitted to it alone. After a change of the trunk or the
// arms, go test -run Recordings -refit prints tables to write into score.go.
func TestTablesFitTheRecordings(t *testing.T) {
	const (
		height = 1.84  // published.RecordedHeight
		tol    = 0.004 // m, root mean square
	)
	b, club := golfer(height), clubNamed("driver")
	rms := func(r []float64) float64 {
		return mat.Norm(mat.NewVecDense(len(r), r), 2) / math.Sqrt(float64(len(r))/3)
	}
	steps := 6
	if *refit {
		steps = 40
	}
	var fitted []*Swing
	golfers := recordedGolfers(t)
	for _, g := range golfers {
		var trait [NumTraits]float64
		z := g.round * math.Sqrt(2/(1.44-1)) // where between is 1
		trait[TraitBack], trait[TraitThrough] = z, z
		s := &Swing{}
		who := newSwinger(b, club)
		at := who.stand(Deviation{})
		if err := s.build(&at, Style{}, trait, nil); err != nil {
			t.Fatal(err)
		}
		best := g.fit(s, steps)
		fitted = append(fitted, best)
		t.Logf("%s: the tables %.3f m, fitted alone %.3f m", g.name, rms(g.misses(s)), rms(g.misses(best)))
		if tables, alone := rms(g.misses(s)), rms(g.misses(best)); tables > alone+tol {
			t.Errorf("%s: the tables' swing is %.3f m from the recording, one fitted to it %.3f m: fit the tables anew", g.name, tables, alone)
		}
	}
	if !*refit {
		return
	}
	for _, ch := range []struct {
		ch   channel
		name string
		unit float64
	}{{chHandTrace, "hand trace", degree}, {chHandSlope, "hand slope", degree}, {chTheta, "theta", degree}, {chExtend, "extend", 1},
		{chClubTrace, "club trace", degree}, {chClubSlope, "club slope", degree}, {chPhi, "phi", degree}} {
		var mean, half []string
		for k := range numKeys {
			x, y := fitted[0].curves.value[k][ch.ch]/ch.unit, fitted[1].curves.value[k][ch.ch]/ch.unit
			mean, half = append(mean, fmt.Sprintf("%.3g", (x+y)/2)), append(half, fmt.Sprintf("%.3g", (x-y)/2))
		}
		fmt.Printf("%-10s mean %s\n%-10s half %s\n", ch.name, strings.Join(mean, ", "), "", strings.Join(half, ", "))
	}
}
