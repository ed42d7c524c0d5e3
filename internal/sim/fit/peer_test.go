package fit

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"slices"
	"testing"

	"wideberth/internal/sim/family"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

var peer = flag.String("peer", "", "file that BenchmarkSwept writes its questions to, for testdata/rapier/bench.mjs")

// question is what is asked of a swing: how near some parts come to some surfaces.
type question struct {
	Name      string
	Parts     []int // swing.Part, which JSON would take for bytes
	Surfaces  []sweep.Surface
	Clearance []float64 // to each surface, as answered here, m
}

// questions returns the swing of the demo's first golfer with a driver, sampled as
// finely as a clearance asks for, and what is asked of it in the demo room under a slope.
func questions(b *testing.B) (times []float64, poses []swing.Pose, ask []question) {
	p := plan.Demo()
	p.Room.Slopes = []plan.Slope{{Name: "roof", Wall: plan.WallLeft, KneeHeight: 1.8, Run: 1.5}}
	s, at, err := family.Swing(plantest.Checked(p), "", "driver", "", 0)
	if err != nil {
		b.Fatal(err)
	}
	room := at.Surfaces(sweep.Surfaces(p.WithDefaults()))
	of := func(k sweep.Kind) []sweep.Surface {
		return room[slices.IndexFunc(room, func(s sweep.Surface) bool { return s.Kind == k }):][:1]
	}
	var all []int
	for part := range swing.NumParts {
		all = append(all, int(part))
	}
	head := []int{int(swing.Clubhead)}
	times, poses = sweep.Sample(s, sweep.FineTolerance).Samples()
	return times, poses, []question{
		{"plane", head, of(sweep.Wall), nil}, {"slope", head, of(sweep.Slope), nil}, {"box", head, of(sweep.Solid), nil},
		{"room", all, room, nil},
	}
}

// BenchmarkSwept is a capsule, and a whole swing, swept past what a room is made of,
// from poses that are there: what make bench asks a general-purpose physics library too.
func BenchmarkSwept(b *testing.B) {
	times, poses, ask := questions(b)
	for i := range ask {
		q := &ask[i]
		var parts swing.Parts
		for _, p := range q.Parts {
			parts |= swing.Part(p).Set()
		}
		b.Run(q.Name, func(b *testing.B) {
			var track sweep.Track
			q.Clearance = make([]float64, len(q.Surfaces))
			for b.Loop() {
				track.ResetParts(parts, times, poses)
				for k, s := range q.Surfaces {
					q.Clearance[k] = track.Clearance(s).Clearance
				}
			}
		})
	}
	if *peer == "" {
		return
	}
	text, err := json.Marshal(map[string]any{"poses": poses, "questions": ask})
	if err == nil {
		err = os.WriteFile(*peer, text, 0o600)
	}
	if err != nil {
		b.Fatal(err)
	}
}

// BenchmarkPairs is 1, 2, 4 and 8 golfers with a club each, all new, 256 swings each, in
// the demo room.
func BenchmarkPairs(b *testing.B) {
	for _, n := range []int{1, 2, 4, 8} {
		p := plan.Demo().WithDefaults()
		p.Clubs = p.Clubs[:1]
		one := p.Players[0]
		p.Players = nil
		for i := range n {
			one.Name, one.Height = fmt.Sprintf("No. %d", i), 1.70+0.02*float64(i)
			p.Players = append(p.Players, one)
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				var lab Lab
				if _, err := lab.Check(plantest.Checked(p)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
