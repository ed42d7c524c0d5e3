package spec

import (
	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/plan"
)

// The most that lists may hold.
const (
	maxStock, maxCups, maxKeepOut, maxFeet, maxDoors, maxPrices = 60, 12, 8, 8, 8, 80
)

func (s *Spec) check(l *plan.Limits, p plan.Plan) {
	if s.Projector != nil {
		s.Projector.check(l, p)
	}
	s.Build.check(l, p)
}

func (j *Projector) check(l *plan.Limits, p plan.Plan) {
	const who = "projector: "
	for i, axis := range [3]string{"x", "y", "z"} {
		l.Coordinate(fmt.Sprintf("projector.lens[%d]", i), who, "lens "+axis, j.Lens[i])
	}
	j.checkSide(l, p)
	for i, which := range [2]string{"least", "greatest"} {
		l.Number(fmt.Sprintf("projector.throwRatio[%d]", i), who, which+" throw ratio", j.ThrowRatio[i], 0.1, 10, "")
	}
	l.Order("projector.throwRatio", who, "throw ratio", j.ThrowRatio[0], j.ThrowRatio[1])
	l.Number("projector.aspect", who, "aspect", j.Aspect, 0.5, 4, "")
	l.Number("projector.lumens", who, "light", j.Lumens, 50, 100000, " lumens")
	l.Number("projector.gain", who, "screen gain", j.Gain, 0.1, 5, "")
	l.Word("projector.mount", who, "mount", j.Mount, MountCeiling, MountFloor, MountRear)
	if len(j.Offset) > 0 {
		if len(j.Offset) != 2 {
			l.Count("projector.offset", len(j.Offset), 2)
			l.Number("projector.offset", who, "number of offsets (the least and the most)", float64(len(j.Offset)), 2, 2, "")
		} else {
			for i, v := range j.Offset {
				l.Number(fmt.Sprintf("projector.offset[%d]", i), who, "offset", v, -1.5, 2, "")
			}
			if !(j.Offset[0] <= j.Offset[1]) {
				l.Say("projector.offset", "projector: the greatest offset, %.4v %%, must not be less than the least, %.4v %%", 100*j.Offset[1], 100*j.Offset[0])
			}
		}
	}
	l.Number("projector.sideShift", who, "side shift", j.SideShift, 0, 1, "")
	for i, side := range [3]string{"length", "width", "height"} {
		l.Length(fmt.Sprintf("projector.body[%d]", i), who, "case "+side, j.Body[i], 0.02, 2)
	}
	l.Number("projector.columns", who, "pixels across", j.Columns, 320, 16384, "")
	l.Number("projector.roomLight", who, "room light on the screen", j.RoomLight, 0, 5000, " lx")
	if j.RiskGroup != "" {
		l.Word("projector.riskGroup", who, "risk group", j.RiskGroup, "RG0", "RG1", "RG2", "RG3")
	}
	if w := j.Image.Width; w != 0 {
		l.Length("projector.image.width", who, "image width", w, 0.3, 20)
	}
	l.Length("projector.image.bottom", who, "image bottom", j.Image.Bottom, 0, p.Room.Height)
}

// checkSide: the lens is before the cloth, or the front wall, or where it shines
// through from behind, beyond it.
func (j *Projector) checkSide(l *plan.Limits, p plan.Plan) {
	const nearest = 0.01 // m from the cloth
	cloth := p.Room.Length
	if p.Screen != nil {
		cloth = p.Screen.X
	}
	switch x := j.Lens[0]; {
	case j.Mount == MountRear && !(x >= cloth+nearest):
		l.Say("projector.lens[0]", "projector: a lens that shines from behind must be behind the screen, which is at x %v m", cloth)
	case j.Mount != MountRear && !(x <= cloth-nearest):
		l.Say("projector.lens[0]", "projector: the lens must be between the back wall and the screen, which is at x %v m", cloth)
	}
}

func (b *Build) check(l *plan.Limits, p plan.Plan) {
	b.Floor.check(l, p)
	b.stockProblems(l)
	l.Count("build.cups", len(b.Cups), maxCups)
	for i, c := range b.Cups {
		field, who := fmt.Sprintf("build.cups[%d]", i), fmt.Sprintf("cup %d: ", i+1)
		l.Length(field+".x", who, "x", c.X, 0, p.Room.Length)
		l.Length(field+".y", who, "y", c.Y, 0, p.Room.Width)
	}
	const frame = "enclosure: "
	l.Length("build.enclosure.padding", frame, "padding over the cloth", b.Enclosure.Padding, 0, 0.5)
	l.Length("build.enclosure.sill", frame, "sill over the cloth", b.Enclosure.Sill, 0, 0.5)
	l.Length("build.enclosure.border", frame, "blank border", b.Enclosure.Border, 0, 1)
	if s := b.Sensor; s != nil {
		l.Word("build.sensor.place", "sensor: ", "place", s.Place, Overhead, Beside, Behind)
		l.Box("build.sensor.body", "sensor: ", s.Body.Min, s.Body.Max)
		l.Count("build.sensor.keepOut", len(s.KeepOut), maxKeepOut)
		for i, z := range s.KeepOut {
			l.Box(fmt.Sprintf("build.sensor.keepOut[%d]", i), fmt.Sprintf("sensor, keep-out %d: ", i+1), z.Min, z.Max)
		}
	}
	l.Number("build.finish.coats", "paint: ", "coats", b.Finish.Coats, 0, 10, "")
	l.Number("build.finish.coverage", "paint: ", "coverage", b.Finish.Coverage, 1, 30, " m² a litre")
	l.Number("build.finish.absorber", "sound: ", "area of absorbers", b.Finish.Absorber, 0, 1000, " m²")
	l.Word("build.finish.walls", "sound: ", "walls", b.Finish.Walls, Materials()...)
	l.Word("build.finish.ceiling", "sound: ", "ceiling", b.Finish.Ceiling, Materials()...)
	for i, axis := range [3]string{"x", "y", "z"} {
		l.Coordinate(fmt.Sprintf("build.wiring.source[%d]", i), "wiring: ", "source "+axis, b.Wiring.Source[i])
	}
	l.Number("build.wiring.receptacles", "wiring: ", "receptacles", b.Wiring.Receptacles, 0, 40, "")
	l.Length("build.wiring.slack", "wiring: ", "slack", b.Wiring.Slack, 0, 10)
	b.Walls.check(l, p)
	l.Count("build.prices", len(b.Prices), maxPrices)
	for i, v := range b.Prices {
		l.Line(fmt.Sprintf("build.prices[%d].item", i), fmt.Sprintf("price %d: the item", i+1), v.Item)
		l.Number(fmt.Sprintf("build.prices[%d].price", i), fmt.Sprintf("price %d: ", i+1), "price", v.Price, 0, 1e6, "")
	}
}

