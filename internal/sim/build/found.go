package build

import (
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/remedy"
)

// near is how near the swings come to a box, as a check would find it.
func (r *room) near(name string, b Box) remedy.HungCheck {
	return remedy.Thing(r.plan, r.casts, plan.Hung{Name: name, Min: b.Min, Max: b.Max})
}

func (r *room) sensor() error {
	s := r.spec.Build.Sensor
	if s == nil {
		return nil
	}
	p := r.plan
	body := Box{s.Body.Min, s.Body.Max}
	check := r.near("ball sensor on trial", body)
	out := &Sensor{Name: "ball sensor", Place: s.Place, Clearance: check.Clearance, Verdict: check.Verdict, Reads: []Read{}, KeepOut: []KeepOut{}}
	if p.Sensor != nil {
		out.Name = p.Sensor.Name
		for _, t := range p.Tees {
			read := Read{Tee: t.Name, Hands: []string{}, Reads: t.X >= p.Sensor.Min[0] && t.X <= p.Sensor.Max[0] && t.Y >= p.Sensor.Min[1] && t.Y <= p.Sensor.Max[1]}
			for _, hand := range [2]plan.Hand{plan.HandRight, plan.HandLeft} {
				for _, pl := range p.Players {
					if pl.Hand == hand && pl.Uses(t) {
						read.Hands = append(read.Hands, string(hand))
						break
					}
				}
			}
			out.Reads = append(out.Reads, read)
		}
	} else {
		r.note("The plan does not say which strip of the floor the ball sensor reads, so no tee was judged.")
	}
	for _, q := range ball.Pairs(p, nil) {
		out.InFlight = out.InFlight || r.flownAt(q, boxOf(body))
	}
	for i, z := range s.KeepOut {
		k := KeepOut{Number: i + 1, Holds: []string{}}
		for _, t := range things(p) {
			if overlaps(t.box, Box{z.Min, z.Max}) {
				k.Holds = append(k.Holds, t.name)
			}
		}
		k.Swept = r.near("keep-out on trial", Box{z.Min, z.Max}).Clearance < 0
		out.KeepOut = append(out.KeepOut, k)
	}
	r.out.Sensor = out
	return nil
}

// flownAt is whether ordinary balls of a pair come within the margin of a box: its own
// launch, and those at the ends of its player's spread.
func (r *room) flownAt(q ball.Pair, b geom.Box) bool {
	scene := ball.NewScene(r.plan)
	l, skill := q.Launch(), ball.SkillOf(q.Player)
	const sure = 2.5 // standard deviations, as in the maps
	for _, side := range [3]float64{-1, 0, 1} {
		for _, up := range [3]float64{-1, 0, 1} {
			one := l
			one.Azimuth += side * sure * skill.Direction
			one.Elevation = max(0, one.Elevation+up*sure*skill.Launch)
			trail := scene.Fly(one.At(r.plan, q.Tee).State(), true).Trail
			for k := 1; k < len(trail); k++ {
				if d, _, _ := b.Distance(geom.Capsule{A: trail[k-1].P, B: trail[k].P, R: ball.Radius}); d < r.plan.Margin {
					return true
				}
			}
		}
	}
	return false
}

func boxOf(b Box) geom.Box {
	return geom.Box{Min: geom.Vec{X: b.Min[0], Y: b.Min[1], Z: b.Min[2]}, Max: geom.Vec{X: b.Max[0], Y: b.Max[1], Z: b.Max[2]}}
}

// thing is something of the plan that is a box.
type thing struct {
	name string
	box  Box
}

func things(p plan.Plan) (out []thing) {
	for _, s := range p.Room.Solids {
		out = append(out, thing{s.Name, Box{s.Min, s.Max}})
	}
	for _, h := range p.Hung {
		out = append(out, thing{h.Name, Box{h.Min, h.Max}})
	}
	return out
}

func overlaps(a, b Box) bool {
	for k := range 3 {
		if a.Min[k] >= b.Max[k] || b.Min[k] >= a.Max[k] {
			return false
		}
	}
	return true
}

