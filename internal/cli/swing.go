package main

import (
	"context"
	"fmt"
	"math"

	"wideberth/internal/sim/family"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// frameRate is how many frames a second are printed.
const frameRate = 240

// frame is the golfer and the club at one moment, in the room's frame.
type frame struct {
	T     float64     `json:"t"` // s since the start of the swing
	Phase swing.Phase `json:"phase"`
	Parts []part      `json:"parts"`
}

// part is one capsule: two ends and a radius, m.
type part struct {
	Name   string     `json:"name"`
	A      [3]float64 `json:"a"`
	B      [3]float64 `json:"b"`
	Radius float64    `json:"radius"`
}

// printSwing prints one swing as frames.
func printSwing(_ context.Context, args []string, s streams) (int, error) {
	flags := newFlags("swing", "-player NAME -club NAME -tee NAME [-sample N] PLAN.json", s)
	player := flags.String("player", "", "name of a player of the plan")
	club := flags.String("club", "", "name of a club of the plan")
	tee := flags.String("tee", "", "name of a tee of the plan")
	sample := flags.Int("sample", 0, "which swing of the player's family; 0 is the central one")
	if err := flags.Parse(args); err != nil {
		return 0, err
	}
	for _, f := range []struct{ name, value string }{{"player", *player}, {"club", *club}, {"tee", *tee}} {
		if f.value == "" {
			return 0, fmt.Errorf("say which %s swings where with -%s NAME", f.name, f.name)
		}
	}
	p, err := readPlan(flags.Args(), s.in)
	if err != nil {
		return 0, err
	}
	sw, place, err := family.Swing(p, *player, *club, *tee, *sample)
	if err != nil {
		return 0, err
	}
	return exitClear, printJSON(s.out, map[string][]frame{"frames": frames(sw, place)}, "")
}

// frames takes the swing apart into moments, its very end included.
func frames(sw *swing.Swing, place sweep.Placement) []frame {
	last := int(math.Ceil(sw.Duration() * frameRate))
	out := make([]frame, 0, last+1)
	for i := range last + 1 {
		t := min(float64(i)/frameRate, sw.Duration())
		f := frame{T: t, Phase: sw.PhaseAt(t)}
		for name, capsule := range sw.PoseAt(t) {
			c := place.Capsule(capsule)
			f.Parts = append(f.Parts, part{Name: swing.Part(name).String(), A: point(c.A), B: point(c.B), Radius: c.R})
		}
		out = append(out, f)
	}
	return out
}

func point(v geom.Vec) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }
