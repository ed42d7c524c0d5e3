package picture

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"wideberth/internal/render/drawing"
)

// moment is one key frame.
type moment struct {
	time  float64 // s from address
	words string
}

// begins are the phases whose beginning is a key frame, beside tightest and finish.
var begins = []string{"address", "top", "impact"}

// moments are the key frames, in order: those that the page keeps.
func (r reel) moments() []moment {
	out := []moment{{r.Tightest, "tightest"}, {r.Duration, "finish"}}
	for _, p := range r.Phases {
		if slices.Contains(begins, p.Name) {
			out = append(out, moment{p.Start, p.Name})
		}
	}
	slices.SortStableFunc(out, func(a, b moment) int { return cmp.Compare(a.time, b.time) })
	return out
}

func (m moment) String() string { return fmt.Sprintf("%s, %.2f s", m.words, m.time) }

// perPart is how many numbers the reel has for each part and frame: x y z of both ends.
const perPart = 6

// figure is golfer and club at a time in the elevation that shows the tape best,
// farthest first.
func (r reel) figure(t float64) []drawing.Limb {
	width := perPart * len(r.Parts)
	frame := int(math.Round(t * r.Rate))
	frame = max(0, min(frame, len(r.Motion)/width-1))
	pose := make([]float64, width) // m
	for i := range pose {
		for k := range frame + 1 {
			pose[i] += float64(r.Motion[k*width+i]) / 1000
		}
	}
	across, depth := 0, func(p []float64) float64 { return -p[1] - p[4] }
	if r.Face {
		across, depth = 1, func(p []float64) float64 { return -p[0] - p[3] }
	}
	type deep struct {
		drawing.Limb
		depth float64
	}
	limbs := make([]deep, len(r.Parts))
	for i, part := range r.Parts {
		at := pose[perPart*i : perPart*(i+1)]
		// Of equally deep ones the first is painted last.
		limbs[len(limbs)-1-i] = deep{drawing.Limb{Part: part.Name, A: drawing.Point{at[across], at[2]}, B: drawing.Point{at[3+across], at[5]}, R: part.R}, depth(at)}
	}
	slices.SortStableFunc(limbs, func(a, b deep) int { return cmp.Compare(a.depth, b.depth) })
	out := make([]drawing.Limb, len(limbs))
	for i, l := range limbs {
		out[i] = l.Limb
	}
	return out
}