func (f *Floor) check(l *plan.Limits, p plan.Plan) {
	const who = "floor: "
	l.Length("build.floor.tolerance", who, "tolerance", f.Tolerance, 0.0005, 0.02)
	l.Number("build.floor.layers", who, "layers at most", f.Layers, 1, 6, "")
	sizes := [4]float64{p.Room.Length, p.Room.Width, p.Room.Length, p.Room.Width}
	for i, what := range [4]string{"starts at x", "starts at y", "ends at x", "ends at y"} {
		l.Length(fmt.Sprintf("build.floor.covers[%d]", i), who, what, f.Covers[i], 0, sizes[i])
	}
	for i, what := range [2]string{"end in x", "end in y"} {
		l.Length(fmt.Sprintf("build.floor.covers[%d]", i+2), who, what, f.Covers[i+2], f.Covers[i]+0.3, sizes[i])
	}
	l.Length("build.floor.gap", who, "gap between panels", f.Gap, 0, 0.02)
	if f.Panels != "" {
		l.Word("build.floor.panels", who, "panels", f.Panels, Length, Width)
	}
	l.Length("build.floor.turfRoll", who, "turf roll", f.TurfRoll, 0.3, 10)
	l.Word("build.floor.turf", who, "turf", f.Turf, Length, Width)
}

func (b *Build) stockProblems(l *plan.Limits) {
	l.Count("build.stock", len(b.Stock), maxStock)
	for i, s := range b.Stock {
		field, who := fmt.Sprintf("build.stock[%d]", i), fmt.Sprintf("stock %d: ", i+1)
		l.Name(field, "stock", s.Name, i)
		l.Word(field+".kind", who, "kind", s.Kind, Panel, Foam, Rubber, Turf)
		l.Length(field+".least", who, "least thickness", s.Least, 0.001, 0.2)
		l.Length(field+".most", who, "greatest thickness", s.Most, 0.001, 0.2)
		l.Order(field+".most", who, "thickness", s.Least, s.Most)
		l.Length(field+".long", who, "sheet length", s.Long, 0.2, 6)
		l.Length(field+".wide", who, "sheet width", s.Wide, 0.2, 6)
		l.Number(field+".price", who, "price", s.Price, 0, 1e6, "")
	}
}

func (w *Walls) check(l *plan.Limits, p plan.Plan) {
	wall := func(field, who, v string) float64 {
		l.Word(field, who, "wall", v, string(plan.WallLeft), string(plan.WallRight), string(plan.WallFront), string(plan.WallBack))
		if plan.Wall(v).Side() {
			return p.Room.Length
		}
		return p.Room.Width
	}
	l.Count("build.walls.feet", len(w.Feet), maxFeet)
	for i, f := range w.Feet {
		field, who := fmt.Sprintf("build.walls.feet[%d]", i), fmt.Sprintf("foot of a wall %d: ", i+1)
		wall(field+".wall", who, f.Wall)
		l.Length(field+".height", who, "height", f.Height, 0.001, 2)
		l.Length(field+".depth", who, "depth", f.Depth, 0, 2)
	}
	l.Count("build.walls.doors", len(w.Doors), maxDoors)
	for i, d := range w.Doors {
		field, who := fmt.Sprintf("build.walls.doors[%d]", i), fmt.Sprintf("door %d: ", i+1)
		l.Name(field, "door", d.Name, i)
		long := wall(field+".wall", who, d.Wall)
		l.Length(field+".from", who, "start", d.From, 0, long)
		l.Length(field+".width", who, "width", d.Width, 0.3, 3)
		l.Length(field+".height", who, "height", d.Height, 1, 4)
		l.Length(field+".gap", who, "gap under it", d.Gap, 0, 0.3)
	}
	if g := w.Garage; g != nil {
		const who = "garage door: "
		long := wall("build.walls.garage.wall", who, g.Wall)
		l.Length("build.walls.garage.from", who, "start", g.From, 0, long)
		l.Length("build.walls.garage.width", who, "width", g.Width, 1, 10)
		l.Length("build.walls.garage.height", who, "height of the opening", g.Height, 1.5, 5)
	}
	if s := w.Slab; s != nil {
		wall("build.walls.slab.towards", "slab: ", s.Towards)
		l.Number("build.walls.slab.fall", "slab: ", "fall", s.Fall, 0, 0.1, " m per m")
	}
}
