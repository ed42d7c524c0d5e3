package remedy

import (
	"math"
	"slices"

	"wideberth/internal/sim/plan"
)

// raisedCeiling raises the ceiling of a plan and its slopes by h (m). Beams and
// hung things stay; those built against the ceiling follow it with their upper side.
func raisedCeiling(p plan.Plan, h float64) Remedy {
	r := Remedy{Kind: KindCeiling, Amount: h, Value: p.Room.Height + h}
	r.Edits = append(r.Edits, Edit{Path: "room.height", Value: r.Value})
	for i, sl := range p.Room.Slopes {
		r.Edits = append(r.Edits, Edit{Path: path("room.slopes", i, ".kneeHeight"), Value: sl.KneeHeight + h})
	}
	const flush = 0.002 // m, as in sweep
	follow := func(list string, i int, low, high float64) {
		if high >= p.Room.Height-flush && low < r.Value {
			r.Edits = append(r.Edits, Edit{Path: path(list, i, ".max[2]"), Value: r.Value})
		}
	}
	for i, b := range p.Room.Solids {
		follow("room.solids", i, b.Min[2], b.Max[2])
	}
	for i, b := range p.Hung {
		follow("hung", i, b.Min[2], b.Max[2])
	}
	return r
}

// thinnerFloor takes h (m) off the floor build-up. Layers give way in proportion;
// the mat only when they are used up, or as far as it is inset.
func thinnerFloor(p plan.Plan, h float64) Remedy {
	now := p.Floor.Standing()
	r := Remedy{Kind: KindFloor, Amount: h, Value: now - h}
	layers, left := plan.Floor{Layers: p.Floor.Layers}.Standing(), now-h
	if m := p.Floor.Mat; m != nil {
		if thin := min(m.Thickness, left); thin < m.Thickness {
			r.Edits = append(r.Edits, Edit{Path: "floor.mat.thickness", Value: thin})
		}
		if !m.Inset {
			left = max(0, left-m.Thickness)
		}
	}
	for i, y := range p.Floor.Layers {
		if layers > left {
			r.Edits = append(r.Edits, Edit{Path: path("floor.layers", i, ".thickness"), Value: y.Thickness * left / layers})
		}
	}
	return r
}

// How far levers go, m.
const (
	mostCeiling  = 0.60 // two feet: beyond that it is another building
	shortestClub = 0.88 // share of its length; a driver is then as short as a fairway wood
	hungStep     = 0.01
	ceilingStep  = 0.01
	floorStep    = 0.001
)

// lever is one kind of change that may be made more or less, or not at all. The
// cheaper its rank the rather it is offered: common practice, no source.
type lever struct {
	rank int
	tee  int     // of KindTee: which may be moved; of others −1
	most float64 // m; 0: it is done or not
	step float64 // m
	pull func(d float64) Remedy
}

// levers are what might help the checks that lack something: the surfaces they
// lack it to are by name.
func (j *job) levers(lacking func(pair) bool, near map[string]bool) []lever {
	var out []lever
	for i, t := range j.p.Tees {
		if slices.ContainsFunc(j.pairs, func(x pair) bool { return x.tee == i && lacking(x) }) {
			out = append(out, lever{rank: 0, tee: i, pull: func(float64) Remedy { return Remedy{Kind: KindTee, Subject: t.Name} }})
		}
	}
	clubStep := plan.Usual(j.p.Units, 0.01, 0.5) // clubs are bought and cut to half an inch
	for i, c := range j.p.Clubs {
		if slices.ContainsFunc(j.pairs, func(x pair) bool { return j.casts[x.cast].Club.Name == c.Name && lacking(x) }) {
			steps := math.Floor((1 - shortestClub) * c.Length / clubStep)
			out = append(out, lever{2, -1, steps * clubStep, clubStep, func(d float64) Remedy {
				// Down to whole half inches, from whatever it is.
				v := math.Floor((c.Length-d)/clubStep+1e-6) * clubStep
				return Remedy{Kind: KindClub, Subject: c.Name, Amount: v - c.Length, Value: v, Edits: []Edit{{Path: path("clubs", i, ".length"), Value: v}}}
			}})
		}
	}
	for i, h := range j.p.Hung {
		if !near[h.Name] {
			continue
		}
		if most := j.p.Room.Height - recess - h.Min[2]; most > hungStep {
			out = append(out, lever{3, -1, math.Floor(most/hungStep) * hungStep, hungStep, func(d float64) Remedy {
				return Remedy{Kind: KindRaise, Subject: h.Name, Amount: d, Value: h.Min[2] + d, Edits: raised(j.p, i, d)}
			}})
		}
		out = append(out, lever{4, -1, 0, 0, func(float64) Remedy {
			return Remedy{Kind: KindRemove, Subject: h.Name, Edits: []Edit{{Path: path("hung", i, ""), Remove: true}}}
		}})
	}
	if now := j.p.Floor.Standing(); now > floorStep {
		out = append(out, lever{5, -1, now, floorStep, func(d float64) Remedy { return thinnerFloor(j.p, d) }})
	}
	return append(out, lever{6, -1, mostCeiling, ceilingStep, func(d float64) Remedy { return raisedCeiling(j.p, d) }})
}
