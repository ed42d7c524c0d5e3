package published

import (
	"math"
	"sync"
	"testing"

	"wideberth/internal/sim/swing"
)

// likenesses fits every recorded swing once.
var likenesses = sync.OnceValues(func() ([]Likeness, error) {
	paths, err := ClubPaths()
	if err != nil {
		return nil, err
	}
	var all []Likeness
	for _, path := range paths {
		l, err := Nearest(path)
		if err != nil {
			return nil, err
		}
		all = append(all, l)
	}
	return all, nil
})

func likened(t *testing.T) []Likeness {
	t.Helper()
	all, err := likenesses()
	if err != nil {
		t.Fatal(err)
	}
	if len(all) == 0 {
		t.Fatal("no recorded swing")
	}
	return all
}

// TestRecordedSwingsAreInTheFamily: each recorded swing has a member of the
// default family that goes its way, hands and face, within 8 cm on average.
func TestRecordedSwingsAreInTheFamily(t *testing.T) {
	const most = 0.08 // m
	for _, l := range likened(t) {
		t.Run(l.Path.Name, func(t *testing.T) {
			t.Logf("hands %.3f m (most %.3f), face %.3f m (most %.3f), at %.2f", l.Hands, l.HandsMost, l.Face, l.FaceMost, l.Variation)
			if l.Hands > most || l.Face > most {
				t.Errorf("the nearest member is %.3f m (hands) and %.3f m (face) away, want at most %g", l.Hands, l.Face, most)
			}
			if l.Variation.Within(swing.Reach+1e-9) != l.Variation {
				t.Errorf("the nearest member %.2f lies beyond %g standard deviations", l.Variation, swing.Reach)
			}
		})
	}
}

// TestPathResidual: the number that the report shows is no smaller than what is
// found here, and larger by no more than two recordings are too few to be sure of.
func TestPathResidual(t *testing.T) {
	worst := 0.0
	for _, l := range likened(t) {
		worst = max(worst, l.Hands, l.Face)
	}
	if r := swing.PathResidual; r < worst || r > 1.5*worst {
		t.Errorf("PathResidual is %.3f m, want the worst of the recorded swings, %.4f m, to half as much again", r, worst)
	}
}

// TestRecordedSpeeds: the face of the nearest member is as fast as the recorded
// one at the same time after impact, within a quarter.
func TestRecordedSpeeds(t *testing.T) {
	const tol = 0.25
	for _, l := range likened(t) {
		path := l.Swing.Path(0.001)
		for _, at := range []float64{0.05, 0.10, 0.15, 0.20, 0.30} {
			got, want := speedAt(path, at), speedAt(l.Path.Samples, at)
			t.Logf("%s, %.2f s after impact: %.1f m/s, recorded %.1f", l.Path.Name, at, got, want)
			if math.Abs(got/want-1) > tol {
				t.Errorf("%s, %.2f s after impact: %.1f m/s, recorded %.1f (± %g %%)", l.Path.Name, at, got, want, 100*tol)
			}
		}
	}
}

// speedAt returns the speed of the sample nearest in time.
func speedAt(path []swing.PathSample, at float64) float64 {
	best := path[0]
	for _, s := range path {
		if math.Abs(s.Time-at) < math.Abs(best.Time-at) {
			best = s
		}
	}
	return best.Speed
}

// TestRecordedExtremesAreInTheFamily: no recorded swing goes beyond what the
// default family of a golfer of that height spans, in any direction, going back
// and going through.
func TestRecordedExtremesAreInTheFamily(t *testing.T) {
	family, err := swing.NewFamily(golfer(RecordedHeight), clubNamed("driver"), swing.Style{})
	if err != nil {
		t.Fatal(err)
	}
	extremes := func(path []swing.PathSample) map[string]float64 {
		most := map[string]float64{}
		for _, s := range path {
			part := "going back"
			if s.Time > 0 {
				part = "going through"
			}
			for way, d := range map[string]float64{"behind": s.Face.Y, "up": s.Face.Z, "to the trail side": -s.Face.X, "to the target": s.Face.X} {
				if part == "going back" && way == "to the target" {
					continue // over the shoulder, far from any screen
				}
				key := way + " " + part
				if old, ok := most[key]; !ok || d > old {
					most[key] = d
				}
			}
		}
		return most
	}
	spans := map[string][2]float64{}
	var s swing.Swing
	at := func(v swing.Variation) map[string]float64 {
		if err := family.Fill(v, &s); err != nil {
			t.Fatal(err)
		}
		return extremes(s.Path(0.004))
	}
	take := func(v swing.Variation) {
		for way, d := range at(v) {
			span, ok := spans[way]
			if !ok {
				span = [2]float64{d, d}
			}
			spans[way] = [2]float64{min(span[0], d), max(span[1], d)}
		}
	}
	for _, v := range swing.Variations(Swings, seed) {
		take(v)
	}
	slopes := map[string]*[swing.NumTraits]float64{}
	for trait := range swing.NumTraits {
		less, more := at(swing.Single(trait, -1)), at(swing.Single(trait, 1))
		for way := range less {
			if slopes[way] == nil {
				slopes[way] = &[swing.NumTraits]float64{}
			}
			slopes[way][trait] = (less[way] - more[way]) / 2
		}
	}
	for _, slope := range slopes {
		take(swing.Corner(*slope))
	}
	paths, err := ClubPaths()
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range paths {
		for way, d := range extremes(path.Samples) {
			span := spans[way]
			t.Logf("%s: %s %.2f m, family %.2f to %.2f m", path.Name, way, d, span[0], span[1])
			if d > span[1] {
				t.Errorf("%s goes %.3f m %s, the family %.3f m at the most", path.Name, d, way, span[1])
			}
		}
	}
}