// against is the box at a wall, from along the wall, so wide, so deep into the room,
// between two heights, m.
func against(size plan.Room, wall string, from, width, depth, low, high float64) Box {
	b := Box{[3]float64{0, 0, low}, [3]float64{0, 0, high}}
	across, along, far := 1, 0, size.Width
	if !plan.Wall(wall).Side() {
		across, along, far = 0, 1, size.Length
	}
	b.Min[along], b.Max[along] = from, from+width
	b.Max[across] = depth
	if wall == string(plan.WallLeft) || wall == string(plan.WallFront) {
		b.Min[across], b.Max[across] = far-depth, far
	}
	return b
}

// The open garage door: how far over its opening it lies at the least, and how far
// beyond its own height the tracks reach in, m. Common practice (room.md, section 6
// of the figures in testdata/build).
const (
	doorOver   = 0.076 // 3 in
	doorBeyond = 0.61  // 24 in
	doorThick  = 0.05  // of the door itself: an assumption
)

// walls says what walls as they are do to golfers, balls and floor.
func (r *room) walls() error {
	p, w := r.plan, r.spec.Build.Walls
	found := []Found{}
	thingAt := func(what, name string, b Box) *Found {
		c := r.near(fmt.Sprintf("%s %d on trial", what, len(found)+1), b)
		found = append(found, Found{What: what, Name: name, Box: &b, Clearance: c.Clearance, Verdict: c.Verdict, Bad: c.Verdict != fit.Clear})
		return &found[len(found)-1]
	}
	for _, f := range w.Feet {
		long := p.Room.Width
		if plan.Wall(f.Wall).Side() {
			long = p.Room.Length
		}
		if f.Depth > 0 {
			thingAt("ledge", f.Wall+" wall", against(p.Room, f.Wall, 0, long, f.Depth, 0, f.Height)).Amount = f.Depth
			continue
		}
		free := f.Height - r.out.Floor.Height // over the floor that is laid
		found = append(found, Found{What: "gap", Name: f.Wall + " wall", Amount: max(0, free), Bad: free >= 2*ball.Radius})
	}
	for _, d := range w.Doors {
		one := thingAt("door", d.Name, against(p.Room, d.Wall, d.From, d.Width, d.Width, 0, d.Height))
		// What is left under the leaf when it swings over the floor that is laid.
		one.Amount = d.Gap
		c := r.out.Floor.Covers
		if overlaps(*one.Box, Box{[3]float64{c.X0, c.Y0, 0}, [3]float64{c.X1, c.Y1, 1}}) {
			one.Amount -= r.out.Floor.Height
		}
		one.Bad = one.Bad || one.Amount < 0
	}
	if g := w.Garage; g != nil {
		if g.Open {
			low := g.Height + doorOver - doorThick
			thingAt("garage door", "open", against(p.Room, g.Wall, g.From, g.Width, g.Height+doorBeyond, low, max(p.Room.Height, low+doorThick))).Amount = low
		} else {
			found = append(found, Found{What: "garage door", Name: "shut", Amount: g.Height})
		}
	}
	if s := w.Slab; s != nil && s.Fall > 0 {
		c := r.out.Floor.Covers
		run := c.X1 - c.X0
		if plan.Wall(s.Towards).Side() {
			run = c.Y1 - c.Y0
		}
		found = append(found, Found{What: "slab", Name: "towards the " + s.Towards + " wall", Amount: s.Fall * run, Bad: s.Fall*run > r.spec.Build.Floor.Tolerance})
	}
	r.out.Walls = found
	return nil
}

// kindOf is what a layer of the plan is made of: by its name in the stock, else by the
// words people use; what says neither is taken for panels.
func kindOf(stock []spec.Stock, name string) string {
	name = BoughtAs(name)
	for _, s := range stock {
		if s.Name == name {
			return s.Kind
		}
	}
	for _, kind := range [3]string{spec.Turf, spec.Rubber, spec.Foam} {
		if strings.Contains(strings.ToLower(name), kind) {
			return kind
		}
	}
	return spec.Panel
}

// again is what the name of a layer ends with that is laid once more.
const again = ", layer "

// LayerName is what a plan calls the n-th layer of a stock item, from 1: names in a plan
// differ.
func LayerName(item string, n int) string {
	if n == 1 {
		return item
	}
	return fmt.Sprintf("%s%s%d", item, again, n)
}

// BoughtAs is the stock item of a layer's name.
func BoughtAs(layer string) string {
	item, _, _ := strings.Cut(layer, again)
	return item
}
