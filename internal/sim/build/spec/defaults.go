package spec

import "wideberth/internal/sim/plan"

// or fills what was left out.
func or[T comparable](v *T, usual T) {
	var none T
	if *v == none {
		*v = usual
	}
}

// fill gives everything that was left out its default. Where no source is named
// below, a default is common practice or a choice of this program.
func (s *Spec) fill(p plan.Plan) {
	if j := s.Projector; j != nil {
		or(&j.Aspect, 1.6) // 16:10
		or(&j.Lumens, 3000)
		or(&j.Gain, 1)
		or(&j.Mount, MountCeiling)
		or(&j.Body, [3]float64{0.40, 0.32, 0.15})
		or(&j.Columns, 1920)
		if j.Image == nil {
			j.Image = &Image{}
		}
	}
	b := &s.Build
	f := &b.Floor
	or(&f.Tolerance, usual(p, 0.003, 0.125))
	or(&f.Layers, 4)
	or(&f.Covers, [4]float64{0, 0, p.Room.Length, p.Room.Width})
	or(&f.Gap, usual(p, 0.003, 0.125)) // about 1/8 in at the edges of floor panels: APA, from memory
	or(&f.TurfRoll, usual(p, 4, 144))
	or(&f.Turf, Length)
	if len(b.Stock) == 0 {
		b.Stock = UsualStock()
	}
	for i := range b.Stock {
		or(&b.Stock[i].Long, SheetLong)
		or(&b.Stock[i].Wide, SheetWide)
	}
	or(&b.Finish.Coats, 2)
	or(&b.Finish.Coverage, 9)
	or(&b.Finish.Walls, GypsumBoard)
	or(&b.Finish.Ceiling, GypsumBoard)
	or(&b.Wiring.Source, [3]float64{0.3, 0.3, 0.75})
	or(&b.Wiring.Receptacles, 2)
	or(&b.Wiring.Slack, 1)
	for i := range b.Walls.Doors {
		or(&b.Walls.Doors[i].Height, usual(p, 2.03, 80))
		or(&b.Walls.Doors[i].Gap, usual(p, 0.02, 0.75))
	}
}
